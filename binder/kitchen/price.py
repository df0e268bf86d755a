"""Stores, the packs they sell and what they asked on a day."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Annotated

from binder.kitchen.record import Record
from binder.kitchen.shapes import (
    Count,
    Key,
    Minor,
    Name,
    Number,
    Positive,
    Reference,
    ShortText,
    WordList,
)


@dataclass(frozen=True, kw_only=True)
class Store(Record):
    """Where things are bought.

    Minor units: `trip_cost` is what going there costs, `avoided` what not going there is worth beyond that.
    `sections` are the sections in the order one walks through them; those not named come after.
    """

    name: Name
    trip_cost: Minor = 0
    avoided: Minor = 0
    sections: WordList = ()
    notes: ShortText = ""


@dataclass(frozen=True, kw_only=True)
class Pack(Record):
    """What a store sells of a food: `size` in `unit`, any unit the food can be weighed by. `store` None: any store.

    `by_weight`: the counter sells any weight at the price of one `size`, from `least` (in the same unit) upward.
    `deposit` is minor units that come back with the empty. `on_sale` false: the store has not got it.
    """

    food: Annotated[Key, Reference("foods", owner=True)]
    store: Annotated[Key, Reference("stores")] | None = None
    label: ShortText = ""
    size: Positive
    unit: ShortText
    by_weight: bool = False
    least: Count = 0.0
    deposit: Minor = 0
    on_sale: bool = True


@dataclass(frozen=True, kw_only=True)
class Quote(Record):
    """What was asked for one pack on a day, in minor currency units. A pinned quote is chosen before a newer one.

    `bundle_packs` for `bundle_price` together is an offer such as 3 for the price of 2.
    """

    pack: Annotated[Key, Reference("packs", owner=True)]
    price: Minor
    on: date
    pinned: bool = False
    bundle_packs: Annotated[int, Number(2, 100)] | None = None
    bundle_price: Minor | None = None
    source: ShortText = ""
