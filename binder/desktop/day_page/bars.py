"""What the timeline draws of each activity: hands, then a wait, then how long its result stays fit. Plain Python.

Minutes are those of the plan.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from binder.figures.day_activities import FILMED, ActivityKind, wait_after

if TYPE_CHECKING:
    from collections.abc import Mapping

    from binder.figures.day_activities import Activity
    from binder.figures.day_plan import DayPlan, PlannedActivity
    from binder.figures.day_question import DayQuestion
    from binder.kitchen.binder import Binder
    from binder.kitchen.day import Pin, PinTarget


@dataclass(frozen=True)
class Bar:
    """One activity: hands from `start` to `end`, then its result waits until `ready` and is fit until `fresh_until`.

    `stands` are the appliances it takes while it waits, `uses` those it takes with hands on. `degrees` is what an oven
    must be at, in °C. `minutes` of a pinned one are kept; a done one has begun.
    """

    activity: Activity
    start: int
    end: int
    ready: int
    fresh_until: int | None = None
    number: int | None = None
    people: tuple[str, ...] = ()
    uses: tuple[str, ...] = ()
    stands: tuple[str, ...] = ()
    degrees: int = 0
    pinned: bool = False
    done: bool = False
    waits_for: tuple[str, ...] = ()

    @property
    def key(self) -> str:
        """The key of its task."""
        return self.activity.key

    @property
    def filmed(self) -> bool:
        """Whether the camera sees it."""
        return self.activity.kind in FILMED

    @property
    def target(self) -> PinTarget:
        """What pins it."""
        return self.activity.target

    @property
    def last(self) -> int:
        """The minute of the last thing that is drawn of it."""
        return max(self.end, self.ready, self.fresh_until or 0)


Bars = dict[str, Bar]
"""The bars of a day by the keys of their tasks, in the order they begin."""


def bars_of(binder: Binder, plan: DayPlan) -> Bars:
    """The bars of a plan, pins as they are in the binder now. A wait in an appliance is drawn with its step."""
    waits = {one.activity.key: one for one in plan.activities if one.activity.kind is ActivityKind.WAIT}
    bars = (
        _bar(binder, plan, one, waits.get(wait_after(one.activity.key)))
        for one in plan.activities
        if one.activity.key not in waits
    )
    pins = {pin.target: pin for pin in binder.pins.where("shoot", plan.asked.clock.shoot.id)}
    return {bar.key: _as_pinned(plan.asked, bar, pins.get(bar.target)) for bar in bars}


def _bar(binder: Binder, plan: DayPlan, one: PlannedActivity, wait: PlannedActivity | None) -> Bar:
    asked, activity = plan.asked, one.activity
    task = asked.question.by_key[activity.key if wait is None else wait.activity.key]
    start = plan.found.starts[activity.key]
    end = start + asked.question.by_key[activity.key].minutes
    waiting, hold = _after_hands(binder, asked, activity)
    dish = binder.dishes.get(activity.dish or "")
    return Bar(
        activity,
        start,
        end,
        ready=end + waiting,
        fresh_until=None if hold is None else end + waiting + hold,
        number=dish.position + 1 if dish else None,
        people=one.people,
        uses=one.resources,
        stands=wait.resources if wait else (),
        degrees=task.state,
        waits_for=one.waits_for,
    )


def _after_hands(binder: Binder, asked: DayQuestion, activity: Activity) -> tuple[int, int | None]:
    """How long the result waits, and how long it is fit after that."""
    step = binder.steps.get(activity.step or "")
    if step is not None:
        hold = None if step.hold_minutes is None else math.floor(step.hold_minutes)
        return math.ceil(step.waiting_minutes), hold
    gaps = [gap for gap in asked.question.gaps if gap.before == activity.key and activity.conversion is not None]
    least = max((gap.least for gap in gaps), default=0)
    most = min((gap.most for gap in gaps if gap.most is not None), default=None)
    return least, None if most is None else max(0, most - least)


def _as_pinned(asked: DayQuestion, bar: Bar, pin: Pin | None) -> Bar:
    """A bar where it is pinned now: what someone has just moved is there at once, before the rest has followed."""
    if pin is None:
        return bar
    return replace(moved(bar, asked.clock.minute(pin.on, pin.at)), pinned=True, done=pin.done)


def moved(bar: Bar, start: int) -> Bar:
    """A bar that begins at another minute."""
    by = start - bar.start
    fresh = None if bar.fresh_until is None else bar.fresh_until + by
    return replace(bar, start=start, end=bar.end + by, ready=bar.ready + by, fresh_until=fresh)


def in_order(bars: Mapping[str, Bar]) -> list[Bar]:
    """Bars in the order they begin."""
    return sorted(bars.values(), key=lambda bar: (bar.start, bar.key))
