"""The wrap report: what was paid against what was planned, by food and by who used it, and what is left over."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.budget_rows import bearer_text
from binder.figures.cap_basis import basis_text
from binder.figures.portion_text import number_style
from binder.figures.wrap import Account, shoot_wrap
from binder.kitchen.wording import _, listed
from binder.paper.arrangement import Space
from binder.paper.block import text
from binder.paper.cell import Cell, Column, cell
from binder.paper.cost_sheet import cost_words
from binder.paper.list_pages import Section, Sheet
from binder.paper.list_type import ON_THE_DESK
from binder.paper.mark import Shape, marked, state
from binder.paper.run import Run
from binder.paper.sheet_words import grams, money, shoot_words
from binder.paper.table import Table, table

if TYPE_CHECKING:
    from collections.abc import Iterator

    from binder.figures.as_bought import CapAfter
    from binder.figures.wrap import FoodAccount, Wrap
    from binder.kitchen.binder import Binder
    from binder.paper.block import Block
    from binder.paper.job import Job
    from binder.paper.list_type import ListType
    from binder.paper.ruling import Row


def has_purchases(binder: Binder, shoot_id: str) -> bool:
    """Whether anything has been bought."""
    return bool(binder.purchases.where("shoot", shoot_id))


def wrap_sheet(job: Job) -> Sheet:
    """The wrap report of a shoot."""
    binder, style = job.binder, job.list_type(ON_THE_DESK)
    wrap = shoot_wrap(binder, job.shoot)
    under: list[Block] = [text(shoot_words(binder, job.shoot), style.plain)]
    under += _standing(binder, wrap, style)
    sections = [
        Section(table=_bearers(binder, wrap, style)),
        Section(table=_foods(binder, wrap, style), after=tuple(_notes(wrap, style))),
    ]
    if wrap.caps:
        sections.append(Section(table=_caps(binder, wrap, style)))
    return Sheet(_("Wrap report"), under, [one for one in sections if one.table and one.table.rows], style)


def _standing(binder: Binder, wrap: Wrap, style: ListType) -> Iterator[Block]:
    """Whether the books are closed, and how they stand against the budget."""
    total = wrap.total
    if total.open:
        says = _("Not closed yet: {open} is still open.").format(open=money(binder, total.open))
        yield state(Shape.OPEN_TRIANGLE, says, style.section)
    elif wrap.unsettled:
        says = _("Not closed yet: no price and no receipt for {foods}.")
        foods = listed(one.name for one in wrap.unsettled)
        yield state(Shape.OPEN_TRIANGLE, says.format(foods=foods), style.section)
    else:
        yield state(Shape.RING, _("Closed: everything that was bought has its receipt."), style.section)
    budget = wrap.budget
    if budget.room is not None and budget.allowed is not None:
        allowed, room = money(binder, budget.allowed), money(binder, abs(budget.room))
        within = _("within the budget of {budget}, {room} left").format(budget=allowed, room=room)
        over = _("over the budget of {budget} by {room}").format(budget=allowed, room=room)
        yield state(*((Shape.RING, within) if budget.room >= 0 else (Shape.WEDGE, over)), style.strong)
    if wrap.worth:
        worth = _("What is left over of what was paid for is worth {worth}.").format(worth=money(binder, wrap.worth))
        yield text(worth, style.strong)


def _account_columns(binder: Binder, *more: Column) -> tuple[Column, ...]:
    mark = number_style(binder).decimal_mark
    labels = ((_("planned"), False), (_("paid"), True), (_("open"), False), (_("variance"), True))
    figures = (Column(label, figure=True, decimal_mark=mark, head=head) for label, head in labels)
    return (Column(_("what"), share=1.4, head=True), *figures, *more)


def _account(binder: Binder, account: Account, style: ListType) -> tuple[Cell, ...]:
    figures = (account.planned, account.paid, account.open)
    variance = f"+{money(binder, account.variance)}" if account.variance > 0 else money(binder, account.variance)
    return (*(cell(money(binder, minor), style.plain) for minor in figures), cell(variance, style.strong))


def _bearers(binder: Binder, wrap: Wrap, style: ListType) -> Table:
    rows: list[Row] = [
        (cell(bearer_text(binder, one.bearer), style.strong), *_account(binder, one.account, style))
        for one in wrap.bearers
    ]
    rows.append((cell(_("Food in all"), style.lead), *_account(binder, wrap.total, style)))
    return table(_account_columns(binder), rows, style, _("By who used it"))


def _foods(binder: Binder, wrap: Wrap, style: ListType) -> Table:
    columns = _account_columns(binder, Column(_("left over"), figure=True), Column(_("worth"), figure=True))
    rows: list[Row] = [_food(binder, one, style) for one in wrap.foods]
    blank = cell("", style.plain)
    rows.append(
        (
            cell(_("Food in all"), style.lead),
            *_account(binder, wrap.total, style),
            blank,
            cell(money(binder, wrap.worth), style.lead),
        )
    )
    return table(columns, rows, style, _("By food"))


def _food(binder: Binder, one: FoodAccount, style: ListType) -> Row:
    name = [Run(one.receipt.name, style.strong)]
    if one.without:
        name.append(Run(" " + _("not to be had"), style.label))
    if one.instead:
        name.append(Run(" " + _("instead {foods}").format(foods=listed(one.instead)), style.label))
    return (
        Cell(tuple(name), size=style.strong.size),
        *_account(binder, one.account, style),
        cell(grams(binder, one.left) if one.left else "–", style.plain),
        cell(money(binder, one.worth) if one.worth else "–", style.plain),
    )


def _notes(wrap: Wrap, style: ListType) -> Iterator[Block]:
    if wrap.not_planned:
        foods = listed(one.name for one in wrap.not_planned)
        yield Space(4)
        says = _("In no account, because no price was known and there is no receipt: {foods}.").format(foods=foods)
        yield marked(Shape.DASHED_RING, text(says, style.strong), style.strong)


def _caps(binder: Binder, wrap: Wrap, style: ListType) -> Table:
    """The dishes whose portion costs something else as things were bought."""
    mark = number_style(binder).decimal_mark
    columns = (
        Column(_("dish"), share=1.4, head=True),
        Column(_("planned"), figure=True, decimal_mark=mark),
        Column(_("as bought"), figure=True, decimal_mark=mark, head=True),
        Column(_("cap"), figure=True, decimal_mark=mark),
        Column(_("because of"), share=1.2),
    )
    title = _("A portion as things were bought: {basis}").format(basis=basis_text(wrap.caps[0].after.basis))
    return table(columns, [_cap(binder, one, style) for one in wrap.caps], style, title)


def _cap(binder: Binder, one: CapAfter, style: ListType) -> Row:
    swaps = (_("{taken} for {planned}").format(taken=taken, planned=planned) for planned, taken in one.instead)
    before, _cap_before = cost_words(binder, one.before)
    after, cap = cost_words(binder, one.after)
    return (
        cell(f"{one.after.number} {one.after.name}", style.strong),
        cell(before, style.plain),
        cell(after, style.strong),
        cell(cap, style.plain),
        cell(listed(swaps), style.plain),
    )
