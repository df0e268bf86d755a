"""Bars: hands, waits and fitness as steps say them; what is pinned is drawn where it is pinned, at once."""

from __future__ import annotations

from datetime import date, time

from binder.desktop.day_page.bars import bars_of, in_order, moved
from binder.figures.day_activities import ActivityKind
from binder.figures.day_plan import DayPlan
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.edits.day import set_pin


def test_every_activity_but_waits_in_appliances_has_a_bar(chickpeas: Binder, plan: DayPlan) -> None:
    bars = bars_of(chickpeas, plan)
    waits = {one.activity.key for one in plan.activities if one.activity.kind is ActivityKind.WAIT}
    assert set(bars) == {one.activity.key for one in plan.activities} - waits


def test_a_bar_waits_as_its_step_says(chickpeas: Binder, plan: DayPlan) -> None:
    bars = bars_of(chickpeas, plan)
    for bar in bars.values():
        step = chickpeas.steps.get(bar.activity.step or "")
        if step is not None:
            assert bar.ready - bar.end == round(step.waiting_minutes)
    soak = next(bar for bar in bars.values() if bar.activity.conversion == "soak")
    assert soak.ready - soak.end == 720


def test_a_pin_moves_its_bar_before_the_plan_has_followed(chickpeas: Binder, plan: DayPlan) -> None:
    bar = next(bar for bar in bars_of(chickpeas, plan).values() if bar.activity.kind is ActivityKind.PREP)
    shoot = chickpeas.shoots["day"]
    pinned = apply(chickpeas, set_pin(chickpeas, shoot, bar.target, on=date(2026, 11, 6), at=time(11, 15)))
    after = bars_of(pinned, plan)[bar.key]
    assert f"{plan.asked.wall(after.start):%H:%M}" == "11:15"
    assert after.pinned
    assert not after.done
    assert after.end - after.start == bar.end - bar.start
    assert after.ready - after.end == bar.ready - bar.end


def test_moving_keeps_lengths(plan: DayPlan, chickpeas: Binder) -> None:
    for bar in bars_of(chickpeas, plan).values():
        there = moved(bar, bar.start + 17)
        assert (there.end, there.ready) == (bar.end + 17, bar.ready + 17)


def test_bars_stand_in_the_order_they_begin(chickpeas: Binder, plan: DayPlan) -> None:
    starts = [bar.start for bar in in_order(bars_of(chickpeas, plan))]
    assert starts == sorted(starts)
