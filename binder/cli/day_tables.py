"""What `binder day` shows to people."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from binder.cli.columns import numbers, parts, words
from binder.cli.heading import show_heading
from binder.cli.terminal import say, say_marked, show_grouped
from binder.figures.date_text import date_text, time_text
from binder.figures.day_activities import FILMED, ActivityKind, wait_after
from binder.figures.day_kitchen import CAMERA
from binder.figures.day_words import activity_text, people_text, resource_text
from binder.figures.duration_text import duration_text
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator
    from datetime import datetime
    from pathlib import Path

    from binder.cli.planned_day import PlannedDay
    from binder.figures.day_plan import DayPlan, PlannedActivity


def show_day(found: PlannedDay, begins: datetime | None, *, written: Path | None) -> None:
    """The activities by day and time, what is filmed first; how good the plan is, and what was assumed."""
    show_heading(found.binder, found.shoot)
    if found.plan is None:
        _show_why_not(found)
    else:
        _show_plan(found.plan, begins)
    if written is not None:
        say()
        say(_("Wrote the days before to {file}.").format(file=written))


def _show_plan(plan: DayPlan, begins: datetime | None) -> None:
    shown = sorted(row for row in (*_events(plan), *_activities(plan)) if begins is None or row[0] >= begins)
    columns = [numbers(_("From")), numbers(_("To")), words(_("What")), parts(_("Who")), parts(_("With"))]
    days = groupby(shown, key=lambda row: row[0].date())
    groups = [(date_text(plan.asked.binder, day), [cells for *_order, cells in group]) for day, group in days]
    if groups:
        show_grouped(columns, groups)
        say()
    say(plan.says(), strong=True)
    for assumed in plan.assumed:
        say_marked("◌", assumed)


_Row = tuple["datetime", int, str, list[str]]
"""When it begins, what comes first of what begins together, its key, and its cells."""


def _events(plan: DayPlan) -> Iterator[_Row]:
    """What happens at a fixed time, before all else that begins then."""
    binder, clock = plan.asked.binder, plan.asked.clock
    for event in binder.fixed_events.where("shoot", clock.shoot.id):
        start = clock.event(event)
        end = clock.wall(clock.at(start) + event.minutes)
        times = [time_text(binder, moment.time()) for moment in (start, end)]
        yield start, 0, event.id, [*times, f"○ {event.name}", "", _("nobody works") if event.stops_work else ""]


def _activities(plan: DayPlan) -> Iterator[_Row]:
    """What is done, what is filmed first."""
    for one in plan.activities:
        if one.activity.kind is not ActivityKind.WAIT:
            yield one.start, 1 if one.activity.kind in FILMED else 2, one.activity.key, _row(plan, one)


def _row(plan: DayPlan, one: PlannedActivity) -> list[str]:
    """Its times; what it is, with a filled point where it is filmed; who does it; what it takes, and for how long."""
    what = activity_text(plan.asked.binder, one.activity)
    mark = "● " if one.activity.kind in FILMED else ""
    return [
        time_text(plan.asked.binder, one.start.time()),
        time_text(plan.asked.binder, one.end.time()),
        f"{mark}{what}",
        people_text(plan.asked, one.people),
        _with(plan, one),
    ]


def _with(plan: DayPlan, one: PlannedActivity) -> str:
    things = [resource_text(plan.asked, key) for key in one.resources if key != CAMERA]
    wait = next((other for other in plan.activities if other.activity.key == wait_after(one.activity.key)), None)
    if wait is not None:
        says = _("{thing} for {time}")
        thing = " ".join(resource_text(plan.asked, key) for key in wait.resources)
        minutes = plan.asked.question.by_key[wait.activity.key].minutes
        things = [*things, says.format(thing=thing, time=duration_text(minutes))]
    return " · ".join(things)


def _show_why_not(found: PlannedDay) -> None:
    for reason in found.missing:
        say_marked(_("◣ no plan"), reason)
    for repair in found.repairs:
        mark = _("○ helps") if repair.enough else _("△ is not enough")
        say_marked(mark, repair.says)
