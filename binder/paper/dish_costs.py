"""One dish on the costs sheet: its lines with their share, and what each food would have to cost to meet the cap."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import TYPE_CHECKING

from binder.figures.cap_basis import basis_text, portion_by_food
from binder.figures.checks import cost_beside_cap, dish_title
from binder.figures.cost import Verdict, break_even_prices
from binder.figures.date_text import date_text
from binder.figures.not_known import not_known_text
from binder.figures.portion_text import number_style
from binder.kitchen.money import honest_digits, minor_digits
from binder.kitchen.shoot import CapBasis
from binder.kitchen.wording import _, listed
from binder.paper.block import Block, text
from binder.paper.cell import Bar, Cell, Column, cell
from binder.paper.list_pages import Section
from binder.paper.mark import cap_state, state
from binder.paper.run import unbroken
from binder.paper.sheet_words import grams, money, share_text, titled
from binder.paper.table import Table, table

if TYPE_CHECKING:
    from binder.figures.cost import BreakEven, DishCost, LineCost
    from binder.kitchen.binder import Binder
    from binder.paper.list_type import ListType
    from binder.paper.ruling import Row

_FURTHEST_PRICE = 10
"""Times what a pack costs: what may cost more than that is named and not listed."""

_WIDEST = 400.0
"""Points; a wider table would part a line from its figures."""


def dish_sections(binder: Binder, cost: DishCost, style: ListType) -> list[Section]:
    """A dish's state, its lines with their share, and what each food may cost at most for the dish to meet its cap."""
    title, (shape, word) = dish_title(cost), cap_state(cost.verdict)
    shown, cap = cost_beside_cap(binder, cost)
    if cost.verdict is Verdict.UNKNOWN:
        says = not_known_text(binder, cost.missing)
    elif cost.verdict is Verdict.NO_CAP:
        says = _("{state}: {cost} a portion, {basis}").format(state=word, cost=shown, basis=basis_text(cost.basis))
    else:
        says = _("{state}: {cost} a portion, {basis}; the cap is {cap}")
        says = says.format(state=word, cost=shown, basis=basis_text(cost.basis), cap=cap)
    before: list[Block] = [state(shape, says, style.strong)]
    costs = () if cost.basis is CapBasis.USED else portion_by_food(binder, binder.dishes[cost.dish])
    made_up = _foods(binder, costs, style) if isinstance(costs, Mapping) else _lines(binder, cost, style)
    sections = [Section(title, "", before, made_up, _not_counted(cost, style))]
    prices = break_even_prices(binder, cost.dish)
    near = tuple(price for price in prices if _is_near(price))
    if near:
        before = [text(_("What one of these packs may cost at most for the dish to meet its cap:"), style.plain)]
        sections.append(Section("", title, before, _break_even(binder, near, style), _further(prices, near, style)))
    return sections


def _is_near(price: BreakEven) -> bool:
    """Whether a price is within what prices do: nobody waits for salt at a hundred times what it costs."""
    return price.price_at_cap is None or price.price_at_cap <= _FURTHEST_PRICE * price.price_now


def _further(prices: tuple[BreakEven, ...], near: tuple[BreakEven, ...], style: ListType) -> tuple[Block, ...]:
    further = [price.name for price in prices if price not in near]
    if not further:
        return ()
    says = _("{foods}: each could cost {times} times what it does.")
    return (text(says.format(foods=titled(listed(further)), times=_FURTHEST_PRICE), style.plain),)


def _not_counted(cost: DishCost, style: ListType) -> tuple[Block, ...]:
    if not cost.not_counted:
        return ()
    return (text(_("To taste, not counted: {foods}.").format(foods=listed(cost.not_counted)), style.plain),)


def _foods(binder: Binder, costs: Mapping[str, float], style: ListType) -> Table:
    """What is bought for a dish, the dearest first: on this basis a line has no cost of its own."""
    total = sum(costs.values())
    columns = (
        Column(_("food"), head=True),
        Column(_("cost"), figure=True, decimal_mark=number_style(binder).decimal_mark),
        Column(_("share"), figure=True),
        Column("", bar=True),
    )
    dearest = sorted(costs.items(), key=lambda one: (-one[1], binder.foods[one[0]].name))
    rows: list[Row] = [
        (
            cell(binder.foods[food].name, style.strong),
            cell(line_money(binder, minor), style.plain),
            cell(share_text(binder, minor / total), style.plain),
            Cell(size=style.plain.size, bar=Bar(minor / total)),
        )
        for food, minor in dearest
        if minor > 0
    ]
    return table(columns, rows, style, widest=_WIDEST)


def _lines(binder: Binder, cost: DishCost, style: ListType) -> Table:
    columns = (
        Column(_("line"), head=True),
        Column(_("as purchased"), figure=True),
        Column(_("cost"), figure=True, decimal_mark=number_style(binder).decimal_mark),
        Column(_("share"), figure=True),
        Column("", bar=True),
    )
    rows = [_line(binder, line, style) for line in cost.lines if line.counted]
    return table(columns, rows, style, widest=_WIDEST)


def _line(binder: Binder, line: LineCost, style: ListType) -> Row:
    unknown = cell(_("not known"), style.strong)
    return (
        cell(line.name, style.strong),
        unknown if line.purchased is None else cell(grams(binder, line.purchased), style.plain),
        unknown if line.cost is None else cell(line_money(binder, line.cost), style.plain),
        cell("–" if line.share is None else share_text(binder, line.share), style.plain),
        cell("", style.plain) if line.share is None else Cell(size=style.plain.size, bar=Bar(line.share)),
    )


def line_money(binder: Binder, cost: float) -> str:
    """A line's cost to a tenth of the smallest coin, finer where it would else read as nothing."""
    currency = binder.settings.currency
    return money(binder, cost, digits=max(minor_digits(currency) + 1, honest_digits(cost, 0.0, currency)))


def _break_even(binder: Binder, prices: tuple[BreakEven, ...], style: ListType) -> Table:
    mark = number_style(binder).decimal_mark
    columns = (
        Column(_("food"), head=True),
        Column(_("pack")),
        Column(_("now"), figure=True, decimal_mark=mark),
        Column(_("as of")),
        Column(_("at most"), figure=True, decimal_mark=mark),
    )
    return table(columns, [_price(binder, price, style) for price in prices], style, widest=_WIDEST)


def _price(binder: Binder, price: BreakEven, style: ListType) -> Row:
    at_cap = _("no price would do")
    if price.price_at_cap is not None:
        at_cap = money(binder, math.floor(price.price_at_cap + 1e-9))  # rounded down: at the price shown it is met
    return (
        cell(price.name, style.strong),
        cell(price.pack_label, style.plain),
        cell(money(binder, price.price_now), style.plain),
        cell(unbroken(date_text(binder, price.on)), style.plain),
        cell(at_cap, style.strong),
    )
