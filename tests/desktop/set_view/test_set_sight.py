"""What the set sees at a moment: the camera, what must start, the swap-out, timers; ticks before the clock."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from binder.desktop.day_page.bars import Bar, Bars, in_order
from binder.desktop.set_view.set_sight import AHEAD, FORGOTTEN, RINGS, SetSight, called, set_sight
from binder.figures.day_plan import DayPlan
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.day import Person
from binder.kitchen.edits.shoots import set_build
from binder.kitchen.shoot import BuildState


class Day:
    """A planned day to look at, with some of it ticked."""

    def __init__(self, binder: Binder, plan: DayPlan, bars: Bars) -> None:
        self.binder, self.plan, self.bars = binder, plan, dict(bars)

    def wall(self, minute: float) -> datetime:
        return self.plan.asked.wall(minute)

    def filmed(self) -> list[Bar]:
        return [bar for bar in in_order(self.bars) if bar.filmed]

    def made(self) -> list[Bar]:
        return [bar for bar in in_order(self.bars) if not bar.filmed and bar.activity.build]

    def tick(self, bar: Bar) -> None:
        self.bars[bar.key] = replace(bar, pinned=True, done=True)

    def at(self, minute: float) -> SetSight:
        return set_sight(self.binder, self.plan, self.bars, self.wall(minute))


@pytest.fixture
def day(chickpeas: Binder, set_plan: DayPlan, set_bars: Bars) -> Day:
    return Day(chickpeas, set_plan, set_bars)


def test_without_ticks_the_camera_follows_the_plan(day: Day) -> None:
    first, second = day.filmed()[:2]
    sight = day.at(first.start)
    assert sight.filmed is not None
    assert sight.filmed.what == first.activity.name
    assert sight.filmed.until == day.wall(first.end)
    assert sight.next_filmed is not None
    assert sight.next_filmed.key == second.key


def test_before_the_first_take_nothing_is_filmed(day: Day) -> None:
    first = day.filmed()[0]
    sight = day.at(first.start - 1)
    assert sight.filmed is None
    assert sight.next_filmed is not None
    assert sight.next_filmed.key == first.key


def test_once_the_camera_is_ticked_only_ticks_count(day: Day) -> None:
    first, second, third = day.filmed()[:3]
    day.tick(first)
    sight = day.at(third.start)
    assert sight.filmed is not None
    assert sight.filmed.what == first.activity.name
    assert sight.filmed.over
    assert sight.next_filmed is not None
    assert sight.next_filmed.key == second.key
    assert sight.next_filmed.now


def test_after_the_last_take_it_is_a_wrap(day: Day) -> None:
    last = day.filmed()[-1]
    sight = day.at(last.end + 1)
    assert (sight.filmed, sight.next_filmed) == (None, None)


def test_what_must_start_is_shown_twenty_minutes_ahead_and_not_before(day: Day) -> None:
    bar = day.made()[0]
    assert bar.key not in {due.key for due in day.at(bar.start - AHEAD - 1).due}
    assert bar.key in {due.key for due in day.at(bar.start - AHEAD).due}
    later = day.at(bar.start - AHEAD - 1).later
    assert later is not None


def test_what_should_have_started_comes_first_and_stands_out(day: Day) -> None:
    bar = day.made()[0]
    due = {one.key: one for one in day.at(bar.start + 3).due}[bar.key]
    assert due.now
    assert due.late == pytest.approx(3)
    starts = [one.at for one in day.at(bar.start + 3).due]
    assert starts == sorted(starts)


def test_what_nobody_ticks_falls_away_after_a_while(day: Day) -> None:
    bar = day.made()[0]
    assert bar.key in {due.key for due in day.at(bar.start + FORGOTTEN - 1).due}
    assert bar.key not in {due.key for due in day.at(bar.start + FORGOTTEN).due}


def test_a_tick_takes_it_off_the_list(day: Day) -> None:
    bar = day.made()[0]
    day.tick(bar)
    assert bar.key not in {due.key for due in day.at(bar.start).due}


def test_the_next_swap_out_says_where_it_stands(day: Day) -> None:
    first = next(bar for bar in day.filmed() if bar.activity.build and bar.activity.build.endswith("swap"))
    assert first.activity.build is not None
    before = day.at(first.start - 1)
    assert before.swap_out is not None
    assert (before.swap_out.build, before.swap_out.at) == (first.activity.build, day.wall(first.start))
    steps = [bar for bar in day.made() if bar.activity.build == first.activity.build]
    if steps:
        early = day.at(steps[0].start - 1).swap_out
        assert early is not None
        assert early.says.startswith("at ")
    build = day.binder.builds[first.activity.build]
    day.binder = apply(day.binder, set_build(day.binder, build, state=BuildState.READY))
    ready = day.at(first.start - 1).swap_out
    assert ready is not None
    assert ready.says == "ready, fridge, shelf 2"
    day.binder = apply(day.binder, set_build(day.binder, day.binder.builds[build.id], state=BuildState.SPOILED))
    other = day.at(first.start - 1).swap_out
    assert other is None or other.build != build.id


def test_a_timer_runs_while_something_waits_and_a_while_after(day: Day) -> None:
    bar = next(bar for bar in day.made() if 0 < bar.ready - bar.end <= 60)

    def timer(minute: float) -> timedelta | None:
        sight = day.at(minute)
        found = [one for one in sight.timers if one.key == bar.key]
        return found[0].left(sight.now) if found else None

    assert timer(bar.end - 1) is None
    assert timer(bar.end) == timedelta(minutes=bar.ready - bar.end)
    assert timer(bar.ready - 0.5) == timedelta(seconds=30)
    assert timer(bar.ready) == timedelta(0)
    assert timer(bar.ready + RINGS) is None


def test_the_first_timer_to_ring_is_the_first(day: Day) -> None:
    for minute in range(day.filmed()[0].start, day.filmed()[-1].end, 7):
        ends = [timer.ends for timer in day.at(minute).timers]
        assert ends == sorted(ends)


def test_cautions_stand_where_the_hazard_is(day: Day) -> None:
    hot = [bar for bar in in_order(day.bars) if "hot_oil" in hazards_of(day.binder, bar)]
    assert hot, "the chickpea day fries"
    for bar in hot:
        sight = day.at(bar.start)
        seen = sight.filmed if bar.filmed else next(due for due in sight.due if due.key == bar.key)
        assert seen is not None
        assert "Hot oil" in [caution.title for caution in seen.cautions]


def hazards_of(binder: Binder, bar: Bar) -> tuple[str, ...]:
    step = binder.steps.get(bar.activity.step or "")
    return tuple(step.hazards) if step is not None else ()


def test_people_are_called_by_the_first_of_their_names_where_that_is_theirs_alone() -> None:
    names = ("Ode Quill", "Ona Reed", "Ona Moss")
    people = [Person(id=f"p{at}", shoot="day", name=name) for at, name in enumerate(names)]
    assert called(people, ["p0", "p1"]) == "Ode and Ona Reed"
    assert called(people, ["p2"]) == "Ona Moss"
