"""Repairs of a day without a plan: each touches the clash, is a change to the binder, and was tried by planning."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, time

import pytest

from binder.figures.day_clash import day_clash
from binder.figures.day_plan import day_plan
from binder.figures.day_question import day_question
from binder.figures.day_repairs import DayRepair, day_repairs
from binder.figures.plan_program import can_be_planned
from binder.kitchen.binder import Binder
from binder.kitchen.buying import Trip
from binder.kitchen.change import apply
from binder.kitchen.day import Appliance, ApplianceKind, FixedEvent, Person, Pin
from tests.figures.test_clash_words import two_heats
from tests.figures.test_day_plan import timed

DAY = date(2026, 12, 3)


def repairs(binder: Binder) -> list[DayRepair]:
    clash = day_clash(binder, "day")
    assert clash is not None
    found = list(day_repairs(binder, "day", clash, seconds=30))
    for repair in found:
        mended = apply(binder, repair.change)
        assert apply(mended, repair.change.inverse()) == binder
        asked = day_question(mended, "day")
        assert asked is not None
        assert can_be_planned(asked.question, seconds=10) is repair.enough
    return found


def says(found: list[DayRepair]) -> list[str]:
    return [" ".join(repair.says.split()) for repair in found]


def test_a_second_oven_an_earlier_call_a_later_wrap() -> None:
    found = repairs(two_heats(time(11, 15)))
    assert says(found) == [
        "Wrap 60 min later, at 12:15.",
        "Call 60 min earlier, at 09:00.",
        "Have a second oven.",
    ]
    assert all(repair.enough for repair in found)


def test_a_pin_is_let_go_and_dishes_change_places() -> None:
    pin = Pin(id="p", shoot="day", dish="dish-bread", on=DAY, at=time(8, 15))
    found = says(repairs(timed(pin)))
    assert found[:3] == [
        "Let go of the pin of the close of Onion flatbread.",
        "Film dish 2 before dish 1.",
        "Let the dishes change places.",
    ]


def test_a_hold_twice_as_long_and_lunch_at_another_time() -> None:
    records = (
        FixedEvent(id="lunch", shoot="day", name="Lunch", at=time(9, 0), minutes=12),
        Pin(id="p", shoot="day", dish="dish-bread", build="bread-swap", step="bread/1", on=DAY, at=time(8, 50)),
        Pin(id="q", shoot="day", dish="dish-bread", build="bread-swap", step="bread/2", on=DAY, at=time(9, 12)),
    )
    found = says(repairs(timed(*records)))
    assert "Let what “Fry” gives stand for 20 min instead of 10 min." in found
    moved = (replace(records[1], at=time(9, 5)), replace(records[2], at=time(9, 14)))
    assert "Have Lunch 30 min later." in says(repairs(timed(records[0], *moved)))


def test_a_trip_a_day_earlier() -> None:
    trip = Trip(id="shopped", shoot="day", store="corner", on=DAY)
    tight = replace(timed().shoots["day"], wrap=time(23, 0))
    assert "Shop at Corner Larder on Dec 2, 2026." in says(repairs(timed(trip, tight)))


def test_more_hands_and_more_burners() -> None:
    alone = (Person(id="host", shoot="day", name="Ode", on_camera=True),)
    pins = (
        Pin(id="p", shoot="day", dish="dish-bread", build="bread-swap", step="bread/1", on=DAY, at=time(10, 0)),
        Pin(id="q", shoot="day", dish="dish-bread", build="bread-hero", step="bread/1", on=DAY, at=time(10, 4)),
    )
    assert "Have one more pair of hands." in says(repairs(timed(*alone, *pins)))
    hob = Appliance(id="hob", shoot="day", name="hob", kind=ApplianceKind.BURNERS, places=1)
    broad = replace(timed().steps["bread/1"], places=2)
    assert says(repairs(timed(hob, broad))) == ["Have one more place in or on the hob: 2."]


def test_what_is_assumed_becomes_the_shoots_own_with_one_more() -> None:
    broad = replace(timed().steps["bread/1"], places=5)
    (repair,) = repairs(timed(broad))
    assert apply(timed(broad), repair.change).appliances.where("shoot", "day")[0].places == 5


def test_where_two_things_clash_a_repair_of_one_says_that_it_is_not_enough() -> None:
    pin = Pin(id="p", shoot="day", conversion="cook", on=date(2026, 12, 2), at=time(3, 0))
    long = replace(timed().steps["bread/1"], hands_on_minutes=0, waiting_minutes=100)
    binder = timed(pin, long, replace(timed().shoots["day"], wrap=time(9, 0)))
    found = repairs(binder)
    assert found
    assert not any(repair.enough for repair in found)


def test_trying_tells_how_far_it_is_and_ends_when_no_one_wants_it() -> None:
    binder = two_heats(time(11, 15))
    clash = day_clash(binder, "day")
    assert clash is not None
    shares: list[float] = []
    assert day_repairs(binder, "day", clash, progress=shares.append, going_on=lambda: False) == ()
    assert shares == sorted(shares)
    assert shares[-1] == pytest.approx(1.0)


def test_a_repair_leads_to_a_plan() -> None:
    binder = two_heats(time(11, 15))
    mended = apply(binder, repairs(binder)[-1].change)
    plan = day_plan(mended, "day")
    assert plan is not None
    ovens = {
        resource for one in plan.activities for resource in one.resources if "oven" in resource or "appl" in resource
    }
    assert len(ovens) == 2
