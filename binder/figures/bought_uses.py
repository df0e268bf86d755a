"""What is bought for a recipe, line by line: forms of the base traced back to the food they are made of."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.form_cost import bought_for, is_free
from binder.figures.memory import FORMS, remembered_of
from binder.figures.missing import Missing
from binder.figures.recipe_use import recipe_parts, recipe_uses

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from binder.figures.recipe_use import Use
    from binder.kitchen.binder import Binder


@dataclass(frozen=True, slots=True)
class BoughtUse:
    """Grams as purchased of one bought food that a line of a recipe takes for one batch."""

    line: str
    food: str
    grams: float


@remembered_of(recipe_parts, FORMS)
def bought_uses(binder: Binder, recipe_id: str) -> tuple[BoughtUse | Missing, ...]:
    """What one batch of a recipe takes of each food that is bought; what nobody pays for is left out."""
    return tuple(bought for use in recipe_uses(binder, recipe_id) for bought in _bought(binder, use))


def _bought(binder: Binder, use: Use) -> Iterator[BoughtUse | Missing]:
    if not use.counted or is_free(binder, use.food):
        return
    if isinstance(use.purchased, Missing):
        yield use.purchased
        return
    parts = bought_for(binder, use.food)
    if isinstance(parts, Missing):
        yield parts
        return
    for food, grams in parts.items():
        if not binder.foods[food].free:
            yield BoughtUse(use.line, food, grams * use.purchased)


@remembered_of(recipe_parts, FORMS)
def bought_by_food(binder: Binder, recipe_id: str) -> Mapping[str, float] | tuple[Missing, ...]:
    """Grams as purchased of each bought food in one batch of a recipe; what is missing where an amount is."""
    uses = bought_uses(binder, recipe_id)
    missing = dict.fromkeys(use for use in uses if isinstance(use, Missing))
    grams: dict[str, float] = {}
    for use in uses:
        if isinstance(use, BoughtUse):
            grams[use.food] = grams.get(use.food, 0.0) + use.grams
    return tuple(missing) or grams
