"""What is said on camera, each claim on a page of its own with the sum behind it and the prices it holds at."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.circumstances import condition_text
from binder.figures.claims import ClaimFinding, ClaimVerdict, claim_findings
from binder.figures.money_words import percent_text
from binder.figures.not_known import not_known_text
from binder.figures.portion_text import number_style
from binder.figures.price_levels import PriceLevel
from binder.kitchen.wording import _, listed
from binder.paper.block import text
from binder.paper.cell import Cell, Column, cell
from binder.paper.list_pages import Section, Sheet
from binder.paper.list_type import ON_THE_DESK
from binder.paper.mark import Shape, marked, state
from binder.paper.run import Run
from binder.paper.sheet_words import shoot_words, true_minus
from binder.paper.table import Table, table

if TYPE_CHECKING:
    from collections.abc import Iterator

    from binder.kitchen.binder import Binder
    from binder.paper.block import Block
    from binder.paper.job import Job
    from binder.paper.list_type import ListType

_WIDEST = 420.0
"""Points; a wider sum would part a line from its figure."""


def has_claims(binder: Binder, shoot_id: str) -> bool:
    """Whether anything is to be said on camera."""
    return bool(binder.claims.where("shoot", shoot_id))


def claim_sheet(job: Job) -> Sheet:
    """The claims of a shoot."""
    binder, style = job.binder, job.list_type(ON_THE_DESK)
    under = (text(shoot_words(binder, job.shoot), style.plain),)
    sections = [part for one in claim_findings(binder, job.shoot) for part in _claim(binder, one, style)]
    if not sections:
        none = text(_("Nothing is claimed yet: write down what is to be said on camera."), style.plain)
        return Sheet(_("Claims"), under, [Section(before=(none,))], style)
    return Sheet(_("Claims"), under, sections, style)


def unknown_claims(binder: Binder, shoot_id: str) -> Iterator[str]:
    """For each claim whose figure is not known: what is missing."""
    for one in claim_findings(binder, shoot_id):
        if one.missing:
            yield not_known_text(binder, one.missing)


def _claim(binder: Binder, one: ClaimFinding, style: ListType) -> Iterator[Section]:
    """The sentence, how it stands, its sum, the prices it was held at, and what would make it hold."""
    quoted = _("“{claim}”").format(claim=one.says)
    yield Section(quoted, one.says, tuple(_standing(binder, one, style)), outline=one.says)
    if one.rows:
        yield Section("", one.says, table=_sum(binder, one, style))
    if one.levels:
        yield Section("", one.says, table=_levels(binder, one, style))
    ways = tuple(_ways(one, style))
    notes = tuple(marked(Shape.DOT, text(note, style.plain), style.plain) for note in one.notes)
    if ways:
        yield Section(_("It holds"), one.says, ways)
    if notes:
        yield Section(_("What is counted"), one.says, notes)


def _standing(binder: Binder, one: ClaimFinding, style: ListType) -> Iterator[Block]:
    shape = {
        ClaimVerdict.HOLDS: Shape.RING,
        ClaimVerdict.ONLY_IF: Shape.OPEN_TRIANGLE,
        ClaimVerdict.DOES_NOT: Shape.WEDGE,
        ClaimVerdict.NOT_KNOWN: Shape.DASHED_RING,
    }[one.verdict]
    if one.verdict is ClaimVerdict.NOT_KNOWN:
        yield state(shape, not_known_text(binder, one.missing), style.section)
        return
    yield state(shape, one.verdict.value, style.section)
    chosen = one.chosen
    if chosen is not None:
        says = _("{subject}: {figure}; claimed {target}; margin {margin}")
        figures = says.format(
            subject=one.subject, figure=chosen.shown, target=one.target_shown, margin=true_minus(chosen.margin_shown)
        )
        yield text(figures, style.strong)


def _sum(binder: Binder, one: ClaimFinding, style: ListType) -> Table:
    """The sum written out, its last line the total."""
    mark = number_style(binder).decimal_mark
    columns = (Column(_("what"), head=True), Column("", figure=True, head=True, decimal_mark=mark))
    rows = [(cell(row.text, style.plain), cell(row.shown, style.plain)) for row in one.rows]
    if one.total is not None:
        rows.append((cell(one.total.text, style.lead), cell(one.total.shown, style.lead)))
    return table(columns, rows, style, _("The sum"), widest=_WIDEST)


def _levels(binder: Binder, one: ClaimFinding, style: ListType) -> Table:
    """The claim at the lowest, the chosen and the highest prices."""
    mark = number_style(binder).decimal_mark
    columns = (
        Column(_("prices"), head=True),
        Column(_("figure"), figure=True, head=True, decimal_mark=mark),
        Column(_("claimed"), figure=True, decimal_mark=mark),
        Column(_("margin"), figure=True, decimal_mark=mark),
        Column("", figure=True),
        Column(_("state"), head=True),
    )
    named = {PriceLevel.LOWEST: _("lowest"), PriceLevel.CHOSEN: _("chosen"), PriceLevel.HIGHEST: _("highest")}
    rows = []
    for at in one.levels:
        shape, word = (Shape.RING, _("holds")) if at.holds else (Shape.WEDGE, _("does not hold"))
        rows.append(
            (
                cell(named[at.level], style.strong),
                cell(at.shown, style.strong),
                cell(one.target_shown, style.plain),
                cell(true_minus(at.margin_shown), style.plain),
                cell(("−" if at.part < 0 else "") + percent_text(binder, abs(at.part)), style.plain),
                Cell((Run(word, style.strong),), shape, style.strong.size),
            )
        )
    return table(columns, rows, style, _("At which prices"))


def _ways(one: ClaimFinding, style: ListType) -> Iterator[Block]:
    for way in one.ways:
        conditions = listed(condition_text(condition) for condition in way.conditions)
        says = _("{conditions}: {figure}").format(conditions=conditions, figure=way.shown)
        yield marked(Shape.OPEN_TRIANGLE, text(says, style.strong), style.strong)
