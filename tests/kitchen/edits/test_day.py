"""The day is edited like everything else: each edit has a name and can be undone."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, time

from binder.kitchen.binder import Binder
from binder.kitchen.change import Change, apply
from binder.kitchen.day import ApplianceKind, PinTarget
from binder.kitchen.edits.base import remove_conversion
from binder.kitchen.edits.day import (
    add_appliance,
    add_event,
    add_person,
    move_appliance,
    move_person,
    pins_on,
    remove_appliance,
    remove_event,
    remove_person,
    set_appliance,
    set_call,
    set_event,
    set_person,
    set_pin,
    set_step_use,
    set_wrap,
    unpin,
)
from binder.kitchen.edits.recipes import remove_step
from binder.kitchen.edits.shoots import remove_build, remove_dish
from tests.kitchen_binder import small_binder

SMALL = small_binder()
DAY = SMALL.shoots["day"]
ON = date(2026, 12, 3)
FRIED = PinTarget(dish="dish-bread", build="bread-swap", step="bread/1")
SOAK = PinTarget(conversion="soak")


def done(change: Change, binder: Binder = SMALL) -> Binder:
    """The binder after a change that undoes."""
    after = apply(binder, change)
    assert apply(after, change.inverse()) == binder
    assert change.label
    return after


def test_people_come_change_places_and_go() -> None:
    change, cook = add_person(SMALL, DAY, "Wren", skills=("fry",))
    assert change.label == "Add Wren to the crew"
    one = done(change)
    change, host = add_person(one, DAY, "Ode", on_camera=True)
    two = done(change, one)
    assert [person.name for person in two.people.where("shoot", "day")] == ["Wren", "Ode"]
    moved = done(move_person(two, host, to=0), two)
    assert [person.name for person in moved.people.where("shoot", "day")] == ["Ode", "Wren"]
    early = done(set_person(moved.people[cook.id], arrives=time(6, 30)), moved)
    assert early.people[cook.id].arrives == time(6, 30)
    assert [person.name for person in done(remove_person(early, host), early).people.values()] == ["Wren"]


def test_appliances_come_change_places_and_go() -> None:
    change, oven = add_appliance(SMALL, DAY, "deck oven", ApplianceKind.OVEN, places=2, change_minutes=20)
    one = done(change)
    change, hob = add_appliance(one, DAY, "hob", ApplianceKind.BURNERS, places=4)
    two = done(change, one)
    moved = done(move_appliance(two, hob, to=0), two)
    assert [one.name for one in moved.appliances.where("shoot", "day")] == ["hob", "deck oven"]
    larger = done(set_appliance(moved.appliances[oven.id], places=3), moved)
    assert larger.appliances[oven.id].places == 3
    assert list(done(remove_appliance(larger, hob), larger).appliances) == [oven.id]


def test_events_come_change_and_go() -> None:
    change, lunch = add_event(SMALL, DAY, "Lunch", time(13, 0), minutes=45)
    one = done(change)
    later = done(set_event(lunch, at=time(13, 30)), one)
    assert later.fixed_events[lunch.id].at == time(13, 30)
    assert not done(remove_event(later, later.fixed_events[lunch.id]), later).fixed_events


def test_call_and_wrap_are_set_and_taken_back() -> None:
    early = done(set_call(DAY, time(7, 15)))
    assert set_call(DAY, time(7, 15)).label == "Set call to 07:15"
    assert early.shoots["day"].call == time(7, 15)
    assert done(set_call(DAY, None)).shoots["day"].call is None
    late = done(set_wrap(DAY, time(18, 0)))
    assert late.shoots["day"].wrap == time(18, 0)
    assert done(set_wrap(late.shoots["day"], None), late).shoots["day"].wrap is None


def test_a_step_says_what_it_stands_on_and_who_can_do_it() -> None:
    step = SMALL.steps["bread/1"]
    change = set_step_use(SMALL, step, uses=ApplianceKind.BURNERS, places=2, skill="fry")
    assert change.label == "Set what step 1 of Onion flatbread uses"
    used = done(change).steps["bread/1"]
    assert (used.uses, used.places, used.skill) == (ApplianceKind.BURNERS, 2, "fry")
    assert done(set_step_use(SMALL, replace(step), uses=None)).steps["bread/1"].skill == ""


def pinned() -> Binder:
    """A step of a build, a step made ahead, a conversion and a dish's close, each pinned."""
    binder = SMALL
    for at, about in enumerate(
        (
            FRIED,
            PinTarget(step="spread/1"),
            SOAK,
            PinTarget(dish="dish-spread"),
        )
    ):
        binder = done(set_pin(binder, DAY, about, on=ON, at=time(9 + at, 30)), binder)
    return binder


def test_anything_of_the_day_is_pinned_and_only_once() -> None:
    binder = pinned()
    assert len(binder.pins) == 4
    again = done(set_pin(binder, DAY, SOAK, on=ON, at=time(7, 0)), binder)
    assert len(again.pins) == 4
    (pin,) = pins_on(again, "day", SOAK)
    assert pin.at == time(7, 0)
    assert pins_on(again, "day", PinTarget(step="spread/1")) != pins_on(again, "day", PinTarget(dish="dish-spread"))
    assert pins_on(again, "day", PinTarget(dish="dish-bread", build="bread-hero", step="bread/1")) == ()


def test_a_pin_says_what_it_holds() -> None:
    half_past = time(9, 30)
    labels = [
        set_pin(SMALL, DAY, FRIED, on=ON, at=half_past).label,
        set_pin(SMALL, DAY, PinTarget(step="spread/1"), on=ON, at=half_past).label,
        set_pin(SMALL, DAY, SOAK, on=ON, at=half_past).label,
        set_pin(SMALL, DAY, PinTarget(dish="dish-spread"), on=ON, at=half_past, done=True).label,
    ]
    assert labels == [
        "Pin Fry of Onion flatbread to 09:30",
        "Pin Blend of Bean spread to 09:30",
        "Pin Soak to 09:30",
        "Mark the close of Bean spread as done",
    ]


def test_what_was_pinned_is_let_go() -> None:
    binder = pinned()
    (pin,) = pins_on(binder, "day", SOAK)
    assert unpin(binder, pin).label == "Unpin Soak"
    assert len(done(unpin(binder, pin), binder).pins) == 3
    assert not done(unpin(binder, *binder.pins.values()), binder).pins


def test_a_pin_goes_with_what_it_is_about() -> None:
    binder = pinned()
    assert len(done(remove_dish(binder, binder.dishes["dish-bread"]), binder).pins) == 3
    assert len(done(remove_build(binder, binder.builds["bread-swap"]), binder).pins) == 3
    assert len(done(remove_step(binder, binder.steps["bread/1"]), binder).pins) == 3
    assert len(done(remove_conversion(binder, binder.conversions["soak"]), binder).pins) == 3
