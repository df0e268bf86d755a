"""The days before: orders, trips, conversions and prep, with who and where, in order."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime, time

from binder.figures.day_plan import day_plan
from binder.figures.prep_calendar import EntryKind, PrepEntry, prep_calendar
from binder.kitchen.binder import Binder
from binder.kitchen.buying import Trip
from binder.kitchen.day import Person
from tests.figures.test_day_plan import timed

WREN = Person(id="cook", shoot="day", name="Wren", arrives=time(6, 0))
ODE = Person(id="host", shoot="day", name="Ode", position=1, on_camera=True)
ORDERED = replace(timed().foods["tahini"], order_days=4)


def entries(binder: Binder) -> dict[str, PrepEntry]:
    return {entry.key: entry for entry in prep_calendar(binder, "day", day_plan(binder, "day"))}


def test_what_is_ordered_fetched_soaked_and_filmed() -> None:
    trip = Trip(id="shopped", shoot="day", store="corner", on=date(2026, 12, 2))
    found = entries(timed(WREN, ODE, ORDERED, trip))
    order = found["order/tahini"]
    assert (order.kind, order.start, order.what) == (EntryKind.ORDER, date(2026, 11, 28), "Order tahini")
    assert order.where == "Corner Larder"
    assert order.details[0].endswith("to be fetched on Dec 2, 2026.")
    shop = found["trip/corner/1"]
    assert (shop.start, shop.what, shop.where) == (date(2026, 12, 2), "Shop at Corner Larder", "Corner Larder")
    assert "beans, dried: 1 × 1000 g" in shop.details
    soak = found["conversion/soak"]
    assert (soak.kind, soak.on, soak.who) == (EntryKind.CONVERSION, date(2026, 12, 2), ("Wren",))
    assert "For 1 Bean spread and 2 Onion flatbread." in soak.details
    assert soak.details[-1].startswith("Ready at ")
    shoot = found["shoot"]
    assert (shoot.start, shoot.what) == (datetime(2026, 12, 3, 8, 0), "Bean day")  # noqa: DTZ001
    assert shoot.who == ("Wren", "Ode")


def test_entries_are_in_order_and_before_the_day() -> None:
    found = prep_calendar(timed(WREN, ODE, ORDERED), "day", day_plan(timed(WREN, ODE, ORDERED), "day"))
    assert [entry.on for entry in found] == sorted(entry.on for entry in found)
    assert all(entry.on < date(2026, 12, 3) for entry in found if entry.kind is not EntryKind.SHOOT)
    assert found[-1].kind is EntryKind.SHOOT
    assert len({entry.key for entry in found}) == len(found)


def test_prep_says_where_and_how() -> None:
    late = replace(timed().shoots["day"], prep_until=time(23, 0))
    told = replace(timed().steps["spread/1"], text="Blend until smooth.", waiting_minutes=700)
    found = entries(timed(late, told))
    blend = found["ahead/spread/1"]
    assert (blend.kind, blend.where) == (EntryKind.PREP, "blender")
    assert blend.details[0] == "Blend until smooth."


def test_without_a_plan_there_is_the_shopping() -> None:
    found = prep_calendar(timed(ORDERED), "day", None)
    assert {entry.kind for entry in found} == {EntryKind.ORDER, EntryKind.TRIP}


def test_what_the_counter_sells_is_fetched_by_its_weight() -> None:
    (pack,) = timed().packs.where("food", "tahini")
    (shop,) = [one for one in prep_calendar(timed(replace(pack, by_weight=True)), "day", None) if one.details]
    (tahini,) = [detail for detail in shop.details if detail.startswith("tahini: ")]
    assert tahini.endswith(" g")
    assert "×" not in tahini
