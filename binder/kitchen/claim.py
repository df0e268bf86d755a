"""Sentences to be said on camera, each tied to a figure that must support it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Annotated

from binder.kitchen.record import Record
from binder.kitchen.shapes import Count, Key, LongText, Position, Reference, ShortText


class ClaimKind(StrEnum):
    """Which figure a claim is about."""

    PORTION_UNDER = "a portion costs under"
    AMOUNT_ABOUT = "an amount costs about"
    ALL_UNDER = "everything costs under"
    ALL_FROM_BASE = "everything comes from what there is of the base"
    MINUTES_UNDER = "a dish takes no more minutes than"


@dataclass(frozen=True, kw_only=True)
class Claim(Record):
    """A sentence and the comparison behind it.

    `target` is minor currency units for a cost, minutes for a time. A claim about a portion or a time names a `dish`,
    or means every dish of the shoot where it names none; one about an amount names a `recipe` and how much of it
    (`amount` in `unit`: a spoonful). `tolerance` is how far off “about” may be, as a part of the target.
    """

    shoot: Annotated[Key, Reference("shoots", owner=True)]
    position: Position = 0
    says: LongText
    kind: ClaimKind
    dish: Annotated[Key, Reference("dishes")] | None = None
    recipe: Annotated[Key, Reference("recipes")] | None = None
    amount: Count = 1.0
    unit: ShortText = ""
    target: Count = 0.0
    tolerance: Count = 0.1
