"""Stores, the packs they sell and what they asked on a day."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Annotated

from binder.kitchen.record import Record
from binder.kitchen.shapes import Key, Minor, Name, Positive, Reference, ShortText


@dataclass(frozen=True, kw_only=True)
class Store(Record):
    """Where things are bought."""

    name: Name
    notes: ShortText = ""


@dataclass(frozen=True, kw_only=True)
class Pack(Record):
    """What a store sells of a food: `size` in `unit`, any unit the food can be weighed by. `store` None: any store."""

    food: Annotated[Key, Reference("foods", owner=True)]
    store: Annotated[Key, Reference("stores")] | None = None
    label: ShortText = ""
    size: Positive
    unit: ShortText


@dataclass(frozen=True, kw_only=True)
class Quote(Record):
    """What was asked for one pack on a day, in minor currency units. A pinned quote is chosen before a newer one."""

    pack: Annotated[Key, Reference("packs", owner=True)]
    price: Minor
    on: date
    pinned: bool = False
    source: ShortText = ""
