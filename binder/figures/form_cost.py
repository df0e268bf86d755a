"""What a form of the base ingredient is made of, down to what is bought; and what a gram of any food costs."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.memory import FORMS, remembered_from
from binder.figures.missing import Missing, MissingKind, Place
from binder.figures.price import chosen_pack
from binder.kitchen.conversion import CostSplit
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Mapping

    from binder.kitchen.binder import Binder
    from binder.kitchen.conversion import Conversion

_EQUAL = 1e-9


def conversion_to(binder: Binder, form_id: str) -> Conversion | None:
    """The first conversion that gives a form; None where nothing does."""
    outcomes = binder.outcomes.where("form", form_id)
    return binder.conversions[outcomes[0].conversion] if outcomes else None


def is_free(binder: Binder, food_id: str) -> bool:
    """Whether nobody pays for a food: it is marked so, and no conversion makes it of what is paid for."""
    return binder.foods[food_id].free and conversion_to(binder, food_id) is None


@remembered_from(FORMS)
def bought_for(binder: Binder, food_id: str) -> Mapping[str, float] | Missing:
    """Grams as purchased of each bought food whose cost one gram of a food carries; the food itself where it is bought.

    A conversion's cost goes to its outcomes as it says: by weight, all to the first, or by shares. Where a form can be
    made in two ways the first conversion counts.
    """
    return _traced(binder, food_id, ())


def _traced(binder: Binder, food_id: str, trail: tuple[str, ...]) -> Mapping[str, float] | Missing:
    conversion = conversion_to(binder, food_id)
    if conversion is None:
        return {food_id: 1.0}
    if food_id in trail:
        return _loop(binder, food_id, trail)
    carried = cost_carried(binder, conversion)
    if isinstance(carried, Missing):
        return carried
    gathered: dict[str, float] = {}
    parts = [(conversion.takes, 1.0)] + [(a.food, a.ratio) for a in binder.additions.where("conversion", conversion.id)]
    for part, ratio in parts:
        inner = _traced(binder, part, (*trail, food_id))
        if isinstance(inner, Missing):
            return inner
        for bought, share in inner.items():
            gathered[bought] = gathered.get(bought, 0.0) + share * ratio * carried[food_id]
    return gathered


@remembered_from(FORMS)
def cost_carried(binder: Binder, conversion: Conversion) -> Mapping[str, float] | Missing:
    """For a gram taken by a conversion, the part of its cost that each gram of an outcome carries.

    By weight each gram carries the same; all to the first leaves the others free; by shares an outcome carries its own
    share, and those without one divide the rest by weight.
    """
    outcomes = binder.outcomes.where("conversion", conversion.id)
    if conversion.split is CostSplit.MAIN:
        return {one.form: 1 / one.ratio if one is outcomes[0] else 0.0 for one in outcomes}
    if conversion.split is CostSplit.BY_WEIGHT:
        out = sum(one.ratio for one in outcomes)
        return {one.form: 1 / out for one in outcomes}
    given = sum(one.cost_share for one in outcomes if one.cost_share is not None)
    rest = sum(one.ratio for one in outcomes if one.cost_share is None)
    if given > 1 + _EQUAL or (not rest and given < 1 - _EQUAL):
        says = _("The cost shares of {conversion} add up to {percent:.0f} %: make them 100 %.")
        return Missing(
            MissingKind.FORM,
            says.format(conversion=conversion.name, percent=given * 100),
            Place("conversions", conversion.id),
        )
    return {
        one.form: one.cost_share / one.ratio if one.cost_share is not None else max(0.0, 1 - given) / rest
        for one in outcomes
    }


def _loop(binder: Binder, food_id: str, trail: tuple[str, ...]) -> Missing:
    names = [binder.foods[key].name for key in (*trail[trail.index(food_id) :], food_id)]
    says = _("These conversions go in a loop: {loop}. Take one of them out.").format(loop=" → ".join(names))
    return Missing(MissingKind.FORM, says, Place("foods", food_id))


@remembered_from(FORMS)
def cost_per_gram(binder: Binder, food_id: str) -> float | Missing:
    """Minor units a gram as purchased: a food's own price, or what the bought foods in it cost; 0 for what is free."""
    parts = bought_for(binder, food_id)
    if isinstance(parts, Missing):
        return parts
    total = 0.0
    for bought, grams in parts.items():
        if binder.foods[bought].free:
            continue
        priced = chosen_pack(binder, bought)
        if isinstance(priced, Missing):
            return priced
        total += priced.per_gram * grams
    return total
