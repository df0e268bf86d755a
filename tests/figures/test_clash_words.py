"""Why a day has no plan, in words a cook says; and the fewest demands and dishes that it takes."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, time

from binder.figures.clash_words import clash_sentence, clash_words
from binder.figures.day_clash import DayClash, day_clash
from binder.kitchen.binder import Binder, binder_of
from binder.kitchen.buying import Trip
from binder.kitchen.day import Appliance, ApplianceKind, FixedEvent, Person, Pin
from binder.kitchen.recipe import Heat, Recipe, Step
from binder.kitchen.record import Record
from binder.kitchen.settings import SETTINGS_ID, Measures, Settings
from binder.kitchen.shoot import Build, Dish, Shoot
from tests.figures.test_day_plan import timed

DAY = date(2026, 12, 3)


def clash(binder: Binder) -> DayClash:
    found = day_clash(binder, "day")
    assert found is not None
    assert found.certain
    return found


def words(binder: Binder) -> list[str]:
    """The demands in words, with plain blanks."""
    return [" ".join(one.split()) for one in clash_words(clash(binder))]


def two_heats(wrap: time) -> Binder:
    """Two dishes that bake 40 minutes unseen, one at 220 °C and one at 150 °C, in one oven, and are filmed fresh."""
    records: list[Record] = [
        Settings(id=SETTINGS_ID, name="Two heats", measures=Measures.METRIC, locale="en_GB"),
        Shoot(id="day", name="Two heats", on=DAY, call=time(10, 0), wrap=wrap),
        Appliance(id="oven", shoot="day", name="oven", kind=ApplianceKind.OVEN, places=2, change_minutes=15),
    ]
    for at, celsius in enumerate((220.0, 150.0)):
        baked = {"heat": Heat.OVEN, "celsius": celsius, "on_camera": False, "hold_minutes": 5.0}
        records += [
            Recipe(id=f"r{at}", name=f"Bake {at + 1}", portions=1),
            Step(id=f"r{at}/1", recipe=f"r{at}", title="Bake", hands_on_minutes=2, waiting_minutes=40, **baked),  # type: ignore[arg-type]
            Step(id=f"r{at}/2", recipe=f"r{at}", position=1, title="Serve", hands_on_minutes=3, hold_minutes=5),
            Dish(id=f"d{at}", shoot="day", position=at, recipe=f"r{at}", portions=1),
            Build(id=f"d{at}/hero", dish=f"d{at}"),
        ]
    return binder_of(records)


def test_a_day_that_has_a_plan_has_no_clash() -> None:
    assert day_clash(timed(), "day") is None
    assert day_clash(timed(replace(timed().shoots["day"], on=None)), "day") is None


def test_one_oven_at_two_heats() -> None:
    assert day_clash(two_heats(time(12, 1)), "day") is None
    found = words(two_heats(time(11, 0)))
    assert "oven at 220 °C for dish 1 and at 150 °C for dish 2, both before 10:56" in found


def test_a_wrap_that_comes_too_soon_after_call() -> None:
    early = replace(timed().shoots["day"], wrap=time(8, 10))
    assert words(timed(early)) == ["call at 8:00 AM", "wrap at 8:10 AM"]
    sentence = " ".join(clash_sentence(clash(timed(early))).split())
    assert sentence == "There is no plan, because these cannot all be had: call at 8:00 AM; wrap at 8:10 AM."
    assert clash(timed(early)).dishes == ("dish-bread",)


def test_a_pin_and_who_is_not_there_yet() -> None:
    pin = Pin(id="p", shoot="day", dish="dish-bread", build="bread-swap", step="bread/1", on=DAY, at=time(6, 0))
    people = (
        Person(id="host", shoot="day", name="Ode", on_camera=True),
        Person(id="cook", shoot="day", name="Wren", position=1, arrives=time(7, 0), leaves=time(16, 0)),
    )
    assert words(timed(pin, *people)) == [
        "Ode comes at 8:00 AM",
        "Wren is there from 7:00 AM to 4:00 PM",
        "the pin of Fry of dish 2 (swap-out) at 6:00 AM",
        "only 2 pairs of hands (Ode and Wren)",
    ]


def test_a_hold_and_lunch() -> None:
    """Frying ends at 8:58 and its filling cannot begin before lunch is over."""
    records = (
        FixedEvent(id="lunch", shoot="day", name="Lunch", at=time(9, 0), minutes=45),
        Pin(id="p", shoot="day", dish="dish-bread", build="bread-swap", step="bread/1", on=DAY, at=time(8, 50)),
        Pin(id="q", shoot="day", dish="dish-bread", build="bread-swap", step="bread/2", on=DAY, at=time(9, 45)),
    )
    assert words(timed(*records)) == [
        "what “Fry” gives for dish 2 stays fit for 10 min",
        "the pin of Fry of dish 2 (swap-out) at 8:50 AM",
        "the pin of Fill of dish 2 (swap-out) at 9:45 AM",
    ]
    assert "Lunch at 9:00 AM" in words(timed(records[0], replace(records[1], at=time(9, 10))))


def test_the_running_order_and_a_pin_that_is_too_early_for_it() -> None:
    pin = Pin(id="p", shoot="day", dish="dish-bread", on=DAY, at=time(8, 15))
    assert words(timed(pin)) == [
        "dish 1 before dish 2",
        "the pin of the close of Onion flatbread at 8:15 AM",
        "call at 8:00 AM",
    ]


def test_a_step_longer_than_the_day() -> None:
    long = replace(timed().steps["bread/1"], hands_on_minutes=1800)
    assert "Fry of dish 2 (swap-out), which takes 30 h; and everything over by 8:00 AM on Dec 4, 2026" in words(
        timed(long)
    )


def test_a_wait_longer_than_anyone_plans_ahead() -> None:
    aged = replace(timed().foods["soaked"], good_from_days=500)
    assert words(timed(aged)) == ["Soak, which takes 501 days; and everything over by 8:00 AM on Dec 4, 2026"]


def test_a_trip_too_late_for_what_is_soaked() -> None:
    trip = Trip(id="shopped", shoot="day", store="corner", on=DAY)
    tight = replace(timed().shoots["day"], wrap=time(23, 0))
    assert words(timed(trip, tight)) == [
        "beans, dried; salt; tahini; olive oil; and 2 more fetched on Dec 3, 2026",
        "wrap at 11:00 PM",
    ]


def test_one_tool_washed_between_dishes_and_burners() -> None:
    blender = Appliance(id="blender", shoot="day", name="blender", change_minutes=90)
    small = timed()
    both = [replace(small.steps[key], equipment=("blender",)) for key in ("spread/2", "bread/1")]
    tight = replace(small.shoots["day"], wrap=time(9, 0))
    found = words(timed(blender, tight, *both))
    assert any(
        one.startswith("one blender for ") and one.endswith("washed for 1 h 30 min between dishes") for one in found
    )
    hob = Appliance(id="hob", shoot="day", name="hob", kind=ApplianceKind.BURNERS, places=1)
    broad = replace(small.steps["bread/1"], places=2)
    assert any(one.startswith("the hob with room for 1, for Fry of dish 2") for one in words(timed(hob, broad)))


def test_forms_that_keep_too_short() -> None:
    short = replace(timed().foods["soaked"], keeps_days=0)
    pins = (
        Pin(id="p", shoot="day", conversion="soak", on=date(2026, 12, 1), at=time(9, 0)),
        Pin(id="q", shoot="day", conversion="cook", on=date(2026, 12, 2), at=time(9, 0)),
    )
    assert words(timed(short, *pins)) == [
        "soaked beans fit for no longer than 0 min",
        "the pin of Soak at 9:00 AM on Dec 1, 2026",
        "the pin of Cook at 9:00 AM on Dec 2, 2026",
    ]
