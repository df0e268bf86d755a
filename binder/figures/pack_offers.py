"""What may be bought and on what terms, in plain numbers: the question that the pack program answers."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True)
class Bundle:
    """So many packs for one price together: 3 for the price of 2, the second at half price. Minor currency units."""

    packs: int
    price: int


@dataclass(frozen=True)
class Offer:
    """A pack of a food at a store: grams and price of one in minor units, and a bundle where the store offers one.

    `by_weight`: the counter sells any weight, at `price` for `grams`, from `least` grams upward.
    """

    key: str
    food: str
    store: str
    grams: float
    price: int
    bundle: Bundle | None = None
    by_weight: bool = False
    least: float = 0.0

    def cost(self, count: int) -> int:
        """Minor units for so many packs, as the till reckons them: whole bundles first, the rest singly."""
        if self.bundle is None:
            return self.price * count
        bundles, singles = divmod(count, self.bundle.packs)
        return bundles * self.bundle.price + singles * self.price

    def cost_of(self, grams: int) -> int:
        """Minor units for so many whole grams at the counter, halves rounded up."""
        return math.floor(self.price * grams / self.grams + 0.5)


@dataclass(frozen=True)
class Need:
    """Grams of a food to cover; `waste` is minor units that each gram left over counts as thrown away."""

    food: str
    grams: float
    waste: float = 0.0


@dataclass(frozen=True)
class Terms:
    """What the producer asks: at most so many stores, and for each what a trip costs and what avoiding it is worth.

    Minor currency units.
    """

    most_stores: int | None = None
    trip_costs: Mapping[str, int] = field(default_factory=dict)
    avoided: Mapping[str, int] = field(default_factory=dict)


@dataclass(frozen=True)
class Bought:
    """So many packs of an offer (at the counter: one, of `grams`), and what they cost in minor units."""

    offer: Offer
    count: int
    grams: float
    cost: int


@dataclass(frozen=True)
class Purchase:
    """The cheapest purchase found, in minor currency units; `uncovered` are foods that nobody offers.

    `objective` is what it costs with trips, stores avoided and waste counted; no purchase has less than `bound`, and
    where they are one it is `proven`.
    """

    bought: tuple[Bought, ...]
    uncovered: tuple[str, ...]
    objective: float
    bound: float
    proven: bool

    @property
    def cost(self) -> int:
        """Minor units for the goods alone."""
        return sum(one.cost for one in self.bought)

    @property
    def stores(self) -> frozenset[str]:
        """Where something is bought."""
        return frozenset(one.offer.store for one in self.bought)


class NothingCoversError(Exception):
    """No purchase under these terms covers what is needed; `foods` are those that need stores the terms rule out."""

    def __init__(self, foods: tuple[str, ...]) -> None:
        self.foods = foods
        super().__init__(", ".join(foods))


Progress = Callable[[float, float], bool]
"""Told the best cost so far and the bound, in minor units; answers whether to go on."""
