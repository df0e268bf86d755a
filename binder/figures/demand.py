"""What a shoot needs: every build of every dish, each up to its step, summed."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.form_cost import is_free
from binder.figures.memory import FORMS, PLANS, WEIGHTS, remembered_from, remembered_of
from binder.figures.missing import Missing, MissingKind, Place
from binder.figures.recipe_use import LARGEST_WEIGHT, Use, recipe_parts, recipe_uses, too_much
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from binder.kitchen.binder import Binder
    from binder.kitchen.recipe import Step
    from binder.kitchen.shoot import Build, Dish


@dataclass(frozen=True)
class ShootDemand:
    """Grams as purchased of each food (forms of the base among them) over all builds, in all and by dish.

    `missing` is what is not known of it, and `missing_of` the same by the food of which it is not known how much.
    """

    grams: Mapping[str, float]
    by_dish: Mapping[str, Mapping[str, float]]
    missing: tuple[Missing, ...]
    missing_of: Mapping[str, tuple[Missing, ...]]


def last_position(binder: Binder, build: Build) -> int | None:
    """The position of the step a build goes up to; None where it goes to the end.

    A step of another recipe than the dish's is none of its steps: such a build goes to the end.
    """
    step = None if build.up_to is None else binder.steps[build.up_to]
    return None if step is None or step.recipe != binder.dishes[build.dish].recipe else step.position


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


def dish_parts(binder: Binder, dish_id: str) -> tuple[object, ...]:
    """The records of a dish: itself, its builds, and those of its recipe."""
    dish = binder.dishes[dish_id]
    return (dish, *builds_of(binder, dish_id), *recipe_parts(binder, dish.recipe))


@dataclass(frozen=True)
class Batches:
    """A build, how many batches of the recipe it is, and the position of its last step (infinity: to the end)."""

    build: Build
    count: float
    last: float

    def reach(self, step: Step) -> bool:
        """Whether the build gets as far as a step."""
        return step.position <= self.last


@remembered_of(dish_parts, WEIGHTS)
def dish_batches(binder: Binder, dish_id: str) -> tuple[Batches, ...] | Missing:
    """The builds of a dish, each as batches of its recipe up to its step."""
    dish = binder.dishes[dish_id]
    gathered = []
    for build in builds_of(binder, dish_id):
        count = build_batches(binder, dish, build)
        if isinstance(count, Missing):
            return count
        last = last_position(binder, build)
        gathered.append(Batches(build, count, math.inf if last is None else last))
    return tuple(gathered)


@remembered_of(dish_parts, WEIGHTS)
def step_batches(binder: Binder, dish_id: str) -> Mapping[str, float] | Missing:
    """For each step of a dish's recipe, how many batches of it all builds make together."""
    batches = dish_batches(binder, dish_id)
    if isinstance(batches, Missing):
        return batches
    steps = binder.steps.where("recipe", binder.dishes[dish_id].recipe)
    return {step.id: sum(one.count for one in batches if one.reach(step)) for step in steps}


@remembered_from(PLANS)
def shoot_demand(binder: Binder, shoot_id: str) -> ShootDemand:
    """What all builds of a shoot need of each food, in grams as purchased."""
    by_dish: dict[str, Mapping[str, float]] = {}
    missing_of: dict[str, dict[Missing, None]] = {}
    totals: dict[str, float] = {}
    for dish in binder.dishes.where("shoot", shoot_id):
        needs, lacking = _dish_demand(binder, dish.id)
        by_dish[dish.id] = needs
        for food, grams in needs.items():
            totals[food] = totals.get(food, 0.0) + grams
        for food, lack in lacking:
            missing_of.setdefault(food, {})[lack] = None
    missing = dict.fromkeys(lack for lacks in missing_of.values() for lack in lacks)
    return ShootDemand(totals, by_dish, tuple(missing), {food: tuple(lacks) for food, lacks in missing_of.items()})


@remembered_of(dish_parts, FORMS)
def _dish_demand(binder: Binder, dish_id: str) -> tuple[Mapping[str, float], tuple[tuple[str, Missing], ...]]:
    """Grams as purchased of each food that the builds of a dish take, and what is missing, each with its food."""
    needs: dict[str, float] = {}
    lacking: list[tuple[str, Missing]] = []
    for food, grams in _needs(binder, dish_id):
        if isinstance(grams, Missing):
            lacking.append((food, grams))
        else:
            needs[food] = needs.get(food, 0.0) + grams
    return needs, tuple(lacking)


def _needs(binder: Binder, dish_id: str) -> Iterator[tuple[str, float | Missing]]:
    """Each food that builds of a dish take, and how much; how much of what is free need not be known."""
    batches = step_batches(binder, dish_id)
    for use in recipe_uses(binder, binder.dishes[dish_id].recipe):
        count = batches if isinstance(batches, Missing) else batches[use.step]
        if use.counted and (isinstance(count, Missing) or count > 0):
            grams = _taken(binder, dish_id, use, count)
            if not (isinstance(grams, Missing) and is_free(binder, use.food)):
                yield use.food, grams


def _taken(binder: Binder, dish_id: str, use: Use, count: float | Missing) -> float | Missing:
    """Grams as purchased of a use in so many batches."""
    if isinstance(count, Missing) or isinstance(use.purchased, Missing):
        return count if isinstance(count, Missing) else use.purchased
    grams = use.purchased * count
    return grams if grams <= LARGEST_WEIGHT else too_much(binder, use.food, Place("dishes", dish_id))


@remembered_of(dish_parts, FORMS)
def build_needs(binder: Binder, dish_id: str) -> Mapping[str, Mapping[str, float]]:
    """For each build of a dish, grams as purchased of each food it takes; what is not known is left out."""
    batches = dish_batches(binder, dish_id)
    if isinstance(batches, Missing):
        return {}
    return {one.build.id: recipe_needs(binder, binder.dishes[dish_id].recipe, one) for one in batches}


def recipe_needs(binder: Binder, recipe_id: str, batches: Batches, *, first: float = 0) -> dict[str, float]:
    """Grams as purchased of each food that batches of a recipe take, from the step at position `first` on.

    What is not known is left out: see `missing_needs`.
    """
    needs: dict[str, float] = {}
    for use in _uses_reached(binder, recipe_id, batches, first):
        if not isinstance(use.purchased, Missing):
            needs[use.food] = needs.get(use.food, 0.0) + use.purchased * batches.count
    return needs


def missing_needs(binder: Binder, recipe_id: str, batches: Batches, *, first: float = 0) -> tuple[Missing, ...]:
    """What is not known of `recipe_needs`; how much of what is free need not be."""
    lacks = (
        use.purchased
        for use in _uses_reached(binder, recipe_id, batches, first)
        if isinstance(use.purchased, Missing) and not is_free(binder, use.food)
    )
    return tuple(dict.fromkeys(lacks))


def _uses_reached(binder: Binder, recipe_id: str, batches: Batches, first: float) -> Iterator[Use]:
    """The counted uses of the steps from the position `first` to the last that batches reach."""
    for use in recipe_uses(binder, recipe_id):
        step = binder.steps[use.step]
        if use.counted and first <= step.position and batches.reach(step):
            yield use
