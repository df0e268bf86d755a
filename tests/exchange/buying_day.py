"""The small binder with all that a shopping list may have to say."""

from __future__ import annotations

from dataclasses import replace

from binder.kitchen.binder import Binder
from binder.kitchen.buying import PantryItem, Purchase
from binder.kitchen.food import Food, Section
from binder.kitchen.price import Store
from binder.kitchen.recipe import Line
from binder.kitchen.record import Record
from tests.kitchen_binder import small_binder


def busy_day(*others: Record) -> Binder:
    """Two stores walked in their own order; beans ordered ahead, a counter, an offer, a deposit, a pantry, a tick."""
    small = small_binder()
    return small_binder(
        Store(id="corner", name="Corner Larder", sections=(str(Section.BAKING), str(Section.OILS_AND_VINEGARS))),
        Store(id="hall", name="Market Hall"),
        replace(small.foods["beans"], order_days=4),
        replace(small.packs["pack-beans"], store="hall", label="sack", size=250),
        replace(small.quotes["quote-beans"], bundle_packs=3, bundle_price=1000),
        replace(small.packs["pack-onion"], label="", size=1, unit="kg", by_weight=True),
        replace(small.packs["pack-oil"], deposit=25),
        PantryItem(id="p1", shoot="day", food="salt", amount=1, unit="kg"),
        PantryItem(id="p2", shoot="day", food="tahini", amount=100),
        Purchase(id="b1", shoot="day", food="flour", pack="pack-flour", paid=160),
        *others,
    )


def buying_day(*others: Record) -> Binder:
    """The busy day, and beside it a food without a price."""
    sumac = Line(id="sumac-line", step="bread/2", position=1, food="sumac", low=1, high=1, unit="g")
    return busy_day(Food(id="sumac", name="sumac"), sumac, *others)
