"""The larder that ships with the program: common foods and their measures, each with its source."""

from __future__ import annotations

import csv
import functools
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.kitchen.food import Food, Keeping, Measure, Section
from binder.kitchen.paths import larder_folder

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping
    from pathlib import Path


@dataclass(frozen=True)
class Larder:
    """Foods by id, and the measures of each."""

    foods: Mapping[str, Food]
    measures: Mapping[str, tuple[Measure, ...]]


@functools.cache
def reference_larder() -> Larder:
    """The foods of `resources/larder`, read once."""
    foods = {row["key"]: _food(row) for row in _rows(larder_folder() / "foods")}
    measures: dict[str, list[Measure]] = {key: [] for key in foods}
    for row in _rows(larder_folder() / "measures"):
        measures[row["food"]].append(_measure(row))
    return Larder(foods, {key: tuple(group) for key, group in measures.items()})


def _rows(folder: Path) -> Iterator[dict[str, str]]:
    for path in sorted(folder.glob("*.csv")):
        with path.open(encoding="utf-8", newline="") as table:
            yield from csv.DictReader(table)


def _words(text: str) -> tuple[str, ...]:
    return tuple(word.strip() for word in text.split(";") if word.strip())


def _food(row: dict[str, str]) -> Food:
    return Food(
        id=row["key"],
        name=row["name"],
        other_names=_words(row["other_names"]),
        section=Section(row["section"]),
        keeping=Keeping(row["keeping"]),
        keeps_days=int(row["keeps_days"]) if row["keeps_days"] else None,
        temperature_control=row["temperature_control"] == "yes",
        allergens=_words(row["allergens"]),
        doneness=row["doneness"],
        density=float(row["density_g_per_ml"]) if row["density_g_per_ml"] else None,
        trim_yield=float(row["trim_yield"]),
        yield_source=row["yield_source"][:300],
        staple=row["staple"] == "yes",
        free=row["key"] in {"water", "ice"},
        source=row["source"][:300],
    )


def _measure(row: dict[str, str]) -> Measure:
    return Measure(
        id="/".join(part for part in (row["food"], row["unit"], row["preparation"]) if part),
        food=row["food"],
        unit=row["unit"],
        preparation=row["preparation"],
        grams=float(row["grams"]),
        source=row["source"][:300],
    )
