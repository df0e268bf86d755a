"""The shopping list by trip: what to order ahead, then each trip in the order one walks through the store."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from binder.figures.buying_words import take_words
from binder.figures.date_text import DateForm, date_text
from binder.figures.not_known import not_known_text
from binder.figures.portion_text import number_style
from binder.figures.shopping import shopping_list
from binder.figures.spend import shoot_spend
from binder.figures.trips import to_order, trip_plans
from binder.kitchen.wording import _
from binder.paper.arrangement import Space
from binder.paper.block import Block, Text, text
from binder.paper.cell import Cell, Column, cell
from binder.paper.list_pages import Section, Sheet
from binder.paper.mark import Shape, state
from binder.paper.ruling import Ruling
from binder.paper.run import Run, unbroken
from binder.paper.sheet_words import grams, money, shoot_words, titled
from binder.paper.shopping_rows import bought_row, food_cell, home_row, missing_row
from binder.paper.table import Table

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from binder.figures.shopping import ShoppingItem, ShoppingList
    from binder.figures.trips import TripLine, TripPlan
    from binder.kitchen.binder import Binder
    from binder.paper.job import Job
    from binder.paper.list_type import ListType
    from binder.paper.ruling import Row


def shopping_sheet(job: Job) -> Sheet:
    """The shopping list of a shoot."""
    binder, shoot_id, style = job.binder, job.shoot, job.list_type()
    bought = shopping_list(binder, shoot_id)
    without = [item for item in bought.items if item.missing]
    at_home = [item for item in bought.items if not item.missing and not item.packs]
    trips = [(plan, [bought_row(binder, shoot_id, line, style) for line in plan.lines]) for plan in _trips(job)]
    others = [
        *(missing_row(binder, item, style) for item in without),
        *(home_row(binder, item, style) for item in at_home),
    ]
    ruling = _ruling(binder, [row for _plan, rows in trips for row in rows] + others, style)
    sections = [*_to_order(binder, shoot_id, style)]
    for plan, rows in trips:
        sections += _trip_sections(binder, plan, rows, ruling)
    sections += _others(without, at_home, others, ruling, style)
    if not sections:
        sections = [Section(before=(text(_("Nothing is to be bought."), style.plain),))]
    sections[-1].after = _total(binder, shoot_id, bought, style)
    return Sheet(_("Shopping list"), (text(shoot_words(binder, shoot_id), style.plain),), sections, style)


def _trips(job: Job) -> tuple[TripPlan, ...]:
    return trip_plans(job.binder, job.shoot)


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


def _to_order(binder: Binder, shoot_id: str, style: ListType) -> Iterator[Section]:
    """What must be ordered before it can be fetched, the first day first."""
    orders = to_order(binder, shoot_id)
    if not orders:
        return
    columns = (
        Column("", figure=True, head=True),
        Column(_("by"), figure=True, head=True),
        Column(_("food"), head=True),
        Column(_("order"), share=1.5),
        Column(_("from"), share=1.5),
    )
    rows = [
        (
            Cell(shape=Shape.TICK_BOX, size=style.lead.size),
            cell(unbroken(date_text(binder, day, DateForm.WEEKDAY_DATE)), style.lead),
            food_cell(binder, line.item, style),
            cell(_ordered(binder, line), style.strong),
            cell(trip_name(binder, plan), style.plain),
        )
        for day, plan, line in orders
    ]
    yield Section(table=Table(Ruling(columns, rows, style), rows, _("To order ahead")))


def _ordered(binder: Binder, line: TripLine) -> str:
    """What to say on the telephone: so many packs, or of what has no price how much is needed."""
    packs = ", ".join(take_words(binder, pack) for pack in line.packs)
    return packs or grams(binder, line.item.needed)


def trip_name(binder: Binder, plan: TripPlan) -> str:
    """A trip by its day and its store."""
    day = unbroken(date_text(binder, plan.on, DateForm.WEEKDAY_DATE)) if plan.on else ""
    store = binder.stores[plan.store].name if plan.store is not None else _("any store")
    return " · ".join(part for part in (day, store) if part)


def _trip_sections(binder: Binder, plan: TripPlan, rows: list[Row], ruling: Ruling) -> Iterator[Section]:
    """A trip: its day, its store and what it comes to, then its food by the sections of the store."""
    name = _("{trip} · {total}").format(trip=trip_name(binder, plan), total=money(binder, plan.price))
    by_section = groupby(zip(plan.lines, rows, strict=True), lambda pair: pair[0].item.section)
    for at, (section, pairs) in enumerate(by_section):
        table = Table(ruling, [row for _line, row in pairs], titled(section))
        yield Section(name if at == 0 else "", trip_name(binder, plan), table=table)


def _others(
    without: Sequence[ShoppingItem],
    at_home: Sequence[ShoppingItem],
    rows: Sequence[Row],
    ruling: Ruling,
    style: ListType,
) -> Iterator[Section]:
    priceless, home = rows[: len(without)], rows[len(without) :]
    if without:
        says = text(_("Ask what they cost before anyone goes: no total is known without them."), style.plain)
        yield Section(_("Not on a trip yet"), "", (says,), Table(ruling, priceless, _("Without a price")))
    if at_home:
        yield Section(table=Table(ruling, home, _("At home already")))


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
