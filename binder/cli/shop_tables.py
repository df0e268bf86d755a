"""What `binder shop` shows to people."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from binder.cli.columns import numbers, parts, words
from binder.cli.heading import show_heading
from binder.cli.marks import budget_mark
from binder.cli.pack_text import pack_label, store_name
from binder.cli.terminal import say, say_marked, show_grouped
from binder.figures.date_text import date_text
from binder.figures.portion_text import number_style
from binder.figures.shopping import PackCount, ShoppingItem, ShoppingList, shopping_list
from binder.figures.spend import shoot_spend
from binder.kitchen.amount_text import grams_text
from binder.kitchen.money import money_text
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.figures.spend import Spend
    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Shoot

NOT_KNOWN = "–"


def show_shop(binder: Binder, shoot: Shoot) -> None:
    """Packs to take, by section of the store, and what they come to."""
    show_heading(binder, shoot)
    bought = shopping_list(binder, shoot.id)
    columns = [words(_("Food")), numbers(_("Needed")), words(_("Take")), parts(_("Store · date of the price"))]
    columns += [numbers(_("Price")), numbers(_("Left over"))]
    sections = groupby(bought.items, key=lambda item: item.section)
    show_grouped(
        columns, [(section, [row for item in items for row in _rows(binder, item)]) for section, items in sections]
    )
    say()
    for lack in bought.missing:
        say_marked("◌", lack.says)
    say(_till(binder, bought))
    if shoot.budget is not None:
        say(_budget(binder, shoot_spend(binder, shoot.id), shoot.budget))


def _rows(binder: Binder, item: ShoppingItem) -> list[list[str]]:
    """A row for each kind of pack; the food, its need and what is left over stand in the first."""
    style = number_style(binder)
    needed = grams_text(item.needed, style)
    if not item.packs:
        return [[item.name, needed, _("◌ not known"), "", NOT_KNOWN, NOT_KNOWN]]
    left = NOT_KNOWN if item.left_over is None else grams_text(max(0.0, item.left_over), style)
    first, *others = (_pack_cells(binder, taken) for taken in item.packs)
    return [[item.name, needed, *first, left], *(["", "", *cells, ""] for cells in others)]


def _pack_cells(binder: Binder, taken: PackCount) -> list[str]:
    pack, settings = taken.priced.pack, binder.settings
    store = store_name(binder, pack) or _("any store")
    where = _("{store} · {date}").format(store=store, date=date_text(binder, taken.priced.quote.on))
    price = money_text(taken.price, settings.currency, settings.locale)
    return [f"{taken.count} × {pack_label(binder, pack)}", where, price]


def _till(binder: Binder, bought: ShoppingList) -> str:
    known = money_text(bought.known_spend, binder.settings.currency, binder.settings.locale)
    says = _("At the till: {money}.")
    if bought.spend is None:
        says = _("At the till: not known; {money} for what has a price.")
    proven = " " + _("No cheaper whole packs would do.") if bought.proven_optimal and bought.items else ""
    return says.format(money=known) + proven


def _budget(binder: Binder, spend: Spend, budget: int) -> str:
    money = money_text(budget, binder.settings.currency, binder.settings.locale)
    return _("Budget: {money}. {mark}").format(money=money, mark=budget_mark(spend))
