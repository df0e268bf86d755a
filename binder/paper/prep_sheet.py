"""The days before: what is ordered, fetched, soaked and prepared on which day, a box to tick for each."""

from __future__ import annotations

from datetime import datetime
from itertools import groupby
from typing import TYPE_CHECKING

from binder.figures.prep_calendar import EntryKind, PrepEntry, prep_calendar
from binder.kitchen.wording import _, listed
from binder.paper.block import text
from binder.paper.cell import Cell, Column, cell
from binder.paper.list_pages import Section, Sheet
from binder.paper.mark import Shape
from binder.paper.plan_words import clock, day_heading
from binder.paper.ruling import Ruling
from binder.paper.run import Run
from binder.paper.sheet_words import shoot_words
from binder.paper.table import Table

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.paper.block import Block
    from binder.paper.job import Job
    from binder.paper.list_type import ListType
    from binder.paper.ruling import Row


def prep_sheet(job: Job) -> Sheet:
    """The prep calendar of a shoot."""
    binder, style = job.binder, job.standing_type()
    entries = prep_calendar(binder, job.shoot, job.plan)
    under: list[Block] = [text(shoot_words(binder, job.shoot), style.plain)]
    if job.plan is None:
        says = _("There is no day plan to take work from: orders and trips alone stand here.")
        under.append(text(says, style.strong))
    if not entries:
        says = _("Nothing is to be done on the days before, or the shoot has no date yet.")
        return Sheet(_("Prep calendar"), under, [Section(before=(text(says, style.plain),))], style)
    rows = [_row(binder, entry, style) for entry in entries]
    columns = (
        Column("", figure=True, head=True),
        Column(_("at"), figure=True, head=True),
        Column(_("what"), share=2.2, head=True),
        Column(_("who")),
        Column(_("where")),
    )
    ruling = Ruling(columns, rows, style)
    days = groupby(zip(entries, rows, strict=True), lambda pair: pair[0].on)
    sections = [
        Section(day_heading(binder, job.shoot, day), table=Table(ruling, [row for _entry, row in pairs]))
        for day, pairs in days
    ]
    return Sheet(_("Prep calendar"), under, sections, style)


def _row(binder: Binder, entry: PrepEntry, style: ListType) -> Row:
    what = [Run(entry.what, style.lead)]
    details = entry.details
    if entry.kind is EntryKind.TRIP:
        details = (_("{count} things: {things}").format(count=len(details), things="; ".join(details)),)
    what += [Run(f"\n{detail}", style.plain) for detail in details]
    at = clock(binder, entry.start) if isinstance(entry.start, datetime) else ""
    return (
        Cell(shape=Shape.TICK_BOX, size=style.lead.size),
        cell(at, style.lead),
        Cell(tuple(what), size=style.lead.size),
        cell(listed(entry.who), style.plain),
        cell(entry.where, style.plain),
    )
