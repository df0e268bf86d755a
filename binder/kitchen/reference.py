"""Allergens, safe temperatures, time limits and cautions, each with its source, from `resources/reference`."""

from __future__ import annotations

import csv
import functools
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.kitchen.paths import reference_folder
from binder.kitchen.settings import AllergenScheme, SafetyRules
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Mapping


@dataclass(frozen=True)
class Allergen:
    """An allergen by code, and the group each scheme puts it in (empty where the scheme does not list it)."""

    code: str
    name: str
    us_group: str
    eu_group: str
    source: str

    def group(self, scheme: AllergenScheme) -> str:
        """The name the scheme has for it, or nothing."""
        return self.us_group if scheme is AllergenScheme.US_NINE else self.eu_group


@dataclass(frozen=True)
class Doneness:
    """The safe core temperature of a kind of food under one set of rules; `celsius` None where only a sign is given."""

    rules: SafetyRules
    category: str
    category_name: str
    celsius: float | None
    fahrenheit: float | None
    hold: str
    sign: str
    source: str


@dataclass(frozen=True)
class Caution:
    """What is usually said where a step carries a hazard."""

    hazard: str
    title: str
    text: str
    source: str


@dataclass(frozen=True)
class TimeLimit:
    """How long food may be so, or how hot or cold it is to be: `minutes` and `celsius`, None where it says nothing.

    `rules` is the publication's set, which may be none that a binder chooses for core temperatures.
    """

    key: str
    rules: str
    what: str
    minutes: float | None
    celsius: float | None
    source: str


def deference() -> str:
    """The sentence that stands under every caution."""
    return _("Follow your local food code and your own food-safety lead.")


def _rows(name: str) -> list[dict[str, str]]:
    with (reference_folder() / name).open(encoding="utf-8", newline="") as table:
        return list(csv.DictReader(table))


@functools.cache
def allergens() -> Mapping[str, Allergen]:
    """Every allergen by code."""
    return {
        row["code"]: Allergen(row["code"], row["name"], row["us_group"], row["eu_group"], row["source"])
        for row in _rows("allergens.csv")
    }


@functools.cache
def cautions() -> Mapping[str, Caution]:
    """Every caution by hazard."""
    return {
        row["hazard"]: Caution(row["hazard"], row["title"], row["caution"], row["source"])
        for row in _rows("cautions.csv")
    }


@functools.cache
def doneness_table() -> Mapping[tuple[SafetyRules, str], Doneness]:
    """Safe temperatures by set of rules and category."""
    known = set(SafetyRules)
    rows = [row for row in _rows("doneness.csv") if row["rule_set"] in known]
    return {(SafetyRules(row["rule_set"]), row["category"]): _doneness(row) for row in rows}


def _doneness(row: dict[str, str]) -> Doneness:
    return Doneness(
        SafetyRules(row["rule_set"]),
        row["category"],
        row["category_name"],
        float(row["celsius"]) if row["celsius"] else None,
        float(row["fahrenheit"]) if row["fahrenheit"] else None,
        row["hold"],
        row["sign"],
        row["source"],
    )


def doneness(rules: SafetyRules, category: str) -> Doneness | None:
    """The safe temperature of a category, by the rules chosen or else by the USDA FSIS chart; None for no category."""
    table = doneness_table()
    return table.get((rules, category)) or table.get((SafetyRules.USDA_FSIS, category))


@functools.cache
def time_limits() -> Mapping[str, TimeLimit]:
    """Every limit on time and temperature by its key: `two_hour`, `cooling_stage_1`."""
    return {
        row["key"]: TimeLimit(
            row["key"],
            row["rule_set"],
            row["what"],
            float(row["minutes"]) if row["minutes"] else None,
            float(row["celsius"]) if row["celsius"] else None,
            row["source"],
        )
        for row in _rows("time_limits.csv")
    }
