"""Planning on from where the day stands: what has begun stays, the rest moves, and broken holds are told."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime, time, timedelta

from hypothesis import given, settings
from hypothesis import strategies as st

from binder.figures.day_activities import ActivityKind
from binder.figures.day_plan import DayPlan, PlannedActivity, day_plan
from binder.figures.day_replan import Replanned, replan
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.day import FixedEvent, Pin
from binder.kitchen.edits.day import set_pin
from tests.figures.plan_checker import faults_of
from tests.figures.test_day_plan import plan_of, shoots, timed

DAY = date(2026, 12, 3)


def at(hour: int, minute: int) -> datetime:
    return datetime(2026, 12, 3, hour, minute)  # noqa: DTZ001


def go_on(binder: Binder, plan: DayPlan, now: datetime, late: float = 0) -> Replanned:
    found = replan(binder, "day", plan, now, late, seconds=8)
    assert found is not None
    return found


def by_key(plan: DayPlan | None) -> dict[str, PlannedActivity]:
    assert plan is not None
    return {one.activity.key: one for one in plan.activities}


def test_on_time_nothing_that_has_begun_moves() -> None:
    before = plan_of(timed())
    after = go_on(timed(), before, at(8, 20))
    assert (after.broken, after.says) == ((), ())
    old, new = by_key(before), by_key(after.plan)
    for key, one in old.items():
        if one.start < at(8, 20):
            assert (new[key].start, new[key].end, new[key].people) == (one.start, one.end, one.people)
            assert new[key].done
        else:
            assert new[key].start >= at(8, 20)
            assert not new[key].done
    assert after.plan is not None
    assert after.plan.wrap == before.wrap


def test_running_late_moves_what_has_not_begun_and_lengthens_what_has() -> None:
    before = plan_of(timed())
    filmed = next(one for one in before.activities if one.activity.kind is ActivityKind.TALK)
    now = filmed.start + timedelta(minutes=26)
    after = go_on(timed(), before, now, late=25)
    again = by_key(after.plan)[filmed.activity.key]
    assert (again.start, again.end) == (filmed.start, filmed.end + timedelta(minutes=25))
    assert after.plan is not None
    assert after.plan.wrap >= before.wrap + timedelta(minutes=25)


def test_a_hold_that_cannot_be_kept_any_more_is_told_with_its_age() -> None:
    """The flatbread is fried and must be filled soon; the close is pinned to 9:30, and it is fit for 5 minutes."""
    before = plan_of(timed())
    fried = next(one for one in before.activities if one.activity.key == "bread-swap/bread/1")
    late_close = Pin(id="p", shoot="day", dish="dish-bread", on=DAY, at=time(9, 30))
    binder = timed(replace(timed().steps["bread/2"], hold_minutes=5), late_close)
    after = go_on(binder, before, fried.end + timedelta(minutes=1), late=0)
    assert after.plan is not None
    (broken,) = after.broken
    filled = by_key(after.plan)["bread-swap/bread/2"].end
    age = int((at(9, 30) - filled).total_seconds()) // 60
    assert (broken.before, broken.after, broken.minutes) == ("bread-swap/bread/2", "dish-bread/talk", age - 5)
    assert broken.says == (
        f"Fill of dish 2 (swap-out) would be {age} min old at the close of dish 2; it stays fit for 5 min."
    )


def test_lunch_begins_when_the_shot_is_over() -> None:
    lunch = FixedEvent(id="lunch", shoot="day", name="Lunch", at=time(8, 24), minutes=45)
    binder = timed(lunch)
    before = plan_of(binder)
    shot = max((one for one in before.activities if one.end <= at(8, 24)), key=lambda one: one.end)
    now = shot.start + timedelta(minutes=21)
    after = go_on(binder, before, now, late=20)
    assert any(says.startswith("Lunch begins at") for says in after.says)


def test_a_wrap_that_is_set_may_be_passed_and_is_told() -> None:
    binder = timed(replace(timed().shoots["day"], wrap=time(9, 0)))
    before = plan_of(binder)
    after = go_on(binder, before, at(9, 5), late=60)
    assert after.plan is not None
    assert any("after the wrap that is set" in says for says in after.says)


def test_what_is_ticked_as_done_stays_where_it_was_done() -> None:
    before = plan_of(timed())
    fried = next(one for one in before.activities if one.activity.key == "bread-swap/bread/1")
    early = fried.start - timedelta(minutes=3)
    tick = set_pin(timed(), timed().shoots["day"], fried.activity.target, on=early.date(), at=early.time(), done=True)
    after = go_on(apply(timed(), tick), before, fried.start)
    assert by_key(after.plan)[fried.activity.key].start == early


def test_a_shoot_with_nothing_to_plan_has_nothing_to_plan_on() -> None:
    assert replan(timed(replace(timed().shoots["day"], on=None)), "day", plan_of(timed()), at(8, 0)) is None


@settings(max_examples=40)
@given(shoots(), st.integers(0, 240), st.sampled_from([0, 0, 10, 45]))
def test_every_plan_from_now_on_keeps_every_rule_but_what_it_tells(binder: Binder, minute: int, late: int) -> None:
    before = day_plan(binder, "day", seconds=4)
    if before is None:
        return
    now = at(7, 0) + timedelta(minutes=minute)
    after = replan(binder, "day", before, now, late, seconds=4)
    assert after is not None
    if after.plan is None:
        return
    question, found = after.plan.asked.question, after.plan.found
    loose = replace(
        question,
        gaps=tuple(
            replace(gap, most=None if gap.most is None else gap.most + found.broken.get(gap, 0))
            for gap in question.gaps
        ),
        tasks=tuple(replace(task, latest=None) for task in question.tasks),
    )
    assert faults_of(loose, found.starts, found.taken) == []
    for key, one in by_key(after.plan).items():
        assert one.start >= now or one.done or one.pinned, key
