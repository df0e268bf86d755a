"""A sheet for each person: when they are there, and what they do when, from the day plan."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from binder.figures.date_text import time_text
from binder.kitchen.wording import _, listed
from binder.paper.block import text
from binder.paper.cell import Cell, Column, cell
from binder.paper.list_pages import Section, Sheet
from binder.paper.mark import Shape
from binder.paper.plan_words import activity_build, activity_dish, activity_station, clock, day_heading, no_plan_text
from binder.paper.ruling import Ruling
from binder.paper.run import Run
from binder.paper.sheet_words import shoot_words
from binder.paper.table import Table

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from datetime import time

    from binder.figures.day_plan import PlannedActivity
    from binder.kitchen.binder import Binder
    from binder.kitchen.day import Person
    from binder.paper.block import Block
    from binder.paper.job import Job
    from binder.paper.list_type import ListType
    from binder.paper.ruling import Row


def has_people(binder: Binder, shoot_id: str) -> bool:
    """Whether anyone is named."""
    return bool(binder.people.where("shoot", shoot_id))


def people_sheet(job: Job) -> Sheet:
    """A sheet for each person of a shoot."""
    binder, shoot_id, style = job.binder, job.shoot, job.standing_type()
    under = (text(shoot_words(binder, shoot_id), style.plain),)
    sections = [part for person in binder.people.where("shoot", shoot_id) for part in _person(job, person, style)]
    if not sections:
        says = _("Nobody is named yet: name who is there, and each gets a sheet.")
        sections = [Section(before=(text(says, style.plain),))]
    return Sheet(_("People"), under, sections, style)


def _person(job: Job, person: Person, style: ListType) -> Iterator[Section]:
    """Who they are and when they are there, then a table a day."""
    binder = job.binder
    name = " · ".join(part for part in (person.name, person.role) if part)
    before: list[Block] = [text(hours_text(binder, job.shoot, person), style.lead)]
    can = [*person.skills, *([_("on camera")] if person.on_camera else [])]
    before += [text(_("Can do: {skills}.").format(skills=listed(can)), style.plain)] if can else []
    theirs = [one for one in job.plan.activities if person.id in one.people] if job.plan else []
    if job.plan is None:
        before.append(text(no_plan_text(), style.strong))
    elif not theirs:
        before.append(text(_("The day plan asks nothing of them."), style.strong))
    yield Section(name, before=before, outline=person.name)
    rows = [_row(binder, one, style) for one in theirs]
    ruling = _ruling(rows, style)
    for day, pairs in groupby(zip(theirs, rows, strict=True), lambda pair: pair[0].start.date()):
        heading = day_heading(binder, job.shoot, day)
        yield Section(heading, f"{name} · {heading}", table=Table(ruling, [row for _one, row in pairs]))


def hours_text(binder: Binder, shoot_id: str, person: Person) -> str:
    """When a person is there on the day of the shoot."""
    shoot = binder.shoots[shoot_id]
    arrives = _at(binder, person.arrives or shoot.call) or _("at call")
    leaves = _at(binder, person.leaves or shoot.wrap) or _("at wrap")
    return _("there from {arrives}, until {leaves}").format(arrives=arrives, leaves=leaves)


def _at(binder: Binder, of_day: time | None) -> str:
    return "" if of_day is None else time_text(binder, of_day)


def _ruling(rows: Sequence[Row], style: ListType) -> Ruling:
    columns = (
        Column("", figure=True, head=True),
        Column(_("from"), figure=True, head=True),
        Column(_("to"), figure=True),
        Column(_("what"), share=1.4, head=True),
        Column(_("for"), share=1.4),
        Column(_("where"), share=0.8),
    )
    return Ruling(columns, rows, style)


def _row(binder: Binder, one: PlannedActivity, style: ListType) -> Row:
    build = activity_build(binder, one)
    whose = [Run(activity_dish(binder, one), style.plain)]
    whose += [Run(f" {build}", style.label)] if build else []
    what = [Run(one.activity.name, style.lead), Run(f" {one.activity.kind.value}", style.label)]
    return (
        Cell(shape=Shape.TICK_BOX, size=style.lead.size),
        cell(clock(binder, one.start), style.lead),
        cell(clock(binder, one.end), style.plain),
        Cell(tuple(what), size=style.lead.size),
        Cell(tuple(whose), size=style.plain.size),
        cell(activity_station(binder, one), style.plain),
    )
