"""What a form of the base ingredient is made of, down to what is bought; and what a gram of any food costs."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.memory import FORMS, remembered_from
from binder.figures.missing import Missing, MissingKind, Place
from binder.figures.price import chosen_pack
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Mapping

    from binder.kitchen.binder import Binder
    from binder.kitchen.conversion import Conversion


def conversion_to(binder: Binder, form_id: str) -> Conversion | None:
    """The first conversion that gives a form; None where nothing does."""
    outcomes = binder.outcomes.where("form", form_id)
    return binder.conversions[outcomes[0].conversion] if outcomes else None


@remembered_from(FORMS)
def bought_for(binder: Binder, food_id: str) -> Mapping[str, float] | Missing:
    """Grams as purchased of each bought food that go into one gram of a food; the food itself where it is bought.

    A conversion's cost goes to its outcomes by weight: each gram that comes out carries the same share of what went in.
    """
    return _traced(binder, food_id, ())


def _traced(binder: Binder, food_id: str, trail: tuple[str, ...]) -> Mapping[str, float] | Missing:
    conversion = conversion_to(binder, food_id)
    if conversion is None:
        return {food_id: 1.0}
    if food_id in trail:
        return _loop(binder, food_id, trail)
    out = sum(outcome.ratio for outcome in binder.outcomes.where("conversion", conversion.id))
    gathered: dict[str, float] = {}
    parts = [(conversion.takes, 1.0)] + [(a.food, a.ratio) for a in binder.additions.where("conversion", conversion.id)]
    for part, ratio in parts:
        inner = _traced(binder, part, (*trail, food_id))
        if isinstance(inner, Missing):
            return inner
        for bought, share in inner.items():
            gathered[bought] = gathered.get(bought, 0.0) + share * ratio / out
    return gathered


def _loop(binder: Binder, food_id: str, trail: tuple[str, ...]) -> Missing:
    names = [binder.foods[key].name for key in (*trail[trail.index(food_id) :], food_id)]
    says = _("These conversions go in a loop: {loop}. Take one of them out.").format(loop=" → ".join(names))
    return Missing(MissingKind.FORM, says, Place("foods", food_id))


@remembered_from(FORMS)
def cost_per_gram(binder: Binder, food_id: str) -> float | Missing:
    """Minor currency units a gram: what it is bought for, or what the bought foods in it cost; 0 only for what is free."""
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
