"""The day plan of small shoots: what is planned keeps every rule, and reads as a cook would have it."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime, time
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from binder.figures.day_activities import ActivityKind
from binder.figures.day_plan import DayPlan, PlannedActivity, day_plan, day_question, planned
from binder.figures.plan_program import find_plan
from binder.kitchen.binder import Binder
from binder.kitchen.day import Appliance, ApplianceKind, FixedEvent, Person, Pin
from binder.kitchen.recipe import Step
from binder.kitchen.record import Record
from binder.kitchen.shoot import Build, BuildKind
from tests.figures.plan_checker import faults_of
from tests.kitchen_binder import small_binder

DAY = date(2026, 12, 3)


def timed(*others: Record) -> Binder:
    """The small binder with times: blending waits an hour, frying is fit for ten minutes."""
    small = small_binder()
    times: list[Record] = [
        replace(small.steps["spread/1"], hands_on_minutes=10, waiting_minutes=60),
        replace(small.steps["spread/2"], hands_on_minutes=5),
        replace(small.steps["bread/1"], hands_on_minutes=8, hold_minutes=10),
        replace(small.steps["bread/2"], hands_on_minutes=4),
        replace(small.dishes["dish-spread"], camera_minutes=20),
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
    loose = replace(plan, proven=False)
    assert loose.says().startswith("No plan can wrap before")


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


def test_every_pair_of_hands_does_one_thing_at_a_time() -> None:
    plan = plan_of(timed())
    for person in {who for done in plan.activities for who in done.people}:
        spans = sorted((done.start, done.end) for done in plan.activities if person in done.people)
        assert all(end <= begin for (_start, end), (begin, _end) in pairwise(spans))


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
    return small_binder(*steps, *people, *oven, *builds, shoot)


@settings(max_examples=300)
@given(shoots())
def test_every_plan_of_a_random_shoot_keeps_every_rule(binder: Binder) -> None:
    asked = day_question(binder, "day")
    assert asked is not None
    found = find_plan(asked.question, asked.aims, seconds=4)
    if found is None:
        return
    assert faults_of(asked.question, found.starts, found.taken) == []
    plan = planned(asked, found)
    assert len(plan.activities) == len(asked.question.tasks)
    assert plan.bound <= plan.wrap


def test_a_step_longer_than_the_day_has_no_plan_but_no_crash() -> None:
    endless: Step = replace(small_binder().steps["bread/1"], hands_on_minutes=60 * 30)
    assert day_plan(timed(endless), "day", seconds=5) is None
