"""Ticks and what was really bought, as changes: a line ticked, counted, paid for, or another thing taken instead."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from binder.desktop.larder_page.food_measures import typed_grams
from binder.desktop.words.figure_text import store_name
from binder.desktop.words.typed import UnreadableError, typed_money, typed_number
from binder.figures.buying_words import not_had, pack_text
from binder.figures.memory import remembered_from
from binder.figures.missing import Missing
from binder.figures.price import chosen_pack, pack_grams
from binder.kitchen.edits.buying import not_to_be_had, purchases_of, set_purchase, take_instead, tick, untick
from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.desktop.buying_page.buying_figures import ListLine
    from binder.figures.shopping import ShoppingItem
    from binder.kitchen.binder import Binder
    from binder.kitchen.buying import Purchase
    from binder.kitchen.change import Change
    from binder.kitchen.food import Food
    from binder.kitchen.price import Pack


_ENOUGH = 3
"""Letters of `not to be had` that are enough."""


def ends_line(purchase: Purchase) -> bool:
    """Whether a purchase puts an end to its food's whole line, and not to one pack of it."""
    return purchase.pack is None or purchase.instead is not None or not purchase.count


def purchase_of(binder: Binder, shoot: str, line: ListLine) -> Purchase | None:
    """The purchase that a line is ticked by; None while it is open."""
    found = purchases_of(binder, shoot, line.item.food)
    ended = next((one for one in found if ends_line(one)), None)
    if ended is not None or line.taken is None:
        return ended
    return next((one for one in found if one.pack == line.taken.priced.pack.id), None)


def grams_left(binder: Binder, shoot: str, item: ShoppingItem) -> float:
    """Grams beyond the need with what was bought so far and the rest as listed; below zero where it is too little."""
    purchases = {one.pack: one for one in purchases_of(binder, shoot, item.food) if not ends_line(one)}
    open_packs = sum(one.grams for one in item.packs if one.priced.pack.id not in purchases)
    bought = sum(_bought_grams(binder, one) for one in purchases.values())
    return item.at_home + open_packs + bought - item.needed


def _bought_grams(binder: Binder, purchase: Purchase) -> float:
    pack = binder.packs.get(purchase.pack or "")
    grams = pack_grams(binder, pack) if pack is not None else 0.0
    return 0.0 if isinstance(grams, Missing) else grams * purchase.count


def toggled(binder: Binder, shoot: str, line: ListLine) -> Change:
    """The change that ticks a line, or lets it be open again."""
    purchase = purchase_of(binder, shoot, line)
    return untick(binder, purchase) if purchase is not None else _ticked(binder, shoot, line)


def _ticked(
    binder: Binder, shoot: str, line: ListLine, *, count: float | None = None, paid: int | None = None
) -> Change:
    taken = line.taken
    return tick(
        binder,
        binder.shoots[shoot],
        binder.foods[line.item.food],
        pack=taken.priced.pack if taken else None,
        count=listed_count(line) if count is None else count,
        planned=taken.price if taken else line.item.spend,
        paid=paid,
        on=line.on,
    )


def listed_count(line: ListLine) -> float:
    """How many the list takes; at the counter the weight as a part of what the pack's price is for."""
    if line.taken is None:
        return 1.0
    taken = line.taken
    return taken.grams / taken.priced.grams if taken.priced.pack.by_weight else float(taken.count)


def typed_count(binder: Binder, shoot: str, line: ListLine, text: str) -> Change:
    """The change that typing how many were bought is: none at all says that it was not to be had."""
    pack = line.taken.priced.pack if line.taken else None
    count = _count(binder, pack, text)
    purchase = purchase_of(binder, shoot, line)
    if not count:
        return _gone_without(binder, shoot, line)
    return set_purchase(binder, purchase, count=count) if purchase else _ticked(binder, shoot, line, count=count)


def typed_count_of(binder: Binder, purchase: Purchase, text: str) -> Change:
    """The change that typing how many were bought is, of something bought beside the list."""
    return set_purchase(binder, purchase, count=_count(binder, binder.packs.get(purchase.pack or ""), text))


def _count(binder: Binder, pack: Pack | None, text: str) -> float:
    """A number of packs; of what is sold by weight also a weight."""
    try:
        return typed_number(binder, text)
    except BinderError:
        grams = pack_grams(binder, pack) if pack is not None and pack.by_weight else None
        if grams is None or isinstance(grams, Missing):
            raise
        return typed_grams(binder, text) / grams


def typed_paid(binder: Binder, shoot: str, line: ListLine, text: str) -> Change:
    """The change that typing what was paid is; it ticks a line that was open."""
    paid, purchase = typed_money(binder, text), purchase_of(binder, shoot, line)
    return set_purchase(binder, purchase, paid=paid) if purchase else _ticked(binder, shoot, line, paid=paid)


def other_packs(binder: Binder, line: ListLine) -> dict[str, Pack]:
    """The other packs of a line's food, by what they are called on the list."""
    own = line.taken.priced.pack.id if line.taken else ""
    return {name: pack for name, pack in packs_by_name(binder, line.item.food).items() if pack.id != own}


@remembered_from(frozenset({"settings", "packs", "stores"}))
def packs_by_name(binder: Binder, food: str) -> dict[str, Pack]:
    """The packs of a food by what they are called on the list."""
    packs = binder.packs.where("food", food)
    return {
        _("{pack} at {store}").format(pack=pack_text(binder, one), store=store_name(binder, one.store)): one
        for one in packs
    }


def typed_taken(binder: Binder, shoot: str, line: ListLine, text: str) -> Change:
    """The change that typing what was taken instead is: another pack, another food, or nothing."""
    plain = text.strip().casefold()
    if len(plain) >= _ENOUGH and not_had().startswith(plain):
        return _gone_without(binder, shoot, line)
    pack = next((one for name, one in other_packs(binder, line).items() if name.casefold() == plain), None)
    if pack is not None:
        return _instead(binder, shoot, line, binder.foods[line.item.food], pack)
    food = next((one for one in binder.foods.values() if one.name.casefold() == plain), None)
    if food is None:
        raise UnreadableError(text, _("choose another pack, name another food, or write: not to be had."))
    chosen = chosen_pack(binder, food.id)
    return _instead(binder, shoot, line, food, None if isinstance(chosen, Missing) else chosen.pack)


def foods_like(binder: Binder, text: str) -> Sequence[str]:
    """Foods of the binder with a word that begins as typed."""
    wanted = text.strip().casefold()
    if len(wanted) < 2:  # noqa: PLR2004 - one letter names too many
        return ()
    names = (food.name for food in binder.foods.values())
    return sorted(name for name in names if any(word.startswith(wanted) for word in name.casefold().split()))[:8]


def _instead(binder: Binder, shoot: str, line: ListLine, food: Food, pack: Pack | None) -> Change:
    grams = pack_grams(binder, pack) if pack is not None else None
    needed = line.taken.grams if line.taken else line.item.needed
    count = 1.0 if grams is None or isinstance(grams, Missing) else float(max(1, math.ceil(needed / grams - 1e-6)))
    if pack is not None and pack.by_weight and not isinstance(grams, Missing) and grams:
        count = needed / grams
    own = binder.foods[line.item.food]
    return take_instead(
        binder, binder.shoots[shoot], own, instead=food, pack=pack, count=count, planned=line.item.spend, on=line.on
    )


def _gone_without(binder: Binder, shoot: str, line: ListLine) -> Change:
    food = binder.foods[line.item.food]
    return not_to_be_had(binder, binder.shoots[shoot], food, planned=line.item.spend, on=line.on)
