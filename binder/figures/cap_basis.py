"""What a portion is taken to cost when it is held against its cap: used cost, staples free, or whole packs."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.form_cost import bought_for
from binder.figures.missing import Missing
from binder.figures.price import PricedPack, buyable_packs, chosen_pack
from binder.figures.recipe_use import recipe_uses
from binder.figures.whole_packs import packs_price
from binder.kitchen.shoot import CapBasis
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator

    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Dish


def basis_text(basis: CapBasis) -> str:
    """The basis as it is named beside every figure on it."""
    return {
        CapBasis.USED: _("used cost"),
        CapBasis.STAPLES_FREE: _("used cost, staples free"),
        CapBasis.WHOLE_PACKS: _("whole packs over portions"),
    }[basis]


def without_staples(binder: Binder, recipe_id: str, portions: float) -> float | tuple[Missing, ...]:
    """Minor units a portion with what any kitchen has left out; what is missing where a price is."""
    total, missing = 0.0, dict[Missing, None]()
    for food, grams in _bought(binder, recipe_id):
        if isinstance(grams, Missing):
            missing[grams] = None
        elif not binder.foods[food].staple:
            priced = chosen_pack(binder, food)
            if isinstance(priced, Missing):
                missing[priced] = None
            else:
                total += priced.per_gram * grams / portions
    return tuple(missing) or total


def in_whole_packs(binder: Binder, dish: Dish, portions: float) -> float | tuple[Missing, ...]:
    """Minor units a portion for whoever buys whole packs to cook the dish once for its portions."""
    needs: dict[str, float] = {}
    missing = dict[Missing, None]()
    for food, grams in _bought(binder, dish.recipe):
        if isinstance(grams, Missing):
            missing[grams] = None
        else:
            needs[food] = needs.get(food, 0.0) + grams * dish.portions / portions
    total = 0
    for food, grams in needs.items():
        packs = buyable_packs(binder, food)
        if packs:
            total += packs_price(packs, grams)
        else:
            lacking = chosen_pack(binder, food)
            missing |= {lacking: None} if not isinstance(lacking, PricedPack) else {}
    return tuple(missing) or total / dish.portions


def _bought(binder: Binder, recipe_id: str) -> Iterator[tuple[str, float | Missing]]:
    """Grams as purchased of each bought food in a batch, what is free left out."""
    for use in recipe_uses(binder, recipe_id):
        if not use.counted or binder.foods[use.food].free:
            continue
        parts = bought_for(binder, use.food)
        if isinstance(use.purchased, Missing) or isinstance(parts, Missing):
            yield use.food, use.purchased if isinstance(use.purchased, Missing) else parts  # type: ignore[misc]
            continue
        for food, grams in parts.items():
            if not binder.foods[food].free:
                yield food, grams * use.purchased
