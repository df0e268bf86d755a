"""The binder as things were bought, at what was paid and with what was taken instead: a value beside the one edited."""

from __future__ import annotations

import math
from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING

from binder.figures.cost import DishCost, dish_cost, shoot_costs
from binder.figures.memory import PLANS, remembered_from
from binder.figures.missing import Missing
from binder.figures.price import PricedPack, chosen_pack, pack_grams
from binder.figures.receipts import food_receipts
from binder.kitchen.edits.records import with_values
from binder.kitchen.money import LARGEST_PRICE
from binder.kitchen.price import Quote

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from binder.kitchen.binder import Binder
    from binder.kitchen.buying import Purchase
    from binder.kitchen.price import Pack
    from binder.kitchen.recipe import Line
    from binder.kitchen.table import Table


@dataclass(frozen=True)
class CapAfter:
    """What a portion of a dish was planned to cost and what it costs as things were bought, minor units, with its cap.

    `instead` are the foods, by name, that were taken for others in it: (the one planned, the one taken).
    """

    before: DishCost
    after: DishCost
    instead: tuple[tuple[str, str], ...]

    @property
    def more(self) -> float | None:
        """What a portion costs beyond the plan; None where either is not known."""
        before, after = self.before.per_portion, self.after.per_portion
        return None if before is None or after is None else after - before


@remembered_from(PLANS | {"purchases"})
def caps_as_bought(binder: Binder, shoot_id: str) -> tuple[CapAfter, ...]:
    """The dishes whose portion costs something else as things were bought, or holds another food, in running order."""
    bought, instead = as_bought(binder, shoot_id), _instead(binder, shoot_id)
    found = []
    for before in shoot_costs(binder, shoot_id):
        after = dish_cost(bought, before.dish)
        foods = dict.fromkeys(line.food for line in _lines_of(binder, binder.dishes[before.dish].recipe))
        names = tuple(
            (binder.foods[food].name, binder.foods[instead[food]].name)
            for food in foods
            if food is not None and food in instead
        )
        if names or after.per_portion != before.per_portion:
            found.append(CapAfter(before, after, names))
    return tuple(found)


@remembered_from(PLANS | {"purchases"})
def as_bought(binder: Binder, shoot_id: str) -> Binder:
    """The binder with each food of a receipt at what was paid a gram, and what was not to be had replaced.

    The lines of the shoot's recipes take the food that was taken instead. Where their amount cannot be weighed of it,
    the cost is not known, and says so.
    """
    instead, prices = _instead(binder, shoot_id), list(_paid_prices(binder, shoot_id))
    recipes = {line for dish in binder.dishes.where("shoot", shoot_id) for line in _lines_of(binder, dish.recipe)}
    lines = [
        (line.id, with_values(line, food=instead[line.food])) for line in recipes if line.food and line.food in instead
    ]
    added = [
        (one.id, with_values(one, food=instead[one.food])) for one in binder.additions.values() if one.food in instead
    ]
    sold = [(pack.id, with_values(pack, on_sale=True)) for pack, _price in prices if not pack.on_sale]
    return binder.with_tables(
        {
            "lines": binder.lines.with_changes(lines),
            "additions": binder.additions.with_changes(added),
            "packs": binder.packs.with_changes(sold),
            "quotes": _pinned_at(binder, prices),
        }
    )


def _instead(binder: Binder, shoot_id: str) -> Mapping[str, str]:
    """Foods that were not to be had, and what was taken for each."""
    purchases = binder.purchases.where("shoot", shoot_id)
    return {one.food: one.instead for one in purchases if one.instead is not None and one.instead != one.food}


def _lines_of(binder: Binder, recipe_id: str) -> Iterator[Line]:
    """The lines of a recipe and of those it is made from, each recipe once."""
    waiting, seen = [recipe_id], {recipe_id}
    while waiting:
        for step in binder.steps.where("recipe", waiting.pop()):
            for line in binder.lines.where("step", step.id):
                yield line
                if line.made is not None and line.made not in seen:
                    seen.add(line.made)
                    waiting.append(line.made)


def _paid_prices(binder: Binder, shoot_id: str) -> Iterator[tuple[Pack, int]]:
    """For each food of a receipt one pack, and what that costs at the mean of what was paid a gram."""
    paid: dict[str, list[Purchase]] = {}
    for one in binder.purchases.where("shoot", shoot_id):
        if one.paid is not None and one.count > 0:
            paid.setdefault(one.instead or one.food, []).append(one)
    planned = {receipt.food: receipt.planned_grams for receipt in food_receipts(binder, shoot_id)}
    for food, purchases in paid.items():
        grams = sum(_grams(binder, one, planned) for one in purchases)
        priced = _pack_of(binder, food, purchases)
        if grams > 0 and priced is not None:
            pack, each = priced
            total = sum(one.paid or 0 for one in purchases)
            if total * each <= LARGEST_PRICE * grams:  # a price of so little of a pack is none of all of it
                yield pack, math.floor(total * each / grams + 0.5)


def _grams(binder: Binder, purchase: Purchase, planned: Mapping[str, float]) -> float:
    if purchase.pack is None:
        return 0.0 if purchase.instead else planned.get(purchase.food, 0.0)
    grams = pack_grams(binder, binder.packs[purchase.pack])
    return 0.0 if isinstance(grams, Missing) else grams * purchase.count


def _pack_of(binder: Binder, food: str, purchases: list[Purchase]) -> tuple[Pack, float] | None:
    """A pack of a food that was bought, or else the one its cost is worked out from, with its grams."""
    packs = [binder.packs[one.pack] for one in purchases if one.pack is not None]
    weighed = [(pack, grams) for pack in packs if not isinstance(grams := pack_grams(binder, pack), Missing)]
    own = [(pack, grams) for pack, grams in weighed if pack.food == food]
    if own:
        return max(own, key=lambda one: (one[1], one[0].id))
    chosen = chosen_pack(binder, food)
    return (chosen.pack, chosen.grams) if isinstance(chosen, PricedPack) else None


def _pinned_at(binder: Binder, prices: list[tuple[Pack, int]]) -> Table[Quote]:
    """The quotes with these prices as the only ones pinned of their foods."""
    foods = {pack.food for pack, _price in prices}
    unpinned = [
        (quote.id, with_values(quote, pinned=False))
        for quote in binder.quotes.values()
        if quote.pinned and binder.packs[quote.pack].food in foods
    ]
    paid = [
        Quote(id=f"paid/{pack.id}"[:200], pack=pack.id, price=price, on=date.max, pinned=True) for pack, price in prices
    ]
    return binder.quotes.with_changes([*unpinned, *((quote.id, quote) for quote in paid)])
