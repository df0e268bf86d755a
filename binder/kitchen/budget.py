"""What a shoot costs beside its food, and what tax is on what."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from binder.kitchen.food import Section
from binder.kitchen.record import Record
from binder.kitchen.shapes import Count, Key, Minor, Name, Part, Position, Reference, ShortText


@dataclass(frozen=True, kw_only=True)
class BudgetLine(Record):
    """A cost of the producer's own: `quantity` at `rate` minor units each is planned; committed and actual when known.

    Props, gas, disposables, cleaning, an assistant by the hour, hire of the kitchen, food for the crew's tasting.
    """

    shoot: Annotated[Key, Reference("shoots", owner=True)]
    position: Position = 0
    name: Name
    heading: ShortText = ""
    quantity: Count = 1.0
    rate: Minor = 0
    committed: Minor | None = None
    actual: Minor | None = None
    taxed: bool = True


@dataclass(frozen=True, kw_only=True)
class TaxRate(Record):
    """Tax on a section of the store, or (None) on all that has no rate of its own.

    `rate` is a part of the price: 0.07.
    """

    shoot: Annotated[Key, Reference("shoots", owner=True)]
    section: Section | None = None
    rate: Part
