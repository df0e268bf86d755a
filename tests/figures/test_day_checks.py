"""The checks that need the day planned."""

from __future__ import annotations

from dataclasses import replace
from datetime import time

from binder.figures.checks import Severity, failed
from binder.figures.day_checks import day_checks
from binder.figures.day_clash import day_clash
from binder.figures.day_repairs import day_repairs
from binder.kitchen.recipe import Heat
from tests.figures.pinned_day import StepAt, pinned_day, planned_day
from tests.figures.test_clash_words import two_heats
from tests.figures.test_day_plan import plan_of, timed


def test_a_day_with_a_plan_that_is_safe_stops_nothing() -> None:
    assert not failed(day_checks(timed(), "day", plan_of(timed())))


def test_no_plan_stops_the_shoot_and_says_what_would_help() -> None:
    binder = two_heats(time(11, 15))
    clash = day_clash(binder, "day")
    assert clash is not None
    (check,) = day_checks(binder, "day", None, clash=clash, repairs=day_repairs(binder, "day", clash))
    assert (check.kind, check.severity, check.place.id) == ("no plan", Severity.STOP, "day")
    assert "cannot all be had" in check.says
    assert "Or: Have a second oven." in check.says


def test_a_day_that_is_not_planned_in_time_is_not_taken_to_be_well() -> None:
    (check,) = day_checks(timed(), "day", None)
    assert (check.kind, check.severity) == ("no plan", Severity.WARN)
    assert "whether there is one is not known" in check.says
    undated = timed(replace(timed().shoots["day"], on=None))
    assert day_checks(undated, "day", None) == ()


def test_food_out_for_more_than_two_hours_warns() -> None:
    binder = pinned_day([("09:00", {})], close="11:30")
    (check,) = day_checks(binder, "day", planned_day(binder))
    assert (check.kind, check.severity) == ("out of the cold", Severity.WARN)


def test_what_is_to_be_kept_in_mind_is_a_note() -> None:
    steps: list[StepAt] = [("09:00", {"heat": Heat.PAN}), ("09:30", {"heat": Heat.CHILL, "waiting_minutes": 60.0})]
    binder = pinned_day(steps, close="11:00")
    (check,) = day_checks(binder, "day", planned_day(binder))
    assert (check.kind, check.severity) == ("cooling", Severity.NOTE)
