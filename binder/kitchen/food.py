"""Foods and what their household measures weigh."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Annotated

from binder.kitchen.record import Record
from binder.kitchen.shapes import Days, Key, LongText, Name, Number, Positive, Reference, Share, ShortText, WordList


class Section(StrEnum):
    """Where in the store a food stands."""

    PRODUCE = "produce"
    MEAT = "meat"
    FISH = "fish"
    DAIRY_AND_EGGS = "dairy and eggs"
    BAKERY = "bakery"
    GRAINS_AND_PULSES = "grains and pulses"
    TINS_AND_JARS = "tins and jars"
    OILS_AND_VINEGARS = "oils and vinegars"
    SPICES_AND_SEASONINGS = "spices and seasonings"
    BAKING = "baking"
    NUTS_AND_SEEDS = "nuts and seeds"
    FROZEN = "frozen"
    DRINKS = "drinks"


class Keeping(StrEnum):
    """How a food is kept as bought."""

    CUPBOARD = "cupboard"
    COOL = "cool"
    CHILLED = "chilled"
    FROZEN = "frozen"


@dataclass(frozen=True, kw_only=True)
class Food(Record):
    """A food as bought, or a form that the base ingredient is made into (`form_of` names the base).

    `trim_yield` is edible weight over weight as purchased; `density` is grams per millilitre; `allergens` and
    `doneness` are codes of the reference tables; `temperature_control` says that time and temperature must be watched
    for safety. `free` is for water and the like, that nobody pays for; `staple` for what any kitchen has. A form is fit
    to use from `good_from_days` after it is made up to `keeps_days`; what must be ordered ahead is ordered `order_days`
    before it is fetched.
    """

    name: Name
    other_names: WordList = ()
    section: Section = Section.PRODUCE
    keeping: Keeping = Keeping.CUPBOARD
    good_from_days: Days | None = None
    keeps_days: Days | None = None
    order_days: Days | None = None
    temperature_control: bool = False
    allergens: WordList = ()
    doneness: ShortText = ""
    density: Annotated[float, Number(0.01, 25)] | None = None
    trim_yield: Share = 1.0
    yield_source: ShortText = ""
    staple: bool = False
    free: bool = False
    form_of: Annotated[Key, Reference("foods")] | None = None
    notes: LongText = ""
    source: ShortText = ""


@dataclass(frozen=True, kw_only=True)
class Measure(Record):
    """What one household measure of a food weighs: `grams` for one `unit` (`us cup`, `clove`) in a `preparation`."""

    food: Annotated[Key, Reference("foods", owner=True)]
    unit: Name
    preparation: ShortText = ""
    grams: Positive
    source: ShortText = ""
