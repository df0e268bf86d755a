"""The budget: planned, committed, actual and expected line by line, tax by rate, and what the budget still allows."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from binder.figures.budget import Budget, shoot_budget
from binder.figures.budget_rows import RowKind
from binder.figures.money_parts import money_parts
from binder.figures.not_known import not_known_text
from binder.figures.old_prices import as_of_text, asked_text, prices_in_use
from binder.figures.portion_text import number_style
from binder.kitchen.wording import _
from binder.paper.arrangement import Space
from binder.paper.block import text
from binder.paper.cell import Bar, Cell, Column, cell
from binder.paper.list_pages import Section, Sheet
from binder.paper.list_type import ON_THE_DESK
from binder.paper.mark import Shape, marked, state
from binder.paper.ruling import Ruling
from binder.paper.sheet_words import money, share_text, shoot_words
from binder.paper.table import Table, table

if TYPE_CHECKING:
    from collections.abc import Iterator

    from binder.figures.budget_rows import Amounts, BudgetRow
    from binder.figures.money_parts import MoneyPart
    from binder.kitchen.binder import Binder
    from binder.paper.block import Block
    from binder.paper.job import Job
    from binder.paper.list_type import ListType
    from binder.paper.ruling import Row
    from binder.paper.run import Style

_WIDEST = 400.0
"""Points; a wider table would part a name from its bar."""


def budget_sheet(job: Job) -> Sheet:
    """The budget of a shoot."""
    binder, style = job.binder, job.list_type(ON_THE_DESK)
    budget = shoot_budget(binder, job.shoot)
    taxes = [] if budget.tax_contained else list(budget.tax)
    rows = [_row(binder, row.name, row.amounts, style) for row in (*budget.rows, *taxes)]
    total = _row(binder, _("In all"), budget.total, style, strong=True)
    ruling = Ruling(_columns(binder), [*rows, total], style)
    sections = [
        Section(table=Table(ruling, [row for _line, row in pairs], heading))
        for heading, pairs in groupby(zip((*budget.rows, *taxes), rows, strict=True), lambda pair: _heading(pair[0]))
    ]
    sections.append(Section(table=Table(ruling, [total], _("Total")), after=tuple(_after(binder, budget, style))))
    sections += _prices(job, style)
    sections += _where_it_goes(binder, budget, style)
    under = (text(shoot_words(binder, job.shoot), style.plain),)
    return Sheet(_("Budget"), under, sections, style)


def _prices(job: Job, style: ListType) -> Iterator[Section]:
    """Of when the prices are that the budget counts on; those that will be too old one by one."""
    binder, prices = job.binder, prices_in_use(job.binder, job.shoot)
    if prices:
        says = as_of_text(binder, prices, binder.shoots[job.shoot].quote_days)
        old = [text(asked_text(binder, one), style.plain) for one in prices if one.too_old]
        marked_old = [marked(Shape.OPEN_TRIANGLE, one, style.plain) for one in old]
        yield Section(before=(text(says, style.strong), *marked_old))


def _where_it_goes(binder: Binder, budget: Budget, style: ListType) -> Iterator[Section]:
    """A bar for each part, all on one scale and the largest first; a notch is what was planned of it."""
    parts = money_parts(budget)
    whole = sum(part.expected for part in parts)
    if whole > 0 and not budget.missing:
        longest = max(max(part.expected, part.planned) for part in parts)
        rows = [_part(binder, part, whole, longest, style) for part in parts]
        name = _("Where the money goes")
        yield Section(table=table(_part_columns(binder), rows, style, name, widest=_WIDEST), outline=name)


def _part_columns(binder: Binder) -> tuple[Column, ...]:
    return (
        Column(_("what"), head=True),
        Column(_("expected"), figure=True, decimal_mark=number_style(binder).decimal_mark, head=True),
        Column(_("share"), figure=True),
        Column("", bar=True),
    )


def _part(binder: Binder, part: MoneyPart, whole: int, longest: int, style: ListType) -> Row:
    notch = None if part.planned == part.expected else part.planned / longest
    return (
        cell(part.name, style.strong),
        cell(money(binder, part.expected), style.strong),
        cell(share_text(binder, part.expected / whole), style.plain),
        Cell(size=style.plain.size, bar=Bar(part.expected / longest, notch)),
    )


def _heading(row: BudgetRow) -> str:
    if row.kind is RowKind.TRIPS:
        return _("Trips")
    if row.kind in {RowKind.TAX, RowKind.CONTINGENCY}:
        return _("Contingency and tax")
    return row.heading or _("Others")


def _columns(binder: Binder) -> tuple[Column, ...]:
    mark = number_style(binder).decimal_mark
    figures = (_("planned"), _("committed"), _("actual"), _("expected"), _("over"))
    heads = {_("planned"), _("expected")}
    return (
        Column(_("what"), head=True),
        *(Column(label, figure=True, decimal_mark=mark, head=label in heads) for label in figures),
    )


def _row(binder: Binder, name: str, amounts: Amounts, style: ListType, *, strong: bool = False) -> Row:
    """A line; what was planned and is not known says so, what has not been committed or paid yet is a dash."""
    words = style.lead if strong else style.strong
    figures = style.lead if strong else style.plain
    return (
        cell(name, words),
        _known(binder, amounts.planned, words),
        cell(_or_dash(binder, amounts.committed), figures),
        cell(_or_dash(binder, amounts.actual), figures),
        _known(binder, amounts.expected, words),
        cell(_or_dash(binder, amounts.over or None), figures),
    )


def _known(binder: Binder, minor: int | None, words: Style) -> Cell:
    return cell(_("not known") if minor is None else money(binder, minor), words)


def _or_dash(binder: Binder, minor: int | None) -> str:
    return "–" if minor is None else money(binder, minor)


def _after(binder: Binder, budget: Budget, style: ListType) -> Iterator[Block]:
    yield Space(4)
    if budget.missing:
        yield state(Shape.DASHED_RING, not_known_text(binder, budget.missing), style.strong)
        yield text(_("What is known comes to {known}.").format(known=money(binder, budget.known)), style.strong)
    elif budget.room is not None and budget.allowed is not None:
        allowed, room = money(binder, budget.allowed), money(binder, abs(budget.room))
        within = _("within the budget of {budget}, {room} left").format(budget=allowed, room=room)
        over = _("over the budget of {budget} by {room}").format(budget=allowed, room=room)
        yield state(*((Shape.RING, within) if budget.room >= 0 else (Shape.WEDGE, over)), style.section)
    else:
        yield text(_("No budget is set for the shoot."), style.strong)
    for row in budget.tax if budget.tax_contained else ():
        if row.amounts.expected:
            says = _("{tax} of {amount} is in the prices.")
            yield text(says.format(tax=row.name, amount=money(binder, row.amounts.expected)), style.plain)
    if budget.deposits:
        says = _("{deposits} of deposits come back with the empties and are in no line.")
        yield text(says.format(deposits=money(binder, budget.deposits)), style.plain)
    yield text(
        _("Expected is what was paid, else what was committed, else what was planned; over is expected less planned."),
        style.label,
    )
