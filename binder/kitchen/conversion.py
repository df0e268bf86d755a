"""How the base ingredient is turned from one form into others."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from binder.kitchen.record import Record
from binder.kitchen.shapes import Key, LongText, Minutes, Name, Position, Ratio, Reference, ShortText, WordList


@dataclass(frozen=True, kw_only=True)
class Conversion(Record):
    """One way to turn a form (`takes`) into others: soaking, cooking, milling, trimming. Times are minutes."""

    takes: Annotated[Key, Reference("foods")]
    name: Name
    text: LongText = ""
    hands_on_minutes: Minutes = 0.0
    lead_minutes: Minutes = 0.0
    equipment: WordList = ()
    hazards: WordList = ()
    source: ShortText = ""


@dataclass(frozen=True, kw_only=True)
class Outcome(Record):
    """A form that comes out of a conversion: `ratio` grams for each gram taken. Several outcomes are co-products."""

    conversion: Annotated[Key, Reference("conversions", owner=True)]
    position: Position = 0
    form: Annotated[Key, Reference("foods")]
    ratio: Ratio
    source: ShortText = ""


@dataclass(frozen=True, kw_only=True)
class Addition(Record):
    """Another food that a conversion needs: `ratio` grams for each gram of the form taken (soaking water, salt)."""

    conversion: Annotated[Key, Reference("conversions", owner=True)]
    position: Position = 0
    food: Annotated[Key, Reference("foods")]
    ratio: Ratio
