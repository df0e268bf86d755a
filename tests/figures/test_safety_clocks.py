"""Clocks of food out of the cold: reckoned by hand from pinned times, against the limits of the cited tables."""

from __future__ import annotations

from dataclasses import replace

from binder.figures.exposure import Stretch, Where, threads
from binder.figures.safety_clocks import SafetyClock, clock_text, longest_by_food, safety_clocks
from binder.kitchen.binder import Binder
from binder.kitchen.day import ApplianceKind
from binder.kitchen.recipe import Heat, Line, Recipe, Step
from binder.kitchen.reference import time_limits
from tests.figures.pinned_day import MILK, at, minutes, pinned_day, planned_day


def clocks(binder: Binder) -> tuple[SafetyClock, ...]:
    return safety_clocks(binder, "day", planned_day(binder))


def test_a_clock_runs_from_the_first_step_with_the_food_to_the_close() -> None:
    (clock,) = clocks(pinned_day([("09:00", {"foods": ()}), ("10:00", {"foods": ("milk",)})], close="11:30"))
    assert clock.foods == ("milk",)
    assert clock.minutes == minutes("10:00", "11:31")  # the close takes a minute
    assert clock.spans == ((at("10:00"), at("11:31"), 91),)
    assert not clock.over
    assert clock.runs_out is None
    assert clock.name == "1 Custard (hero)"


def test_the_fridge_stops_the_clock_and_does_not_turn_it_back() -> None:
    """Five minutes of mixing, a rest in the fridge until the next step, then out until the close."""
    chilled = {"heat": Heat.CHILL, "waiting_minutes": 60.0}
    (clock,) = clocks(pinned_day([("09:00", chilled), ("11:00", {})], close="11:30"))
    assert [total for _start, _end, total in clock.spans] == [5, 5 + 31]
    assert clock.minutes == 36


def test_heat_begins_it_anew() -> None:
    baked = {"heat": Heat.OVEN, "celsius": 180.0, "waiting_minutes": 30.0}
    (clock,) = clocks(pinned_day([("09:00", {}), ("09:50", baked), ("10:40", {})], close="11:00"))
    assert [total for _start, _end, total in clock.spans] == [50, minutes("10:25", "11:01")]
    assert clock.minutes == 50


def test_lukewarm_is_no_heat() -> None:
    proved = {"heat": Heat.OVEN, "celsius": 30.0, "waiting_minutes": 60.0}
    (clock,) = clocks(pinned_day([("09:00", proved)], close="10:30"))
    assert clock.minutes == 91


def test_two_hours_and_one_where_it_is_hot() -> None:
    """USDA FSIS: throw away after two hours, after one above 32 °C; when that is reached is told."""
    warm = pinned_day([("09:00", {})], close="11:00")
    (clock,) = clocks(warm)
    assert (clock.minutes, clock.limit.minutes, clock.over) == (121, 120, True)
    assert clock.runs_out == at("11:00")
    hot = pinned_day([("09:00", {})], replace(warm.shoots["day"], hot_set=True), close="11:00")
    (hotter,) = clocks(hot)
    assert (hotter.limit.minutes, hotter.runs_out) == (60, at("10:00"))
    assert not clocks(pinned_day([("09:00", {})], close="10:58"))[0].over


def test_it_says_so_with_sources_and_whom_to_ask() -> None:
    binder = pinned_day([("09:00", {})], close="11:30")
    (clock,) = clocks(binder)
    says = clock_text(binder, clock, "day")
    assert says.startswith("1 Custard (hero): milk out of the cold for 2 h 31 min, over 2 h (USDA ")
    assert "the limit is reached at 11:00" in says
    assert "4 h at most" in says
    assert "FDA Food Code 3-501.19" in says
    assert says.endswith("Follow your local food code and your own food-safety lead.")


def test_the_running_minutes_at_a_moment() -> None:
    (clock,) = clocks(pinned_day([("09:00", {"heat": Heat.CHILL, "waiting_minutes": 60.0}), ("11:00", {})]))
    assert clock.minutes_at(at("09:03")) == 3
    assert clock.minutes_at(at("10:00")) is None
    assert clock.minutes_at(at("11:10")) == 15


def test_what_was_made_ahead_brings_its_minutes_along() -> None:
    inner = (
        Recipe(id="base", name="Base", grams=100),
        Step(id="base/1", recipe="base", title="Stir", hands_on_minutes=20, hold_minutes=0),
        Line(id="base/milk", step="base/1", food="milk", low=100, high=100, unit="g"),
        Line(id="s1/base", step="s1", made="base", low=100, high=100, unit="g"),
    )
    found = clocks(pinned_day([("10:00", {"foods": ()})], *inner, close="10:30"))
    by_thread = {clock.thread: clock for clock in found}
    assert by_thread["base"].minutes == 20
    assert by_thread["hero"].minutes == 20 + 31
    assert longest_by_food(found)["milk"] is by_thread["hero"]


def test_food_that_needs_no_cold_has_no_clock() -> None:
    dry = replace(MILK, temperature_control=False)
    assert clocks(pinned_day([("09:00", {})], foods=(dry,))) == ()


def test_where_food_is_follows_its_steps() -> None:
    steps = [
        ("09:00", {"heat": Heat.PAN, "waiting_minutes": 10.0}),
        ("09:30", {"uses": ApplianceKind.FREEZER, "waiting_minutes": 30.0}),
    ]
    plan = planned_day(pinned_day(steps, close="11:00"))
    (thread,) = threads(plan)
    origin = plan.asked.clock.at(at("09:00"))
    shown = [Stretch(one.start - origin, one.end - origin, one.where) for one in thread.stretches]
    assert shown == [
        Stretch(0, 15, Where.HEAT),
        Stretch(15, 35, Where.OUT),
        Stretch(35, 121, Where.COLD),
    ]


def test_limits_are_those_of_the_table() -> None:
    limits = time_limits()
    assert (limits["two_hour"].minutes, limits["one_hour_hot_day"].celsius) == (120, 32)
    assert all(limit.source for limit in limits.values())
