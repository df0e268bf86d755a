"""Everything the timeline shows of a plan, in plain Python: its rows, its axis, what is marked along it, and now."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.desktop.day_page.axis import Span, spans_of
from binder.desktop.day_page.bars import Bars, bars_of
from binder.desktop.day_page.rows import Group, Minutes, Rows, groups_of
from binder.figures.date_text import DateForm, date_text, time_text
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator
    from datetime import date, datetime

    from binder.figures.day_plan import DayPlan
    from binder.kitchen.binder import Binder


@dataclass(frozen=True)
class AxisMark:
    """Something at a minute that a word at the head says: call, lunch, wrap."""

    minute: int
    text: str


@dataclass(frozen=True)
class DayPicture:
    """A plan as it is drawn. `stops` are the times nobody works; `now` is None on other days."""

    binder: Binder
    plan: DayPlan
    bars: Bars
    rows: Rows
    groups: tuple[Group, ...]
    spans: tuple[Span, ...]
    marks: tuple[AxisMark, ...]
    stops: tuple[Minutes, ...]
    now: int | None = None
    stale: bool = False

    def wall(self, minute: float) -> datetime:
        """What the clock on the wall shows at a minute."""
        return self.plan.asked.wall(minute)

    def clock(self, minute: float) -> str:
        """A minute as a time of day."""
        return time_text(self.binder, self.wall(minute).time())

    def day_name(self, day: date) -> str:
        """A day as the axis names it."""
        return date_text(self.binder, day, DateForm.WEEKDAY)


def day_picture(
    binder: Binder, plan: DayPlan, rows: Rows, *, now: datetime | None = None, stale: bool = False
) -> DayPicture:
    """A plan as it is drawn for a binder, which may have gone on since the plan was made."""
    bars = bars_of(binder, plan)
    clock = plan.asked.clock
    end = max((bar.end for bar in bars.values() if bar.filmed), default=clock.at(clock.call))
    day = (clock.at(clock.call), max(clock.at(clock.call), end))
    spans = spans_of(((bar.start, bar.end) for bar in bars.values()), day)
    return DayPicture(
        binder,
        plan,
        bars,
        rows,
        groups_of(binder, bars, plan.asked.kitchen, rows),
        spans,
        tuple(_marks(binder, plan)),
        tuple(_stops(binder, plan)),
        now=_minute_of_now(plan, spans, now),
        stale=stale,
    )


def _marks(binder: Binder, plan: DayPlan) -> Iterator[AxisMark]:
    clock = plan.asked.clock
    found = [AxisMark(clock.at(clock.call), _("call"))]
    found += [
        AxisMark(clock.at(clock.event(event)), event.name)
        for event in binder.fixed_events.where("shoot", clock.shoot.id)
    ]
    if clock.wrap is not None:
        found.append(AxisMark(clock.at(clock.wrap), _("wrap by")))
    yield from sorted(found, key=lambda mark: mark.minute)


def _stops(binder: Binder, plan: DayPlan) -> Iterator[Minutes]:
    clock = plan.asked.clock
    for event in binder.fixed_events.where("shoot", clock.shoot.id):
        if event.stops_work and event.minutes:
            start = clock.at(clock.event(event))
            yield start, start + math.ceil(event.minutes)


def _minute_of_now(plan: DayPlan, spans: tuple[Span, ...], now: datetime | None) -> int | None:
    """The minute it is, where that is on the axis."""
    if now is None or not spans:
        return None
    minute = plan.asked.clock.at(now)
    return minute if spans[0].start <= minute <= spans[-1].end else None
