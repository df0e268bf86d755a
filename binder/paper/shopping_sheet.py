"""The shopping list: by section of the store, what is needed, which packs, what is left over and what is paid."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from binder.figures.date_text import date_text
from binder.figures.not_known import not_known_text
from binder.figures.portion_text import number_style
from binder.figures.shopping import shopping_list
from binder.figures.spend import shoot_spend
from binder.kitchen.wording import _
from binder.paper.arrangement import Space
from binder.paper.block import Block, Text, text
from binder.paper.cell import Cell, Column, cell
from binder.paper.list_pages import Section, Sheet
from binder.paper.mark import Shape, state
from binder.paper.ruling import Ruling
from binder.paper.run import Run, unbroken
from binder.paper.sheet_words import grams, money, pack_words, shoot_words, titled
from binder.paper.table import Table

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.figures.shopping import PackCount, ShoppingItem, ShoppingList
    from binder.kitchen.binder import Binder
    from binder.paper.job import Job
    from binder.paper.list_type import ListType
    from binder.paper.ruling import Row


def shopping_sheet(job: Job) -> Sheet:
    """The shopping list of a shoot."""
    binder, shoot_id, style = job.binder, job.shoot, job.list_type()
    bought = shopping_list(binder, shoot_id)
    rows = {item.food: _row(binder, item, style) for item in bought.items}
    ruling = _ruling(binder, list(rows.values()), style)
    sections = [
        Section(table=Table(ruling, [rows[item.food] for item in items], titled(name)))
        for name, items in groupby(bought.items, lambda item: item.section)
    ]
    if not sections:
        sections = [Section(before=(text(_("Nothing is to be bought."), style.plain),))]
    sections[-1].after = _total(binder, shoot_id, bought, style)
    return Sheet(_("Shopping list"), (text(shoot_words(binder, shoot_id), style.plain),), sections, style)


def _ruling(binder: Binder, rows: Sequence[Row], style: ListType) -> Ruling:
    columns = (
        Column("", figure=True, head=True),
        Column(_("food"), head=True),
        Column(_("needed"), figure=True),
        Column(_("buy"), share=1.5),
        Column(_("left over"), figure=True),
        Column(_("to pay"), figure=True, head=True, decimal_mark=number_style(binder).decimal_mark),
    )
    return Ruling(columns, rows, style)


def _row(binder: Binder, item: ShoppingItem, style: ListType) -> Row:
    food = [Run(item.name, style.lead)]
    if binder.foods[item.food].staple:
        food.append(Run(" " + _("have some?"), style.label))
    tick = Cell(shape=Shape.TICK_BOX, size=style.lead.size)
    needed = [Run(grams(binder, item.needed), style.strong)]
    if item.at_home > 0:
        needed.append(Run(" " + unbroken(_("at home {grams}").format(grams=grams(binder, item.at_home))), style.label))
    if item.missing:
        lacking = cell(not_known_text(binder, [item.missing]), style.strong)
        return (
            tick,
            Cell(tuple(food)),
            Cell(tuple(needed)),
            lacking,
            cell("", style.plain),
            cell(_("not known"), style.strong),
        )
    buy = tuple(run for at, pack in enumerate(item.packs) for run in _pack(binder, pack, style, first=at == 0))
    left, pay = (
        cell(grams(binder, item.left_over or 0.0), style.plain),
        cell(money(binder, item.spend or 0), style.lead),
    )
    if not buy:
        buy = (Run(_("nothing: there is enough"), style.plain),)
    return tick, Cell(tuple(food)), Cell(tuple(needed)), Cell(buy), left, pay


def _pack(binder: Binder, found: PackCount, style: ListType, *, first: bool) -> tuple[Run, ...]:
    """`2 × 500 g bag at $3.49`, then the store and the day the price was asked."""
    pack, quote = found.priced.pack, found.priced.quote
    store = binder.stores[pack.store].name if pack.store else ""
    where = ", ".join(part for part in (store, unbroken(date_text(binder, quote.on))) if part)
    return (
        Run(("" if first else "\n") + _how_much(binder, found), style.strong),
        Run(f" {_at_what(binder, found)}", style.plain),
        Run(f" {where}", style.label),
    )


def _how_much(binder: Binder, found: PackCount) -> str:
    if found.priced.pack.by_weight:
        return _("{grams} at the counter").format(grams=grams(binder, found.grams))
    return _("{count} × {pack}").format(count=found.count, pack=pack_words(binder, found.priced.pack))


def _at_what(binder: Binder, found: PackCount) -> str:
    """The price of each; of what the counter weighs by; and of the bundle, where there is one."""
    pack, quote, price = found.priced.pack, found.priced.quote, money(binder, found.priced.price)
    if pack.by_weight:
        return _("at {price} for {pack}").format(price=price, pack=pack_words(binder, pack))
    if quote.bundle_packs and quote.bundle_price is not None:
        says = _("at {price}, {count} for {together}")
        return says.format(price=price, count=quote.bundle_packs, together=money(binder, quote.bundle_price))
    return unbroken(_("at {price}").format(price=price))


def _total(binder: Binder, shoot_id: str, bought: ShoppingList, style: ListType) -> list[Block]:
    spend = shoot_spend(binder, shoot_id)
    blocks: list[Block] = [Space(6)]
    if spend.till is None:
        lacking = not_known_text(binder, bought.missing)
        blocks.append(
            Text((Run(_("Spend at the till: {lacking}.").format(lacking=lacking.rstrip(".")), style.section),))
        )
        known = _("What has a price comes to {known}.").format(known=money(binder, spend.known))
        blocks.append(text(known, style.strong))
    else:
        total = _("Spend at the till: {total}").format(total=money(binder, spend.till))
        blocks.append(text(total, style.section))
    if spend.budget is not None and spend.room is not None:
        blocks.append(_against_budget(binder, spend.budget, spend.room, style))
    blocks.append(text(_("Prices are those asked on the day beside them: look again at the till."), style.label))
    return blocks


def _against_budget(binder: Binder, budget: int, room: int, style: ListType) -> Block:
    shape = Shape.RING if room >= 0 else Shape.WEDGE
    says = _("within the budget of {budget}, {room} left") if room >= 0 else _("over the budget of {budget} by {room}")
    return state(shape, says.format(budget=money(binder, budget), room=money(binder, abs(room))), style.strong)
