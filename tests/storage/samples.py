"""A small binder that tests of storage work on, and a clock that stands still."""

from __future__ import annotations

from datetime import UTC, date, datetime
from typing import TYPE_CHECKING

from binder.kitchen.binder import Binder, binder_of
from binder.kitchen.change import Change, Edit, changed
from binder.kitchen.edits.records import with_values
from binder.kitchen.food import Food, Measure
from binder.kitchen.price import Pack, Quote, Store
from binder.kitchen.recipe import Line, Recipe, Step
from binder.kitchen.settings import SETTINGS_ID, Settings
from binder.kitchen.shoot import Build, Dish, Shoot
from binder.storage.journal import Scribe

if TYPE_CHECKING:
    from binder.kitchen.record import Record

MOMENT = datetime(2026, 3, 14, 9, 30, tzinfo=UTC)
SCRIBE = Scribe("Ada", lambda: MOMENT)


def stew_day() -> Binder:
    """One shoot of one stew from one food with one price."""
    return binder_of(
        [
            Settings(id=SETTINGS_ID, name="Stew day"),
            Food(id="chickpeas", name="Chickpeas", other_names=("garbanzos", "حمص")),
            Measure(id="chickpeas/1", food="chickpeas", unit="cup", grams=200.0),
            Store(id="corner", name="Corner store"),
            Pack(id="bag", food="chickpeas", store="corner", size=1.0, unit="kg"),
            Quote(id="bag/1", pack="bag", price=349, on=date(2026, 3, 1)),
            Recipe(id="stew", name="Stew", portions=4.0),
            Step(id="stew/1", recipe="stew", text="Soak overnight."),
            Line(id="stew/1/1", step="stew/1", food="chickpeas", low=250.0, high=250.0, unit="g"),
            Shoot(id="day", name="Day one", base="chickpeas", base_amount=1000.0),
            Dish(id="day/1", shoot="day", recipe="stew", portions=4.0),
            Build(id="day/1/1", dish="day/1", up_to="stew/1"),
        ]
    )


def renamed(record: Record, name: str) -> Change:
    """A change of a record's name."""
    return Change(f"Rename to {name}", (Edit(before=record, after=with_values(record, name=name)),))


def priced(binder: Binder, price: int) -> Change:
    """A change of the one price of the stew's day, in minor units."""
    quote = binder.quotes["bag/1"]
    return Change(f"Set price to {price}", (Edit(before=quote, after=with_values(quote, price=price)),))


def new_food(key: str) -> Change:
    """A change that adds a food."""
    return changed(f"Add {key}", after=[Food(id=key, name=key.title())])
