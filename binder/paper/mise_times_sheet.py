"""The mise list by time: what must stand ready when, from the day plan; without one in the order of the dishes."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby
from typing import TYPE_CHECKING

from binder.figures.day_activities import FILMED
from binder.figures.mise import mise_list
from binder.kitchen.wording import _
from binder.paper.block import text
from binder.paper.card_words import kinds_text
from binder.paper.cell import Cell, Column, cell
from binder.paper.list_pages import Section, Sheet
from binder.paper.mark import Shape
from binder.paper.mise_sheet import amount_runs
from binder.paper.plan_words import clock, day_heading, no_plan_text, starts_by_step
from binder.paper.ruling import Ruling
from binder.paper.run import Run
from binder.paper.sheet_words import shoot_words
from binder.paper.table import Table

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping
    from datetime import datetime

    from binder.figures.day_plan import DayPlan
    from binder.figures.mise import MiseItem, PerBuild
    from binder.kitchen.binder import Binder
    from binder.paper.block import Block
    from binder.paper.job import Job
    from binder.paper.list_type import ListType
    from binder.paper.ruling import Row


@dataclass(frozen=True)
class _Due:
    """One line of mise for the builds that need it at the same moment."""

    at: datetime | None
    item: MiseItem
    builds: tuple[PerBuild, ...]


def mise_times_sheet(job: Job) -> Sheet:
    """The mise list of a shoot by the time at which each thing is used."""
    binder, shoot_id, style = job.binder, job.shoot, job.standing_type()
    starts = _starts(job.plan) if job.plan else {}
    due = sorted(_due(binder, shoot_id, starts), key=_order)
    rows = [_row(binder, one, style) for one in due]
    ruling = _ruling(rows, style)
    under: list[Block] = [text(shoot_words(binder, shoot_id), style.plain)]
    under += [] if job.plan else [text(no_plan_text(), style.strong)]
    sections = [
        Section(day, table=Table(ruling, [row for _one, row in pairs]))
        for day, pairs in groupby(
            zip(due, rows, strict=True), lambda pair: _day(binder, shoot_id, pair[0], planned=job.plan is not None)
        )
    ]
    if not sections:
        sections = [Section(before=(text(_("Nothing is to be set out: no dish has a build yet."), style.plain),))]
    return Sheet(_("Mise list by time"), under, sections, style)


def _due(binder: Binder, shoot_id: str, starts: Mapping[tuple[str | None, str], datetime]) -> Iterator[_Due]:
    """Each line, once for all builds that use it at the same moment."""
    for item in mise_list(binder, shoot_id):
        step = binder.lines[item.line].step
        by_moment: dict[datetime | None, list[PerBuild]] = {}
        for build in item.builds:
            by_moment.setdefault(_moment(binder, build, step, starts), []).append(build)
        for at, builds in by_moment.items():
            yield _Due(at, item, tuple(builds))


def _starts(plan: DayPlan) -> dict[tuple[str | None, str], datetime]:
    """When each step of each build begins, and by the dish when the camera sees the step."""
    filmed: dict[tuple[str | None, str], datetime] = {}
    for one in plan.activities:
        if one.activity.dish is not None and one.activity.step is not None and one.activity.kind in FILMED:
            filmed.setdefault((one.activity.dish, one.activity.step), one.start)
    return filmed | starts_by_step(plan)


def _moment(
    binder: Binder, build: PerBuild, step: str, starts: Mapping[tuple[str | None, str], datetime]
) -> datetime | None:
    """When a build uses what is set out for a step: where another takes its place before the camera, when that does."""
    own = starts.get((build.build or None, step))
    return own if own or not build.build else starts.get((binder.builds[build.build].dish, step))


def _order(due: _Due) -> tuple[bool, float, bool, int]:
    """By the clock; what has no time comes last, what is made ahead before the dishes."""
    moment = due.at.timestamp() if due.at else 0.0
    return due.at is None, moment, due.item.number is not None, due.item.number or 0


def _day(binder: Binder, shoot_id: str, due: _Due, *, planned: bool) -> str:
    if due.at is not None:
        return day_heading(binder, shoot_id, due.at.date())
    return _("Without a time in the plan") if planned else _("In the order of the dishes")


def _ruling(rows: list[Row], style: ListType) -> Ruling:
    columns = (
        Column("", figure=True, head=True),
        Column(_("by"), figure=True, head=True),
        Column(_("food"), share=1.5, head=True),
        Column(_("each"), share=1.2),
        Column("", figure=True),
        Column(_("for"), share=1.5),
    )
    return Ruling(columns, rows, style)


def _row(binder: Binder, due: _Due, style: ListType) -> Row:
    item = due.item
    food = [Run(item.food, style.lead)]
    if item.preparation:
        food.append(Run(f" {item.preparation}", style.plain))
    number = f"{item.number} " if item.number is not None else ""
    kinds = kinds_text(build.kind for build in due.builds) if item.number is not None else ""
    whose = [Run(f"{number}{item.for_what}", style.plain)]
    whose += [Run(f" {kinds}", style.label)] if kinds else []
    amounts = list(dict.fromkeys(build.amount for build in due.builds))
    runs: list[Run] = []
    for at, amount in enumerate(amounts):
        runs += [Run("\n", style.plain)] if at else []
        runs += amount_runs(amount, style.lead, style)
    return (
        Cell(shape=Shape.TICK_BOX, size=style.lead.size),
        cell(clock(binder, due.at) if due.at else "", style.strong),
        Cell(tuple(food)),
        Cell(tuple(runs)),
        cell(f"×{len(due.builds)}" if len(due.builds) > 1 else "", style.strong),
        Cell(tuple(whose)),
    )
