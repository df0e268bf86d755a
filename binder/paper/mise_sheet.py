"""The mise list: what is washed, cut, weighed and set out, by station, a box to tick for each line."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from binder.figures.mise import mise_list
from binder.kitchen.wording import _
from binder.paper.block import text
from binder.paper.card_words import kinds_text, measure_text
from binder.paper.cell import Cell, Column, cell
from binder.paper.list_pages import Section, Sheet
from binder.paper.mark import Shape
from binder.paper.ruling import Ruling
from binder.paper.run import Run, unbroken
from binder.paper.sheet_words import shoot_words, titled
from binder.paper.table import Table

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.figures.mise import MiseItem, PerBuild
    from binder.figures.portion_text import SetOut
    from binder.paper.job import Job
    from binder.paper.list_type import ListType
    from binder.paper.ruling import Row
    from binder.paper.run import Style


def mise_sheet(job: Job) -> Sheet:
    """The mise list of a shoot."""
    binder, shoot_id, style = job.binder, job.shoot, job.standing_type()
    items = mise_list(binder, shoot_id)
    every = [_row(item, style) for item in items]
    ruling = _ruling(every, style)
    sections = [
        Section(table=Table(ruling, [row for _item, row in rows], titled(station)))
        for station, rows in groupby(zip(items, every, strict=True), lambda pair: pair[0].station)
    ]
    if not sections:
        sections = [Section(before=(text(_("Nothing is to be set out: no dish has a build yet."), style.plain),))]
    return Sheet(_("Mise list"), (text(shoot_words(binder, shoot_id), style.plain),), sections, style)


def _ruling(rows: Sequence[Row], style: ListType) -> Ruling:
    columns = (
        Column("", figure=True, head=True),
        Column(_("food"), share=1.4, head=True),
        Column(_("for"), share=1.3),
        Column(_("each build"), share=1.3),
        Column(_("builds"), figure=True),
        Column(_("in all")),
    )
    return Ruling(columns, rows, style)


def _row(item: MiseItem, style: ListType) -> Row:
    food = [Run(item.food, style.lead)]
    if item.preparation:
        food.append(Run(f" {item.preparation}", style.plain))
    number = f"{item.number} " if item.number is not None else ""
    made_ahead = item.number is None
    return (
        Cell(shape=Shape.TICK_BOX, size=style.lead.size),
        Cell(tuple(food)),
        cell("" if made_ahead else f"{number}{item.for_what}", style.plain),
        cell("", style.plain) if made_ahead else Cell(_each_build(item.builds, style)),
        cell("" if made_ahead else f"×{item.count}", style.strong),
        Cell(amount_runs(item.total, style.strong, style)),
    )


def _each_build(builds: tuple[PerBuild, ...], style: ListType) -> tuple[Run, ...]:
    """What a build takes; where builds differ, each amount on its own line with whose it is."""
    found: dict[str, list[PerBuild]] = {}
    for build in builds:
        found.setdefault(build.amount.both, []).append(build)
    runs: list[Run] = []
    for at, same in enumerate(found.values()):
        runs += [Run("\n", style.plain)] if at else []
        runs += amount_runs(same[0].amount, style.lead, style)
        if len(found) > 1:
            runs.append(Run(" " + kinds_text(build.kind for build in same), style.label))
    return tuple(runs)


def amount_runs(amount: SetOut, first: Style, style: ListType) -> tuple[Run, ...]:
    """Weight first, then the cook's measure."""
    parts = [unbroken(part) for part in (amount.weight, measure_text(amount.measure)) if part]
    return (*(Run(part, first) for part in parts[:1]), *(Run(f" · {part}", style.plain) for part in parts[1:]))
