"""The cheapest packs of one food that cover a need: found by trying counts with a bound, and so proven."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.pack_offers import Bought, Need, Offer

if TYPE_CHECKING:
    from collections.abc import Sequence

_SHORT = 1e-6
"""A millionth short of a need is a float's doing, not a cook's."""


@dataclass(frozen=True)
class Choice:
    """Packs that cover a need. `price` is minor units with waste counted; `left` grams beyond the need."""

    bought: tuple[Bought, ...]
    price: float
    left: float

    @property
    def packs(self) -> int:
        """How many packs are carried home."""
        return sum(one.count for one in self.bought)

    @property
    def stores(self) -> frozenset[str]:
        """Where they are bought."""
        return frozenset(one.offer.store for one in self.bought)

    @property
    def rank(self) -> tuple[float, float, int]:
        """What is better is less: price, then what is left over, then packs."""
        return (round(self.price, 6), round(self.left, 6), self.packs)


def cheapest_choice(need: Need, offers: Sequence[Offer]) -> Choice | None:
    """The best choice of packs among `offers` for `need`; None where there are no offers.

    The bound: what is still to cover costs at least its grams at the best price a gram of the offers still to be tried.
    """
    if not offers:
        return None
    search = _Search(need, sorted(offers, key=lambda offer: (_best_rate(offer), -offer.grams, offer.key)))
    search.go(0, need.grams, 0.0, ())
    return search.best


def _best_rate(offer: Offer) -> float:
    """Minor units a gram at the offer's best."""
    single = offer.price / offer.grams
    bundled = offer.bundle.price / (offer.bundle.packs * offer.grams) if offer.bundle else single
    return min(single, bundled)


class _Search:
    def __init__(self, need: Need, offers: Sequence[Offer]) -> None:
        self.need, self.offers = need, offers
        self.rates = [_best_rate(offer) for offer in offers]
        self.slack = _SHORT * max(1.0, need.grams)
        self.best: Choice | None = None

    def go(self, at: int, uncovered: float, price: float, taken: tuple[Bought, ...]) -> None:
        """Try every amount of the offer at `at` that may still lead to something better."""
        if uncovered <= self.slack:
            self._keep(Choice(taken, price + self.need.waste * max(0.0, -uncovered), max(0.0, -uncovered)))
        elif at < len(self.offers) and not self._hopeless(at, uncovered, price):
            for bought in self._amounts(self.offers[at], uncovered):
                more = (*taken, bought) if bought.count else taken
                self.go(at + 1, uncovered - bought.grams, price + bought.cost, more)

    def _keep(self, choice: Choice) -> None:
        if self.best is None or choice.rank < self.best.rank:
            self.best = choice

    def _hopeless(self, at: int, uncovered: float, price: float) -> bool:
        """Whether the rest cannot come out better: prices are whole minor units, so a part of one rounds up."""
        least = math.ceil((uncovered - self.slack) * self.rates[at] - 1e-6)
        return self.best is not None and price + least > self.best.price + 1e-9

    def _amounts(self, offer: Offer, uncovered: float) -> list[Bought]:
        """What may sensibly be taken of an offer, the most first.

        Up to what covers the rest, a last bundle completed.
        """
        if offer.by_weight:
            grams = max(math.ceil(uncovered - self.slack), math.ceil(offer.least))
            return [Bought(offer, 1, float(grams), offer.cost_of(grams)), Bought(offer, 0, 0.0, 0)]
        enough = math.ceil((uncovered - self.slack) / offer.grams)
        counts = list(range(enough, -1, -1))
        if offer.bundle:
            counts.insert(0, math.ceil(enough / offer.bundle.packs) * offer.bundle.packs)
        return [Bought(offer, count, count * offer.grams, offer.cost(count)) for count in dict.fromkeys(counts)]
