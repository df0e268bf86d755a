"""Recipes: ordered steps, and on each step the lines it uses."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Annotated

from binder.kitchen.day import ApplianceKind
from binder.kitchen.record import Record
from binder.kitchen.shapes import (
    Celsius,
    Count,
    Key,
    LongText,
    Minutes,
    Name,
    Number,
    Position,
    Positive,
    Reference,
    ShortText,
    WordList,
)


class Heat(StrEnum):
    """What a step's temperature is the temperature of."""

    OVEN = "oven"
    PAN = "pan"
    OIL = "oil"
    CORE = "core"
    CHILL = "chill"


@dataclass(frozen=True, kw_only=True)
class Recipe(Record):
    """A dish as a cook writes it. One batch yields so many `portions`, `grams`, `millilitres`: those that are known."""

    name: Name
    portions: Positive | None = None
    grams: Positive | None = None
    millilitres: Positive | None = None
    introduction: LongText = ""
    notes: LongText = ""


@dataclass(frozen=True, kw_only=True)
class Step(Record):
    """One step of a recipe: what is done, where, with what and for how many minutes.

    `celsius` is the temperature of what `heat` names; `hazards` are keys of the reference cautions; `hold_minutes` is
    how long the step's result stays fit to film. `uses` says which kind of appliance holds `places` of it, where that
    does not follow from `heat`; `skill` is what whoever does it must be able to do.
    """

    recipe: Annotated[Key, Reference("recipes", owner=True)]
    position: Position = 0
    title: ShortText = ""
    text: LongText = ""
    hands_on_minutes: Minutes = 0.0
    waiting_minutes: Minutes = 0.0
    station: ShortText = ""
    equipment: WordList = ()
    heat: Heat | None = None
    celsius: Celsius | None = None
    hazards: WordList = ()
    on_camera: bool = True
    hold_minutes: Minutes | None = None
    uses: ApplianceKind | None = None
    places: Annotated[int, Number(1, 1000)] = 1
    skill: ShortText = ""


@dataclass(frozen=True, kw_only=True)
class Line(Record):
    """An amount of a food or of another recipe, on the step that uses it.

    Exactly one of `food` and `made` is set. `low` and `high` are both None for a line to taste, equal for a plain
    amount, and the two ends of a range otherwise; `unit` is empty for a plain count.
    """

    step: Annotated[Key, Reference("steps", owner=True)]
    position: Position = 0
    food: Annotated[Key, Reference("foods")] | None = None
    made: Annotated[Key, Reference("recipes")] | None = None
    low: Count | None = None
    high: Count | None = None
    unit: ShortText = ""
    preparation: ShortText = ""
    to_taste: bool = False
    garnish: bool = False
    note: ShortText = ""
