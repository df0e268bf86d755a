"""The chickpea sample's day: soaked the evening before, chilled, fried fresh; and what becomes of it when pinned."""

from __future__ import annotations

from dataclasses import replace
from datetime import time, timedelta
from itertools import pairwise
from typing import TYPE_CHECKING

import pytest

from binder.figures.clash_words import clash_sentence
from binder.figures.day_activities import ActivityKind
from binder.figures.day_clash import day_clash
from binder.figures.day_plan import DayPlan, day_plan
from binder.figures.day_repairs import day_repairs
from binder.kitchen.day import ApplianceKind, Pin
from binder.kitchen.recipe import Heat
from tests.samples.opened import planned, sample, shoot_of, with_records

if TYPE_CHECKING:
    from binder.figures.day_plan import PlannedActivity
    from binder.kitchen.binder import Binder

CHICKPEAS = sample("chickpeas")
SHOOT = shoot_of(CHICKPEAS)
BREAD_BAKED = "sun_bread/4"


def activities(step: str, *, kind: ActivityKind | None = None) -> list[PlannedActivity]:
    """What is planned of a step, in order of time."""
    every = planned("chickpeas").activities
    return [one for one in every if one.activity.step == step and kind in {None, one.activity.kind}]


def filmed(step: str) -> PlannedActivity:
    """A step as the camera sees it."""
    (one,) = activities(step, kind=ActivityKind.FILM)
    return one


def test_it_is_soaked_the_evening_before_by_the_cook_who_comes_in_for_it() -> None:
    plan = planned("chickpeas")
    (soak,) = [one for one in plan.activities if one.activity.conversion == "soak"]
    (cook,) = [one for one in plan.activities if one.activity.conversion == "cook"]
    assert soak.start.date().isoformat() == "2026-12-07"
    assert 17 <= soak.start.hour < 20
    assert cook.start - soak.end >= timedelta(hours=12)
    assert [CHICKPEAS.people[person].role for person in soak.people] == ["lead cook"]


def test_everything_else_is_done_on_the_day_within_call_and_wrap() -> None:
    plan, shoot = planned("chickpeas"), CHICKPEAS.shoots[SHOOT]
    assert shoot.wrap is not None
    assert [one.activity.conversion for one in plan.activities if one.start.date() != shoot.on] == ["soak"]
    assert plan.wrap.time() <= shoot.wrap


def test_each_mousse_is_chilled_for_four_hours_before_it_is_finished() -> None:
    chill, finish = "midnight_mousse/4", "midnight_mousse/5"
    set_by = {one.activity.build: one.end for one in activities(chill, kind=ActivityKind.WAIT) if _is_cold(one)}
    for finished in activities(finish):
        assert set_by[finished.activity.build] <= finished.start
    for one in activities(chill, kind=ActivityKind.WAIT):
        assert one.end - one.start == timedelta(hours=4)
    hold = CHICKPEAS.steps[chill].hold_minutes
    assert hold is not None
    assert filmed(finish).start - min(set_by.values()) <= timedelta(minutes=hold)


def _is_cold(one: PlannedActivity) -> bool:
    return any(CHICKPEAS.appliances[key].kind is ApplianceKind.FRIDGE for key in one.resources)


def test_the_fritters_are_no_older_than_ten_minutes_when_they_are_filmed() -> None:
    (fry,) = [step for step in CHICKPEAS.steps.where("recipe", "green_heart_fritters") if step.heat is Heat.OIL]
    fried, served = filmed(fry.id), filmed("green_heart_fritters/6")
    assert fried.activity.build == served.activity.build
    assert timedelta(0) <= served.start - fried.end <= timedelta(minutes=10)


def test_the_camera_goes_on_with_dough_that_has_rested_and_bread_that_is_baked() -> None:
    builds = [filmed(f"sun_bread/{number}").activity.build for number in (1, 4, 5)]
    assert [CHICKPEAS.builds[build or ""].up_to for build in builds] == [None, "sun_bread/2", "sun_bread/4"]
    assert filmed("sun_bread/5").start - filmed("sun_bread/1").start < timedelta(minutes=30)


def test_nobody_works_at_lunch_and_the_food_processor_is_washed_between_dishes() -> None:
    at_lunch = [
        one
        for one in planned("chickpeas").activities
        if one.people and one.start.time() < time(13, 30) and one.end.time() > time(12, 45)
    ]
    assert [one.activity.name for one in at_lunch if one.start.date() == CHICKPEAS.shoots[SHOOT].on] == []
    (processor,) = [one for one in CHICKPEAS.appliances.values() if one.name == "food processor"]
    uses = [one for one in planned("chickpeas").activities if processor.id in one.resources]
    for earlier, later in pairwise(uses):
        if earlier.activity.dish != later.activity.dish:
            assert later.start - earlier.end >= timedelta(minutes=processor.change_minutes)


# --- the oven dish is dragged


def _dragged_to(at: time) -> Binder:
    """The binder with the baking of the bread that is cut pinned to another time."""
    (baked,) = activities(BREAD_BAKED, kind=ActivityKind.PREP)
    target = baked.activity.target
    pin = Pin(
        id="dragged", shoot=SHOOT, dish=target.dish, build=target.build, step=target.step, on=baked.start.date(), at=at
    )
    return with_records(CHICKPEAS, pin)


def test_the_bread_is_baked_late_in_the_morning() -> None:
    (baked,) = activities(BREAD_BAKED, kind=ActivityKind.PREP)
    assert time(11, 30) <= baked.start.time() <= time(12, 5)


def test_after_lunch_instead_all_else_is_planned_anew_around_it() -> None:
    plan = day_plan(_dragged_to(time(13, 35)), SHOOT, near=planned("chickpeas"))
    assert plan is not None
    (baked,) = [one for one in plan.activities if one.pinned]
    assert baked.start.time() == time(13, 35)
    assert plan.wrap > planned("chickpeas").wrap
    assert _freshly_fried(plan)


def _freshly_fried(plan: DayPlan) -> bool:
    fried, served = (
        next(one for one in plan.activities if one.activity.step == f"green_heart_fritters/{number}")
        for number in (5, 6)
    )
    return served.start - fried.end <= timedelta(minutes=10)


def test_an_hour_later_it_runs_into_lunch_and_that_is_said_with_what_would_help() -> None:
    binder = _dragged_to(time(12, 50))
    assert day_plan(binder, SHOOT) is None
    clash = day_clash(binder, SHOOT)
    assert clash is not None
    assert "Lunch at 12:45" in clash_sentence(clash)
    assert "the pin of Pour and bake of dish 4 (swap-out 2)" in clash_sentence(clash)
    repairs = [repair.says for repair in day_repairs(binder, SHOOT, clash) if repair.enough]
    assert "Let go of the pin of Pour and bake of Skillet Sun Bread." in repairs


@pytest.mark.parametrize("kind", [ApplianceKind.OVEN, ApplianceKind.BURNERS, ApplianceKind.FRIDGE])
def test_the_kitchen_has_what_the_recipes_ask_for(kind: ApplianceKind) -> None:
    assert CHICKPEAS.appliances.where("kind", kind)


def test_a_crew_without_the_cook_who_can_fry_leaves_it_to_the_presenter() -> None:
    cook = next(person for person in CHICKPEAS.people.values() if person.role == "lead cook")
    assert "deep-frying" in cook.skills
    assert day_plan(with_records(CHICKPEAS, replace(cook, skills=())), SHOOT, seconds=20) is not None
