"""What is at home already, when each store is gone to, and what was really bought."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Annotated

from binder.kitchen.record import Record
from binder.kitchen.shapes import Count, Key, Minor, Position, Positive, Reference, ShortText


@dataclass(frozen=True, kw_only=True)
class PantryItem(Record):
    """What there is of a food already, for one shoot: it need not be bought."""

    shoot: Annotated[Key, Reference("shoots", owner=True)]
    food: Annotated[Key, Reference("foods")]
    amount: Positive
    unit: ShortText = "g"


@dataclass(frozen=True, kw_only=True)
class Trip(Record):
    """A day on which a store is gone to for a shoot."""

    shoot: Annotated[Key, Reference("shoots", owner=True)]
    position: Position = 0
    store: Annotated[Key, Reference("stores")]
    on: date


@dataclass(frozen=True, kw_only=True)
class Purchase(Record):
    """What became of a line of the shopping list: so many of a pack, and what was paid for them in minor units.

    `food` is the one on the list; `instead` is the food taken where that was not to be had, and `pack` then is one of
    its own. `count` 0 says that nothing was taken; at the counter it is the weight as a part of the pack's size.
    `paid` None: ticked, but the receipt is not in yet. `planned` is what the list said then, in minor units, which
    later prices do not change.
    """

    shoot: Annotated[Key, Reference("shoots", owner=True)]
    food: Annotated[Key, Reference("foods")]
    pack: Annotated[Key, Reference("packs")] | None = None
    count: Count = 1.0
    planned: Minor | None = None
    paid: Minor | None = None
    on: date | None = None
    instead: Annotated[Key, Reference("foods")] | None = None
    note: ShortText = ""
