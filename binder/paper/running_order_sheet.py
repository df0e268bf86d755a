"""The running order for the wall: when each dish is on camera, what is fixed, call and wrap."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from binder.figures.day_activities import FILMED
from binder.figures.duration_text import duration_text
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.wording import _, ngettext
from binder.paper.block import text
from binder.paper.card_words import count_text, kinds_text
from binder.paper.cell import Cell, Column, cell
from binder.paper.legibility import ARMS_LENGTH
from binder.paper.list_pages import Section, Sheet
from binder.paper.plan_words import clock, no_plan_text
from binder.paper.run import Run, unbroken
from binder.paper.sheet_words import shoot_words
from binder.paper.table import table

if TYPE_CHECKING:
    from collections.abc import Iterator

    from binder.figures.day_plan import DayPlan
    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Dish
    from binder.paper.block import Block
    from binder.paper.job import Job
    from binder.paper.list_type import ListType
    from binder.paper.ruling import Row

ACROSS_THE_ROOM = 1.5
"""Metres; what hangs on the wall is read from the other side of the work top. Common practice, no source."""


_WIDEST_TIME = 0.36
"""Part of the sheet's width that times may take: they are what it is for."""


@dataclass(frozen=True)
class _Entry:
    """A line of the running order: from when to when (None: not known), its number, what, and what is said of it."""

    start: datetime | None
    end: datetime | None
    number: int | None
    name: str
    more: str = ""
    rank: int = 0


_FIRST, _LAST = -1, 1
"""Where call and wrap stand among what begins at the same time."""


def running_order_sheet(job: Job) -> Sheet:
    """The running order of a shoot."""
    binder, shoot_id, style = job.binder, job.shoot, job.standing_type(ACROSS_THE_ROOM)
    entries = list(_entries(binder, shoot_id, job.plan))
    small, near = job.list_type(), job.list_type(ARMS_LENGTH)
    style = replace(style, title=near.title, lead=replace(style.lead, language=""))
    under: list[Block] = [text(shoot_words(binder, shoot_id), small.lead)]
    after: list[Block] = []
    if job.plan is None:
        under.append(text(no_plan_text(), small.lead))
    else:
        after = [text(job.plan.says(), small.lead), *(text(says, small.plain) for says in job.plan.assumed)]
    if not entries:
        none = text(_("The shoot has no dishes yet: add the first."), style.plain)
        return Sheet(_("Running order"), under, [Section(before=(none,))], style)
    columns = (
        Column(_("when"), figure=True, head=True, most=_WIDEST_TIME),
        Column(_("no."), figure=True, head=True),
        Column(_("on camera"), head=True),
    )
    rows = [_row(binder, entry, style, near) for entry in entries]
    return Sheet(_("Running order"), under, [Section(table=table(columns, rows, style), after=after)], style)


def _entries(binder: Binder, shoot_id: str, plan: DayPlan | None) -> Iterator[_Entry]:
    shoot = binder.shoots[shoot_id]
    timed = [*_fixed(binder, shoot_id), *(_filmed(binder, shoot_id, plan) if plan else ())]
    if shoot.on and shoot.call:
        timed.append(_Entry(datetime.combine(shoot.on, shoot.call), None, None, _("Call"), rank=_FIRST))
    if plan is not None:
        timed.append(_Entry(plan.wrap, None, None, _("Wrap"), rank=_LAST))
    yield from sorted(timed, key=lambda entry: (entry.start.isoformat() if entry.start else "", entry.rank))
    placed = {entry.number for entry in timed}
    for dish in binder.dishes.where("shoot", shoot_id):
        if dish.position + 1 not in placed:
            yield _Entry(None, None, dish.position + 1, dish_name(binder, dish), _more(binder, dish))


def _fixed(binder: Binder, shoot_id: str) -> Iterator[_Entry]:
    """What happens at a fixed time."""
    on = binder.shoots[shoot_id].on
    for event in binder.fixed_events.where("shoot", shoot_id):
        if on is not None:
            start = datetime.combine(on, event.at)
            end = start + timedelta(minutes=event.minutes) if event.minutes else None
            yield _Entry(start, end, None, event.name, _("work stops") if event.stops_work else "")


def _filmed(binder: Binder, shoot_id: str, plan: DayPlan) -> Iterator[_Entry]:
    for dish, start, end in filmed_spans(binder, shoot_id, plan):
        yield _Entry(start, end, dish.position + 1, dish_name(binder, dish), _more(binder, dish))


def filmed_spans(binder: Binder, shoot_id: str, plan: DayPlan) -> Iterator[tuple[Dish, datetime, datetime]]:
    """When the camera is on each dish, from its first moment to its last."""
    for dish in binder.dishes.where("shoot", shoot_id):
        seen = [one for one in plan.activities if one.activity.dish == dish.id and one.activity.kind in FILMED]
        if seen:
            yield dish, min(one.start for one in seen), max(one.end for one in seen)


def _more(binder: Binder, dish: Dish) -> str:
    kinds = kinds_text(build.kind.value for build in binder.builds.where("dish", dish.id))
    portions = ngettext("{count} portion", "{count} portions", 1 if dish.portions == 1 else 2).format(
        count=count_text(binder, dish.portions)
    )
    camera = duration_text(dish.camera_minutes) if dish.camera_minutes else ""
    return " · ".join(part for part in (portions, kinds, camera) if part)


def _row(binder: Binder, entry: _Entry, style: ListType, near: ListType) -> Row:
    name = [Run(entry.name, style.lead)]
    if entry.more:
        name.append(Run(f"\n{entry.more}", near.plain))
    when = [Run(clock(binder, entry.start), style.lead)] if entry.start else []
    if entry.end:
        until = unbroken(_("to {time}").format(time=clock(binder, entry.end)))
        when.append(Run(f"\n{until}", style.plain))
    return (
        Cell(tuple(when), size=style.lead.size),
        cell("" if entry.number is None else str(entry.number), style.lead),
        Cell(tuple(name), size=style.lead.size),
    )
