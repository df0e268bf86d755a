"""What makes up the cost of one dish: a bar for each food that is bought for it, and how dear it may become.

Plain Python.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import TYPE_CHECKING

from binder.desktop.pictures.cost_bar import CostBar
from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Row, Size, Tone
from binder.desktop.sheet.sheet import PlainSheet
from binder.desktop.words.figure_text import date_text, small_money
from binder.figures.cap_basis import basis_text, portion_by_food
from binder.figures.cost import break_even_prices, dish_cost
from binder.figures.date_text import DateForm
from binder.figures.missing import Place
from binder.figures.money_words import money, pack_words, percent_text
from binder.figures.price import PricedPack, chosen_pack
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator

    from binder.desktop.sheet.sheet import Sight
    from binder.figures.cost import BreakEven
    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Dish

_ROOM = 1.04
_LAST_BITS = 1e-6


class DishCosts(PlainSheet):
    """The subject is a dish. The price of a pack at which the dish would just meet its cap stands beside today's."""

    @property
    def name(self) -> str:
        return _("What a portion is made up of")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("food", _("food"), characters=18, stretch=2),
            Column("bar", "", characters=20, stretch=4),
            Column("cost", _("a portion"), characters=9, align=Align.RIGHT),
            Column("share", _("share"), characters=6, align=Align.RIGHT),
            Column("pack", _("bought as"), characters=16, stretch=2),
            Column("now", _("for"), characters=8, align=Align.RIGHT),
            Column("as_of", _("as of"), characters=11),
            Column(
                "at_cap",
                _("may cost"),
                characters=10,
                align=Align.RIGHT,
                tip=_("The price of the pack at which the dish just meets its cap, all else alike"),
            ),
        )

    def rows(self, sight: Sight) -> list[Row]:
        dish = sight.binder.dishes.get(sight.subject or "")
        costs = portion_by_food(sight.binder, dish) if dish is not None else ()
        if dish is None or not isinstance(costs, Mapping):
            return []
        even = {one.food: one for one in break_even_prices(sight.binder, dish.id)}
        return list(_rows(sight.binder, dish, costs, even))


def _rows(binder: Binder, dish: Dish, costs: Mapping[str, float], even: Mapping[str, BreakEven]) -> Iterator[Row]:
    dearest = sorted(((food, cost) for food, cost in costs.items() if cost > 0), key=lambda one: (-one[1], one[0]))
    total = sum(cost for _food, cost in dearest)
    if not dearest:
        return
    cap = dish_cost(binder, dish.id).cap
    for food, cost in dearest:
        bar = CostBar(cost / (dearest[0][1] * _ROOM), None)
        place = Place("foods", food)
        cells = (
            Cell(binder.foods[food].name, leads_to=place, tip=_("Open in the larder")),
            Cell(picture=bar, spoken=" "),
            Cell(small_money(binder, cost)),
            Cell(percent_text(binder, cost / total), tone=Tone.QUIET, size=Size.SMALL),
            *_price_cells(binder, food),
            _at_cap(binder, even.get(food), capped=cap is not None),
        )
        yield Row(f"foods:{food}", cells, place=place, lines=1.4)


def _price_cells(binder: Binder, food: str) -> tuple[Cell, Cell, Cell]:
    priced = chosen_pack(binder, food)
    if not isinstance(priced, PricedPack):
        return NOTHING, NOTHING, NOTHING
    return (
        Cell(pack_words(binder, priced.pack), tone=Tone.QUIET),
        Cell(money(binder, priced.price), tone=Tone.QUIET),
        Cell(date_text(binder, priced.quote.on, DateForm.DATE), tone=Tone.QUIET, size=Size.SMALL),
    )


def _at_cap(binder: Binder, even: BreakEven | None, *, capped: bool) -> Cell:
    """How dear its pack may become; nothing where there is no cap, or the cap is on whole packs."""
    if even is None or not capped:
        return NOTHING
    if even.price_at_cap is None:
        says = _("Whatever it cost, the dish would be over its cap")
        return Cell("–", tone=Tone.QUIET, tip=says, spoken=says)
    # Rounded down: at the price shown the dish is still within its cap.
    shown = money(binder, math.floor(even.price_at_cap + _LAST_BITS))
    return Cell(shown, tone=Tone.STOP if even.price_at_cap < even.price_now else Tone.INK)


def costs_title(binder: Binder, dish: Dish) -> str:
    """The heading of the chart: `5 Midnight Mousse, by food: used cost`."""
    basis = basis_text(binder.shoots[dish.shoot].cap_basis)
    says = _("{number} {dish}, by food: {basis}")
    return says.format(number=dish.position + 1, dish=dish_name(binder, dish), basis=basis)
