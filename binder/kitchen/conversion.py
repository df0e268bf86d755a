"""How the base ingredient is turned from one form into others."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from typing import Annotated

from binder.kitchen.record import Record
from binder.kitchen.shapes import (
    Count,
    Key,
    LongText,
    Minutes,
    Name,
    Part,
    Position,
    Positive,
    Ratio,
    Reference,
    ShortText,
    WordList,
)


class CostSplit(StrEnum):
    """How what a conversion costs is laid on the forms that come out of it."""

    BY_WEIGHT = "by weight"
    MAIN = "all to the first"
    SHARES = "by shares"


@dataclass(frozen=True, kw_only=True)
class Conversion(Record):
    """One way to turn a form (`takes`) into others: soaking, cooking, milling, trimming. Times are minutes.

    `least_grams` is the smallest amount of the form it can take (a blender needs so much), `batch_grams` the amount
    it takes each time where it can only be run whole; both are grams of the form taken. `hazards` are keys of the
    reference cautions.
    """

    takes: Annotated[Key, Reference("foods")]
    name: Name
    text: LongText = ""
    hands_on_minutes: Minutes = 0.0
    lead_minutes: Minutes = 0.0
    equipment: WordList = ()
    hazards: WordList = ()
    least_grams: Positive | None = None
    batch_grams: Positive | None = None
    split: CostSplit = CostSplit.BY_WEIGHT
    source: ShortText = ""


@dataclass(frozen=True, kw_only=True)
class Outcome(Record):
    """A form that comes out of a conversion: `ratio` grams for each gram taken. Several outcomes are co-products.

    `cost_share` is the part of the conversion's cost that it carries where the conversion splits by shares.
    """

    conversion: Annotated[Key, Reference("conversions", owner=True)]
    position: Position = 0
    form: Annotated[Key, Reference("foods")]
    ratio: Ratio
    cost_share: Part | None = None
    source: ShortText = ""


@dataclass(frozen=True, kw_only=True)
class Addition(Record):
    """Another food that a conversion needs: `ratio` grams for each gram of the form taken (soaking water, salt)."""

    conversion: Annotated[Key, Reference("conversions", owner=True)]
    position: Position = 0
    food: Annotated[Key, Reference("foods")]
    ratio: Ratio


@dataclass(frozen=True, kw_only=True)
class Trial(Record):
    """One test day's run of a conversion: `taken` grams of the form went in."""

    conversion: Annotated[Key, Reference("conversions", owner=True)]
    on: date
    taken: Positive
    notes: ShortText = ""


@dataclass(frozen=True, kw_only=True)
class TrialOutcome(Record):
    """What came out of a trial of one form, in grams."""

    trial: Annotated[Key, Reference("trials", owner=True)]
    form: Annotated[Key, Reference("foods")]
    grams: Count
