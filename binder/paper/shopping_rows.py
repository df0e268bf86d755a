"""A row of the shopping list: what is needed of a food, which packs to take, what is left over, what is paid."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.buying_words import done_words, offer_words, pack_size, take_words
from binder.figures.date_text import date_text
from binder.figures.not_known import not_known_text
from binder.kitchen.edits.buying import purchases_of
from binder.kitchen.wording import _
from binder.paper.cell import Cell, cell
from binder.paper.mark import Shape
from binder.paper.run import Run, unbroken
from binder.paper.sheet_words import grams, money

if TYPE_CHECKING:
    from binder.figures.shopping import PackCount, ShoppingItem
    from binder.figures.trips import TripLine
    from binder.kitchen.binder import Binder
    from binder.paper.list_type import ListType
    from binder.paper.ruling import Row


def bought_row(binder: Binder, shoot_id: str, line: TripLine, style: ListType) -> Row:
    """A food that is fetched on a trip: ticked where it has been bought, or where something else has."""
    item, done = line.item, [done_words(binder, shoot_id, line.item.food, one.priced.pack.id) for one in line.packs]
    purchases = purchases_of(binder, shoot_id, item.food)
    bought = any(one.count for one in purchases)
    tick = Shape.TICK_BOX if not all(done) else Shape.TICKED if bought else Shape.DASH
    buy = tuple(run for at, pack in enumerate(line.packs) for run in _pack(binder, pack, style, first=at == 0))
    if any(one.instead or not one.count for one in purchases):
        buy = (*buy, Run("\n" + done[0], style.strong))
    elsewhere = len(line.packs) < len(item.packs)
    if elsewhere:
        buy = (*buy, Run("\n" + _("the rest from another store"), style.label))
    return (
        Cell(shape=tick, size=style.lead.size),
        food_cell(binder, item, style),
        _needed(binder, item, style),
        Cell((*buy, *_at_home(binder, item, style))),
        cell("" if elsewhere else grams(binder, item.left_over or 0.0), style.plain),
        cell(money(binder, line.price), style.lead),
    )


def missing_row(binder: Binder, item: ShoppingItem, style: ListType) -> Row:
    """A food of which no pack is known."""
    lacking = not_known_text(binder, [item.missing] if item.missing else [])
    return (
        Cell(shape=Shape.TICK_BOX, size=style.lead.size),
        food_cell(binder, item, style),
        _needed(binder, item, style),
        cell(lacking, style.strong),
        cell("", style.plain),
        cell(_("not known"), style.strong),
    )


def home_row(binder: Binder, item: ShoppingItem, style: ListType) -> Row:
    """A food of which there is enough."""
    return (
        Cell(shape=Shape.DASH, size=style.lead.size),
        food_cell(binder, item, style),
        _needed(binder, item, style),
        Cell((Run(_("nothing: there is enough"), style.plain), *_at_home(binder, item, style))),
        cell(grams(binder, item.left_over or 0.0), style.plain),
        cell(money(binder, 0), style.plain),
    )


def food_cell(binder: Binder, item: ShoppingItem, style: ListType) -> Cell:
    """A food by its name, and whether a kitchen is likely to have it."""
    runs = [Run(item.name, style.lead)]
    if binder.foods[item.food].staple:
        runs.append(Run(" " + unbroken(_("have some?")), style.label))
    return Cell(tuple(runs), size=style.lead.size)


def _needed(binder: Binder, item: ShoppingItem, style: ListType) -> Cell:
    return cell(grams(binder, item.needed), style.strong)


def _at_home(binder: Binder, item: ShoppingItem, style: ListType) -> tuple[Run, ...]:
    """How much there is already, where there is any."""
    if item.at_home <= 0:
        return ()
    home = unbroken(_("at home {grams}").format(grams=grams(binder, item.at_home)))
    return (Run(f" {home}", style.label),)


def _pack(binder: Binder, found: PackCount, style: ListType, *, first: bool) -> tuple[Run, ...]:
    """`2 × 500 g bag at $3.49`, then the day the price was asked."""
    quote = found.priced.quote
    return (
        Run(("" if first else "\n") + take_words(binder, found), style.strong),
        Run(f" {_at_what(binder, found)}", style.plain),
        Run(f" {unbroken(date_text(binder, quote.on))}", style.label),
    )


def _at_what(binder: Binder, found: PackCount) -> str:
    """The price of each; of what the counter weighs by; and of the offer, where it counts."""
    pack, price, offer = found.priced.pack, money(binder, found.priced.price), offer_words(binder, found)
    if pack.by_weight:
        return _("at {price} for {pack}").format(price=price, pack=pack_size(binder, pack))
    if offer:
        return _("at {price}, {offer}").format(price=price, offer=offer)
    return unbroken(_("at {price}").format(price=price))
