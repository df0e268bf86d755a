"""The checks sheet: everything about a shoot that needs someone, the worst first, each with a box to tick."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.checks import shoot_checks
from binder.kitchen.wording import _
from binder.paper.block import text
from binder.paper.cell import Cell, Column, cell
from binder.paper.list_pages import Section, Sheet
from binder.paper.mark import Shape, severity_state
from binder.paper.run import Run
from binder.paper.sheet_words import shoot_words
from binder.paper.table import table

if TYPE_CHECKING:
    from binder.figures.checks import Check
    from binder.paper.job import Job
    from binder.paper.list_type import ListType


def check_sheet(job: Job) -> Sheet:
    """The checks of a shoot."""
    binder, shoot_id, style = job.binder, job.shoot, job.list_type()
    checks = shoot_checks(binder, shoot_id)
    under = (text(shoot_words(binder, shoot_id), style.plain),)
    if not checks:
        section = Section(before=(text(_("Nothing needs anyone."), style.lead),))
    else:
        columns = (
            Column("", figure=True, head=True),
            Column(_("state"), share=0.35, head=True),
            Column(_("what"), share=2.0),
        )
        section = Section(table=table(columns, [_row(check, style) for check in checks], style))
    return Sheet(_("Checks"), under, [section], style)


def _row(check: Check, style: ListType) -> tuple[Cell, ...]:
    shape, word = severity_state(check.severity)
    return (
        Cell(shape=Shape.TICK_BOX, size=style.lead.size),
        Cell((Run(word, style.strong),), shape, style.strong.size),
        cell(check.says, style.plain),
    )
