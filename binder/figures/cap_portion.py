"""A portion of a dish as its foods make up its cost, and what it would come to with one thing different."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from binder.figures.bought_uses import BoughtUse, bought_by_food, bought_uses
from binder.figures.cap_basis import on_basis
from binder.figures.cost import dish_cost
from binder.figures.whole_packs import packs_price
from binder.kitchen.shoot import CapBasis
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from binder.figures.price import PricedPack
    from binder.kitchen.binder import Binder
    from binder.kitchen.recipe import Line

_EQUAL = 1e-9


class Portion:
    """A portion of a dish as its bought foods make up its cost: minor units, on the shoot's basis."""

    def __init__(self, binder: Binder, dish_id: str) -> None:
        self.binder, self.dish = binder, binder.dishes[dish_id]
        self.recipe = binder.recipes[self.dish.recipe]
        self.portions = self.recipe.portions or 1.0
        found = dish_cost(binder, dish_id)
        self.total, self.cap = found.per_portion or 0.0, found.cap or 0
        batch = bought_by_food(binder, self.recipe.id)
        self.batch: Mapping[str, float] = {} if isinstance(batch, tuple) else batch
        costs = on_basis(binder, self.dish, self.batch, self.portions)
        self.costs: Mapping[str, float] = {} if isinstance(costs, tuple) else costs

    def with_grams(self, grams: Mapping[str, float]) -> float:
        """What a portion comes to with other grams of some foods in a batch; infinite where one has no price."""
        costs = on_basis(self.binder, self.dish, grams, self.portions)
        if isinstance(costs, tuple):
            return math.inf
        return self.total + sum(costs.get(food, 0.0) - self.costs.get(food, 0.0) for food in grams)

    def with_pack(self, priced: PricedPack) -> float:
        """What a portion comes to where a food is bought as one pack alone."""
        food = priced.pack.food
        grams = self.batch[food] * self.dish.portions / self.portions
        if self.binder.shoots[self.dish.shoot].cap_basis is CapBasis.WHOLE_PACKS:
            cost = packs_price([priced], grams) / self.dish.portions
        else:
            cost = priced.per_gram * grams / self.dish.portions
        return self.total - self.costs[food] + cost

    def in_portions(self, portions: float) -> float:
        """What a portion comes to where a batch is divided into so many."""
        costs = on_basis(self.binder, self.dish, self.batch, portions)
        return math.inf if isinstance(costs, tuple) else sum(costs.values())

    def fits(self, cost: float) -> bool:
        """Whether a cost is within the cap."""
        return cost <= self.cap * (1 + _EQUAL)

    def of_line(self, line: str) -> dict[str, float]:
        """Grams of each bought food that a line takes for a batch."""
        grams: dict[str, float] = {}
        for use in bought_uses(self.binder, self.recipe.id):
            if isinstance(use, BoughtUse) and use.line == line:
                grams[use.food] = grams.get(use.food, 0.0) + use.grams
        return grams

    def lines(self) -> Iterator[Line]:
        """The lines of the recipe that have an amount."""
        for step in self.binder.steps.where("recipe", self.recipe.id):
            yield from (line for line in self.binder.lines.where("step", step.id) if line.high)

    def in_step(self, line: Line, says: str) -> str:
        """A sentence about a line, with its step where another line of the recipe is of the same food."""
        alike = [other for other in self.lines() if (other.food, other.made) == (line.food, line.made)]
        if len(alike) == 1:
            return says
        return _("{change} in step {number}").format(change=says, number=self.binder.steps[line.step].position + 1)
