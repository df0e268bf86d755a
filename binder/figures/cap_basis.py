"""What a portion is taken to cost when it is held against its cap: used cost, staples free, or whole packs."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.bought_uses import bought_by_food
from binder.figures.missing import Missing
from binder.figures.price import buyable_packs, chosen_pack
from binder.figures.whole_packs import packs_price
from binder.kitchen.shoot import CapBasis
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Mapping

    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Dish


def basis_text(basis: CapBasis) -> str:
    """The basis as it is named beside every figure on it."""
    return {
        CapBasis.USED: _("used cost"),
        CapBasis.STAPLES_FREE: _("used cost, staples free"),
        CapBasis.WHOLE_PACKS: _("whole packs over portions"),
    }[basis]


def basis_sentence(basis: CapBasis) -> str:
    """What a portion is counted as on a basis, for the head of a sheet of costs."""
    return {
        CapBasis.USED: _("Used cost a portion: the share of each pack that goes into it, compared unrounded."),
        CapBasis.STAPLES_FREE: _(
            "Used cost a portion, staples free: the share of each pack that goes into it, without what any kitchen "
            "has; compared unrounded."
        ),
        CapBasis.WHOLE_PACKS: _(
            "Whole packs over portions: every pack that the dish alone needs, bought whole, over its portions; "
            "compared unrounded."
        ),
    }[basis]


def without_staples(binder: Binder, recipe_id: str, portions: float) -> float | tuple[Missing, ...]:
    """Minor units a portion with what any kitchen has left out; what is missing where a price is."""
    batch = bought_by_food(binder, recipe_id)
    found = batch if isinstance(batch, tuple) else shares_of_packs(binder, batch, portions, staples=False)
    return found if isinstance(found, tuple) else sum(found.values())


def in_whole_packs(binder: Binder, dish: Dish, portions: float) -> float | tuple[Missing, ...]:
    """Minor units a portion for whoever buys whole packs to cook the dish once for its portions."""
    batch = bought_by_food(binder, dish.recipe)
    found = batch if isinstance(batch, tuple) else whole_packs(binder, dish, batch, portions)
    return found if isinstance(found, tuple) else sum(found.values())


def portion_by_food(binder: Binder, dish: Dish) -> Mapping[str, float] | tuple[Missing, ...]:
    """Minor units a portion of each bought food, on the shoot's basis; what is missing where a price or an amount is.

    Empty where the recipe does not say how many portions it yields.
    """
    portions = binder.recipes[dish.recipe].portions
    batch = bought_by_food(binder, dish.recipe)
    return batch if isinstance(batch, tuple) else {} if portions is None else on_basis(binder, dish, batch, portions)


def on_basis(
    binder: Binder, dish: Dish, batch: Mapping[str, float], portions: float
) -> Mapping[str, float] | tuple[Missing, ...]:
    """Minor units a portion of each food in `batch` (grams as purchased), which gives so many portions.

    On the basis of the dish's shoot.
    """
    basis = binder.shoots[dish.shoot].cap_basis
    if basis is CapBasis.WHOLE_PACKS:
        return whole_packs(binder, dish, batch, portions)
    return shares_of_packs(binder, batch, portions, staples=basis is CapBasis.USED)


def shares_of_packs(
    binder: Binder, batch: Mapping[str, float], portions: float, *, staples: bool = True
) -> Mapping[str, float] | tuple[Missing, ...]:
    """Minor units a portion of each food in a batch, as the share of its pack, with or without staples."""
    costs: dict[str, float] = {}
    missing = dict[Missing, None]()
    for food, grams in batch.items():
        if staples or not binder.foods[food].staple:
            priced = chosen_pack(binder, food)
            if isinstance(priced, Missing):
                missing[priced] = None
            else:
                costs[food] = priced.per_gram * grams / portions
    return tuple(missing) or costs


def whole_packs(
    binder: Binder, dish: Dish, batch: Mapping[str, float], portions: float
) -> Mapping[str, float] | tuple[Missing, ...]:
    """Minor units a portion of each food in a batch, as whole packs for the portions of the dish."""
    costs: dict[str, float] = {}
    missing = dict[Missing, None]()
    for food, grams in batch.items():
        packs, lacking = buyable_packs(binder, food), chosen_pack(binder, food)
        if packs:
            costs[food] = packs_price(packs, grams * dish.portions / portions) / dish.portions
        elif isinstance(lacking, Missing):
            missing[lacking] = None
    return tuple(missing) or costs
