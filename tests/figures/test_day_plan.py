"""The day plan of small shoots: what is planned keeps every rule, and reads as a cook would have it."""

from __future__ import annotations

import os
import subprocess
import sys
from dataclasses import replace
from datetime import date, datetime, time, timedelta
from itertools import pairwise
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st
from icalendar import Calendar

from binder.exchange.calendar_file import calendar_bytes
from binder.figures.clock import minutes_between
from binder.figures.day_activities import FILMED, ActivityKind
from binder.figures.day_checks import day_checks
from binder.figures.day_plan import DayPlan, PlannedActivity, day_plan, planned
from binder.figures.day_question import DayQuestion, day_question
from binder.figures.plan_program import find_plan
from binder.figures.prep_calendar import prep_calendar
from binder.kitchen.binder import Binder
from binder.kitchen.buying import Trip
from binder.kitchen.day import Appliance, ApplianceKind, FixedEvent, Person, Pin
from binder.kitchen.recipe import Step
from binder.kitchen.record import Record
from binder.kitchen.shoot import Build, BuildKind
from tests.figures.any_kitchen import any_kitchens
from tests.figures.plan_checker import faults_of
from tests.kitchen_binder import small_binder

DAY = date(2026, 12, 3)


def timed(*others: Record) -> Binder:
    """The small binder with times, shopped for two days ahead: blending waits an hour, what is fried is fit for ten
    minutes."""
    small = small_binder()
    times: list[Record] = [
        replace(small.steps["spread/1"], hands_on_minutes=10, waiting_minutes=60),
        replace(small.steps["spread/2"], hands_on_minutes=5),
        replace(small.steps["bread/1"], hands_on_minutes=8, hold_minutes=10),
        replace(small.steps["bread/2"], hands_on_minutes=4),
        replace(small.dishes["dish-spread"], camera_minutes=20),
        Trip(id="shopped", shoot="day", store="corner", on=date(2026, 12, 1)),
    ]
    return small_binder(*times, *others)


def plan_of(binder: Binder) -> DayPlan:
    plan = day_plan(binder, "day", seconds=10)
    assert plan is not None
    return plan


def one(plan: DayPlan, build: str, step: str) -> PlannedActivity:
    return next(
        done
        for done in plan.activities
        if done.activity.build == build and done.activity.step == step and done.activity.kind is not ActivityKind.WAIT
    )


def test_soaking_is_the_evening_before_and_cooking_before_it_is_needed() -> None:
    early = (
        Person(id="cook", shoot="day", name="Wren", arrives=time(6, 0)),
        Person(id="host", shoot="day", name="Ode", position=1, on_camera=True),
        Trip(id="trip", shoot="day", store="corner", on=date(2026, 12, 2)),
    )
    plan = plan_of(timed(*early))
    soak = next(done for done in plan.activities if done.activity.conversion == "soak")
    assert soak.start.date() == date(2026, 12, 2)
    assert soak.start.time() <= time(20, 0)


def test_the_camera_goes_on_with_the_swap_out_that_has_passed_the_wait() -> None:
    plan = plan_of(timed())
    waited, dressed = one(plan, "spread-swap", "spread/1"), one(plan, "spread-swap", "spread/2")
    assert dressed.activity.kind is ActivityKind.FILM
    assert (dressed.start - waited.end).total_seconds() >= 3600
    assert not any(
        done.activity.build == "spread-hero" and done.activity.step == "spread/2" for done in plan.activities
    )


def test_what_is_fried_is_no_older_than_its_hold_when_filmed() -> None:
    plan = plan_of(timed())
    fried, filled = one(plan, "bread-swap", "bread/1"), one(plan, "bread-swap", "bread/2")
    assert (filled.start - fried.end).total_seconds() <= 600


def test_dishes_are_filmed_in_running_order_with_a_reset_between() -> None:
    plan = plan_of(timed())
    filmed = [done for done in plan.activities if done.activity.kind in {ActivityKind.FILM, ActivityKind.TALK}]
    dishes = [done.activity.dish or "" for done in filmed]
    assert dishes == sorted(dishes, reverse=True)  # dish-spread, then dish-bread
    spread = [done for done in filmed if done.activity.dish == "dish-spread"]
    bread = [done for done in filmed if done.activity.dish == "dish-bread"]
    assert (bread[0].start - spread[-1].end).total_seconds() >= 300
    assert spread[0].start >= datetime(2026, 12, 3, 8, 0)  # noqa: DTZ001


def test_the_plan_says_how_good_it_is() -> None:
    plan = plan_of(timed())
    assert plan.proven
    assert "no plan can wrap earlier" in plan.says()
    loose = replace(plan, proven=False, bound=plan.wrap - timedelta(minutes=5))
    assert " ".join(loose.says().split()) == "No plan can wrap before 8:33 AM; this one wraps at 8:38 AM."


def test_nobody_works_through_lunch() -> None:
    lunch = FixedEvent(id="lunch", shoot="day", name="Lunch", at=time(9, 0), minutes=45)
    plan = plan_of(timed(lunch))
    for done in plan.activities:
        if done.activity.kind is not ActivityKind.WAIT and done.end > done.start:
            assert done.end.time() <= time(9, 0) or done.start.time() >= time(9, 45) or done.start.date() < DAY


def test_a_pinned_step_stays_where_it_is() -> None:
    pin = Pin(id="pin", shoot="day", dish="dish-bread", build="bread-hero", step="bread/1", on=DAY, at=time(11, 30))
    plan = plan_of(timed(pin))
    fried = one(plan, "bread-hero", "bread/1")
    assert fried.start == datetime(2026, 12, 3, 11, 30)  # noqa: DTZ001
    assert fried.pinned


def test_no_plan_is_none_and_no_date_has_none() -> None:
    tight = replace(timed().shoots["day"], wrap=time(8, 10))
    assert day_plan(timed(tight), "day", seconds=5) is None
    assert day_plan(timed(replace(timed().shoots["day"], on=None)), "day") is None


def test_what_is_not_said_is_assumed_and_named() -> None:
    plan = plan_of(small_binder())
    assert any("two pairs of hands" in says for says in plan.assumed)
    assert any("no time" in says for says in plan.assumed)
    named = (
        Person(id="p", shoot="day", name="Ode", on_camera=True),
        Person(id="q", shoot="day", name="Wren", position=1),
    )
    assert not any("hands are assumed" in says and "Nobody" in says for says in plan_of(timed(*named)).assumed)


def test_what_has_been_chilled_keeps_its_place_in_the_fridge_until_it_is_used() -> None:
    fridge = Appliance(id="fridge", shoot="day", name="fridge", kind=ApplianceKind.FRIDGE, places=1)
    chilled = replace(timed().steps["spread/1"], uses=ApplianceKind.FRIDGE, waiting_minutes=20)
    plan = plan_of(timed(fridge, chilled))
    kept = {key: task.until for key, task in plan.asked.question.by_key.items() if task.until}
    assert kept["spread-swap/spread/1/wait"] == ("spread-swap/spread/2",)
    starts = plan.found.starts
    spans = sorted((starts[key], max(starts[one] for one in until)) for key, until in kept.items())
    assert len(spans) > 1
    assert all(end <= begin for (_start, end), (begin, _end) in pairwise(spans))


def test_a_tool_is_washed_between_dishes() -> None:
    blender = Appliance(id="blender", shoot="day", name="blender", kind=ApplianceKind.TOOL, change_minutes=15)
    small = timed()
    both = [replace(small.steps[key], equipment=("blender",)) for key in ("spread/2", "bread/1")]
    plan = plan_of(timed(blender, *both))
    used = sorted((done for done in plan.activities if "blender" in done.resources), key=lambda done: done.start)
    groups = [(done.activity.dish, done) for done in used]
    for (dish, first), (other, second) in pairwise(groups):
        if dish != other:
            assert (second.start - first.end).total_seconds() >= 900


def assert_everyone_does_one_thing_at_a_time(asked: DayQuestion, plan: DayPlan) -> None:
    """Whoever has hands in something is there, able, and at nothing else; and nothing lacks hands."""
    people = {person.id: person for person in asked.kitchen.people}
    presenters = {key for key, person in people.items() if person.on_camera} or set(people)
    for done in plan.activities:
        if done.activity.kind is not ActivityKind.WAIT and done.end > done.start:
            assert len(done.people) == 1, done
        if done.activity.kind in FILMED:
            assert set(done.people) <= presenters
    for person in people:
        spans = sorted((done.start, done.end) for done in plan.activities if person in done.people)
        assert all(end <= begin for (_start, end), (begin, _end) in pairwise(spans))


def test_someone_who_left_before_lunch_is_not_missed_twice() -> None:
    people = (
        Person(id="host", shoot="day", name="Ode", on_camera=True),
        Person(id="early", shoot="day", name="Wren", position=1, leaves=time(8, 20)),
        FixedEvent(id="lunch", shoot="day", name="Lunch", at=time(8, 30), minutes=45),
    )
    assert plan_of(timed(*people)).wrap > datetime(2026, 12, 3, 9, 15)  # noqa: DTZ001


def test_who_fries_is_able_to() -> None:
    people = (
        Person(id="host", shoot="day", name="Ode", on_camera=True, skills=("Fry",)),
        Person(id="cook", shoot="day", name="Wren", position=1),
        replace(timed().steps["bread/1"], skill="fry"),
    )
    plan = plan_of(timed(*people))
    fried = [done for done in plan.activities if done.activity.step == "bread/1"]
    assert {done.people for done in fried} == {("host",)}
    nobody = replace(people[0], skills=())
    assert any("able to “fry”" in says for says in plan_of(timed(*people[1:], nobody)).assumed)


def test_as_few_people_work_as_can_do_it() -> None:
    people = [
        Person(id=f"p{at}", shoot="day", position=at, name=f"P{at}", on_camera=at == 0, arrives=time(7, at))
        for at in range(4)
    ]
    plan = plan_of(timed(*people))
    at_once = max(
        len({who for other in plan.activities if other.start <= done.start < other.end for who in other.people})
        for done in plan.activities
    )
    assert len({who for done in plan.activities for who in done.people}) == at_once


def test_a_second_swap_out_of_a_step_is_there_when_the_first_comes_on() -> None:
    second = Build(id="spread-second", dish="dish-spread", position=2, kind=BuildKind.SWAP_OUT, up_to="spread/1")
    whole = Build(id="spread-whole", dish="dish-spread", position=3, kind=BuildKind.SWAP_OUT)
    plan = plan_of(timed(second, whole))
    dressed = one(plan, "spread-swap", "spread/2")
    assert one(plan, "spread-second", "spread/1").end + timedelta(minutes=60) <= dressed.start
    assert one(plan, "spread-whole", "spread/2").end <= plan.wrap


def test_a_spare_is_fit_when_filming_of_its_dish_begins() -> None:
    spare = Build(id="spare", dish="dish-bread", position=2, kind=BuildKind.SPARE, up_to="bread/1")
    plan = plan_of(timed(spare))
    first = min(done.start for done in plan.activities if done.activity.dish == "dish-bread" and is_filmed(done))
    fried = one(plan, "spare", "bread/1")
    assert timedelta() <= first - fried.end <= timedelta(minutes=10)


def is_filmed(done: PlannedActivity) -> bool:
    return done.activity.kind in FILMED


def test_builds_of_a_dish_without_a_hero_are_done_by_the_wrap() -> None:
    small = timed()
    heroless = small_binder(
        *(record for record in small.steps.values()),
        replace(small.builds["bread-hero"], kind=BuildKind.TASTING),
    )
    plan = plan_of(heroless)
    assert max(done.end for done in plan.activities) <= plan.wrap


def test_a_shoot_may_run_past_midnight() -> None:
    late = replace(timed().shoots["day"], call=time(23, 30), wrap=time(1, 0))
    plan = plan_of(timed(late))
    assert plan.wrap.date() == date(2026, 12, 4)
    assert plan.wrap.time() < time(1, 0)
    assert "on Dec 4, 2026" in plan.says()


def test_prep_hours_are_on_the_wall_in_a_night_the_clocks_change() -> None:
    night = replace(timed().shoots["day"], on=date(2026, 10, 25), zone="Europe/Berlin")
    shopped = Trip(id="shopped", shoot="day", store="corner", on=date(2026, 10, 23))
    plan = plan_of(timed(night, shopped))
    soak = next(done for done in plan.activities if done.activity.conversion == "soak")
    cook = next(done for done in plan.activities if done.activity.conversion == "cook")
    assert minutes_between(soak.end, cook.start, "Europe/Berlin") >= 720
    assert time(8, 0) <= soak.start.time() <= soak.end.time() <= time(20, 0)


def test_work_through_the_night_the_clocks_go_forward_takes_its_time_and_not_an_hour_there_is_not() -> None:
    """From 2:00 to 3:00 on 28 March 2027 there is no time in Berlin; what is under way then ends later by the wall."""
    night = date(2027, 3, 28)
    shoot = replace(timed().shoots["day"], on=night, zone="Europe/Berlin", call=time(1, 30), prep_until=time(23, 0))
    plan = plan_of(timed(shoot, Trip(id="shopped", shoot="day", store="corner", on=date(2027, 3, 26))))
    minutes = plan.asked.question.by_key
    assert any(done.start < datetime.combine(night, time(2, 0)) < done.end for done in plan.activities)
    for done in plan.activities:
        assert minutes_between(done.start, done.end, "Europe/Berlin") == minutes[done.activity.key].minutes
        for moment in (done.start, done.end):
            assert not datetime.combine(night, time(2, 0)) <= moment < datetime.combine(night, time(3, 0))


def test_an_oven_is_cold_in_the_morning() -> None:
    oven = Appliance(id="oven", shoot="day", name="oven", kind=ApplianceKind.OVEN, change_minutes=25)
    baked = replace(timed().steps["bread/1"], uses=ApplianceKind.OVEN, heat=None)
    plan = plan_of(timed(oven, baked))
    assert min(done.start for done in plan.activities if "oven" in done.resources).time() >= time(8, 25)


def test_what_is_fetched_on_a_trip_is_not_used_before() -> None:
    trip = Trip(id="trip", shoot="day", store="corner", on=date(2026, 12, 2))
    plan = plan_of(timed(trip, replace(timed().shoots["day"], prep_until=time(23, 0))))
    soak = next(done for done in plan.activities if done.activity.conversion == "soak")
    assert soak.start >= datetime(2026, 12, 2, 12, 0)  # noqa: DTZ001


def test_anything_can_be_pinned() -> None:
    pins = (
        Pin(id="a", shoot="day", conversion="soak", on=date(2026, 12, 1), at=time(9, 5)),
        Pin(id="b", shoot="day", step="spread/1", on=date(2026, 12, 2), at=time(15, 0)),
        Pin(id="c", shoot="day", dish="dish-spread", on=DAY, at=time(10, 0)),
    )
    plan = plan_of(timed(*pins))
    pinned = {done.activity.key: done.start for done in plan.activities if done.pinned}
    assert pinned == {
        "conversion/soak": datetime(2026, 12, 1, 9, 5),  # noqa: DTZ001
        "ahead/spread/1": datetime(2026, 12, 2, 15, 0),  # noqa: DTZ001
        "dish-spread/talk": datetime(2026, 12, 3, 10, 0),  # noqa: DTZ001
    }


def test_what_is_done_stays_even_where_it_broke_a_rule() -> None:
    before_the_soak = Pin(id="a", shoot="day", conversion="cook", on=date(2026, 12, 1), at=time(3, 0), done=True)
    plan = plan_of(timed(before_the_soak))
    cook = next(done for done in plan.activities if done.activity.conversion == "cook")
    assert (cook.start, cook.done) == (datetime(2026, 12, 1, 3, 0), True)  # noqa: DTZ001


def test_a_plan_told_on_the_way_is_whole_and_the_search_can_be_left() -> None:
    told: list[DayPlan] = []

    def enough(plan: DayPlan) -> bool:
        told.append(plan)
        return False

    plan = day_plan(timed(), "day", progress=enough)
    assert plan is not None
    assert told
    assert len(told[0].activities) == len(plan.activities)
    assert day_plan(timed(), "day", going_on=lambda: False, seconds=30) is None


_ANOTHER_RUN = """
from tests.figures.test_day_plan import times_and_people
print(times_and_people())
"""


def times_and_people() -> str:
    """Everything that is read off a plan of a shoot with some choice of hands."""
    people = [Person(id=f"p{at}", shoot="day", position=at, name=f"P{at}", skills=(str(at),)) for at in range(3)]
    plan = plan_of(timed(*people))
    return repr([(done.activity.key, done.start, done.people, done.resources) for done in plan.activities])


def test_a_shoot_has_one_plan_however_often_and_wherever_it_is_asked_for() -> None:
    """Sheets printed by another run of the program, and a calendar sent twice, say the same."""
    here = times_and_people()
    environment = {**os.environ, "PYTHONHASHSEED": "7", "PYTHONPATH": str(Path(__file__).parents[2])}
    there = subprocess.run(
        [sys.executable, "-c", _ANOTHER_RUN], env=environment, capture_output=True, text=True, check=True
    )
    assert there.stdout.strip() == here


def test_a_plan_begins_from_one_that_is_near() -> None:
    first = plan_of(timed())
    pin = Pin(id="c", shoot="day", dish="dish-spread", on=DAY, at=time(10, 0))
    again = day_plan(timed(pin), "day", near=first, seconds=10)
    assert again is not None
    assert again.wrap > first.wrap


def test_a_date_at_the_beginning_of_the_calendar_has_no_plan() -> None:
    assert day_plan(timed(replace(timed().shoots["day"], on=date.min)), "day") is None
    assert day_plan(timed(replace(timed().shoots["day"], on=date.max)), "day") is None


def test_every_pair_of_hands_does_one_thing_at_a_time() -> None:
    asked = day_question(timed(), "day")
    assert asked is not None
    assert_everyone_does_one_thing_at_a_time(asked, plan_of(timed()))


def test_dishes_may_change_places_where_the_shoot_allows_it() -> None:
    free = replace(timed().shoots["day"], may_reorder=True)
    assert plan_of(timed(free)).wrap <= plan_of(timed()).wrap


@st.composite
def shoots(draw: st.DrawFn) -> Binder:
    """The small shoot with other times, holds, builds, people and appliances."""
    small = small_binder()
    minutes = st.integers(0, 40)
    steps = [
        replace(
            step,
            hands_on_minutes=draw(minutes),
            waiting_minutes=draw(st.sampled_from([0, 0, 15, 90])),
            hold_minutes=draw(st.sampled_from([None, None, 20, 120])),
            uses=draw(st.sampled_from([None, ApplianceKind.OVEN, ApplianceKind.BURNERS, ApplianceKind.FRIDGE])),
            celsius=draw(st.sampled_from([150.0, 220.0])),
            on_camera=draw(st.booleans()),
            skill=draw(st.sampled_from(["", "", "fry"])),
        )
        for step in small.steps.values()
    ]
    people: list[Record] = [
        Person(
            id=f"p{at}",
            shoot="day",
            position=at,
            name=f"P{at}",
            on_camera=at == 0,
            arrives=time(draw(st.integers(5, 8))),
            leaves=draw(st.sampled_from([None, None, time(12, 30)])),
            skills=draw(st.sampled_from([(), ("fry",)])),
        )
        for at in range(draw(st.integers(0, 3)))
    ]
    oven: list[Record] = [
        Appliance(id=f"o{at}", shoot="day", name=f"oven {at}", kind=ApplianceKind.OVEN, places=1, change_minutes=10)
        for at in range(draw(st.integers(0, 2)))
    ]
    kinds = draw(st.lists(st.sampled_from(list(BuildKind)), max_size=3))
    builds: list[Record] = [
        Build(
            id=f"b{at}", dish="dish-spread", position=5 + at, kind=kind, up_to=draw(st.sampled_from([None, "spread/1"]))
        )
        for at, kind in enumerate(kinds)
    ]
    shoot = replace(small.shoots["day"], may_reorder=draw(st.booleans()), reset_minutes=draw(st.sampled_from([0, 5])))
    lunch = FixedEvent(id="lunch", shoot="day", name="Lunch", at=time(12, 0), minutes=draw(st.sampled_from([0, 45])))
    return small_binder(*steps, *people, *oven, *builds, shoot, lunch)


@settings(max_examples=300)
@given(shoots(), st.booleans())
def test_every_plan_of_a_random_shoot_keeps_every_rule(binder: Binder, first: bool) -> None:
    """The first plan that is found as well as the best: each may be what someone works by."""
    asked = day_question(binder, "day")
    assert asked is not None
    found = find_plan(asked.question, asked.aims, seconds=2, progress=lambda _plan: not first)
    if found is None:
        return
    assert faults_of(asked.question, found.starts, found.taken) == []
    plan = planned(asked, found)
    assert len(plan.activities) == len(asked.question.tasks)
    assert plan.bound <= plan.wrap
    assert_everyone_does_one_thing_at_a_time(asked, plan)
    for holding in plan.holdings:
        assert holding.start < holding.end
        assert holding.fit_until is None or holding.end <= holding.fit_until


@settings(max_examples=100)
@given(any_kitchens())
def test_any_kitchen_has_a_plan_that_keeps_every_rule_or_none(binder: Binder) -> None:
    """Forms made from each other, builds up to steps of other recipes, leads of a year, no people, no times."""
    asked = day_question(binder, "day")
    if asked is None:
        return
    found = find_plan(asked.question, asked.aims, seconds=1)
    if found is None:
        return
    assert faults_of(asked.question, found.starts, found.taken) == []
    plan = planned(asked, found)
    assert plan.says()
    assert day_checks(binder, "day", plan) is not None
    entries = prep_calendar(binder, "day", plan)
    events = Calendar.from_ical(calendar_bytes(binder.shoots["day"], entries, as_of=DAY)).walk("VEVENT")
    assert len({event["UID"] for event in events}) == len(entries)


def test_a_step_longer_than_the_day_has_no_plan_but_no_crash() -> None:
    endless: Step = replace(small_binder().steps["bread/1"], hands_on_minutes=60 * 30)
    assert day_plan(timed(endless), "day", seconds=5) is None
