"""What a shoot needs: every build of every dish, each up to its step, summed."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.memory import remembered
from binder.figures.missing import Missing, MissingKind, Place
from binder.figures.recipe_use import Use, recipe_uses
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Build, Dish


@dataclass(frozen=True)
class BuildUse:
    """A use of a food by one build of a dish, in grams for that build."""

    dish: str
    build: str
    use: Use


@dataclass(frozen=True)
class ShootDemand:
    """Grams as purchased of each food (forms of the base among them) over all builds, in all and by dish, and what is missing."""

    grams: Mapping[str, float]
    by_dish: Mapping[str, Mapping[str, float]]
    missing: tuple[Missing, ...]


def last_position(binder: Binder, build: Build) -> int | None:
    """The position of the step a build goes up to; None where it goes to the end."""
    return None if build.up_to is None else binder.steps[build.up_to].position


def reaches(binder: Binder, build: Build, step_id: str) -> bool:
    """Whether a build gets as far as a step."""
    last = last_position(binder, build)
    return last is None or binder.steps[step_id].position <= last


def build_batches(binder: Binder, dish: Dish, build: Build) -> float | Missing:
    """How many batches of the recipe a build is."""
    recipe = binder.recipes[dish.recipe]
    if recipe.portions is None:
        says = _("{recipe} does not say how many portions it yields: add it.").format(recipe=recipe.name)
        return Missing(MissingKind.YIELD, says, Place("recipes", recipe.id))
    return (build.portions or dish.portions) / recipe.portions


def builds_of(binder: Binder, dish_id: str) -> tuple[Build, ...]:
    """The builds of a dish in order."""
    return binder.builds.where("dish", dish_id)


@remembered
def dish_build_uses(binder: Binder, dish_id: str) -> tuple[BuildUse, ...] | Missing:
    """What each build of a dish uses, only lines it reaches."""
    dish = binder.dishes[dish_id]
    gathered: list[BuildUse] = []
    for build in builds_of(binder, dish_id):
        batches = build_batches(binder, dish, build)
        if isinstance(batches, Missing):
            return batches
        gathered += [
            BuildUse(dish_id, build.id, use.times(batches))
            for use in recipe_uses(binder, dish.recipe)
            if reaches(binder, build, use.step)
        ]
    return tuple(gathered)


@remembered
def shoot_demand(binder: Binder, shoot_id: str) -> ShootDemand:
    """What all builds of a shoot need of each food, in grams as purchased."""
    by_dish: dict[str, dict[str, float]] = {}
    missing: dict[Missing, None] = {}
    for dish in binder.dishes.where("shoot", shoot_id):
        needs = by_dish.setdefault(dish.id, {})
        for found in _needs(binder, dish.id):
            if isinstance(found, Missing):
                missing[found] = None
            else:
                needs[found[0]] = needs.get(found[0], 0.0) + found[1]
    totals: dict[str, float] = {}
    for needs in by_dish.values():
        for food, grams in needs.items():
            totals[food] = totals.get(food, 0.0) + grams
    return ShootDemand(totals, by_dish, tuple(missing))


def _needs(binder: Binder, dish_id: str) -> Iterator[tuple[str, float] | Missing]:
    uses = dish_build_uses(binder, dish_id)
    if isinstance(uses, Missing):
        yield uses
        return
    for build_use in uses:
        if build_use.use.counted:
            grams = build_use.use.purchased
            yield grams if isinstance(grams, Missing) else (build_use.use.food, grams)
