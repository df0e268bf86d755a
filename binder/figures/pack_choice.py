"""The cheapest packs of one food that cover a need: found by trying counts with a bound, and so proven."""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from binder.figures.pack_offers import Bought, Need, Offer

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

_SHORT = 1e-6
"""A millionth short of a need is a float's doing, not a cook's."""

_HALF = 0.5
"""Minor units that a price by weight may be rounded down by."""

_MOST_TRIED = 20_000
"""Counts tried for one need. Only needs of thousands of packs ask for more, and then the best so far is taken."""


@dataclass(frozen=True)
class Choice:
    """Packs that cover a need. `price` is minor units with waste counted; `left` grams beyond the need.

    No choice of these offers costs less than `bound`: the price itself, where everything worth trying was tried.
    """

    bought: tuple[Bought, ...]
    price: float
    left: float
    bound: float = 0.0

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
    tried = sorted(
        _worth_trying(offers), key=lambda offer: (offer.by_weight, _best_rate(offer), -offer.grams, offer.key)
    )
    search = _Search(need, tried)
    if need.grams <= search.slack:
        return Choice((), 0.0, 0.0)
    search.try_counters()
    search.go(0, need.grams, 0.0, ())
    return search.found()


def _worth_trying(offers: Sequence[Offer]) -> Iterator[Offer]:
    """All but packs that another of the same size beats or equals: as many of that one always do as well."""
    best: dict[float, Offer] = {}
    for offer in offers:
        if offer.bundle or offer.by_weight:
            yield offer
        elif offer.grams not in best or (offer.price, offer.key) < (best[offer.grams].price, best[offer.grams].key):
            best[offer.grams] = offer
    yield from best.values()


def _best_rate(offer: Offer) -> float:
    """Minor units a gram at the offer's best."""
    single = offer.price / offer.grams
    bundled = offer.bundle.price / (offer.bundle.packs * offer.grams) if offer.bundle else single
    return min(single, bundled)


class _Search:
    """Depth first over the offers, the best price a gram first and of each the most first.

    The counters come last: they sell just what the packs taken before leave open, and round half a minor unit away.
    """

    def __init__(self, need: Need, offers: Sequence[Offer]) -> None:
        self.need, self.offers = need, offers
        self.rates = list(itertools.accumulate((_best_rate(offer) for offer in reversed(offers)), min))[::-1]
        self.rounding = _HALF if any(offer.by_weight for offer in offers) else 0.0
        sizes = [math.inf if offer.by_weight else offer.grams for offer in offers]
        self.largest = [max(sizes[at:]) for at in range(len(sizes))]
        self.slack = _SHORT * max(1.0, need.grams)
        self.tries = _MOST_TRIED
        self.best: Choice | None = None

    def found(self) -> Choice | None:
        """The best choice, with its bound."""
        if self.best is None:
            return None
        least = self.best.price if self.tries > 0 else min(self.best.price, self._least_for(0, self.need.grams))
        return replace(self.best, bound=least)

    def try_counters(self) -> None:
        """All of it from one counter: a price that packs, tried first, must come up to."""
        for offer in self.offers:
            if offer.by_weight:
                bought = next(self._amounts(offer, self.need.grams))
                self._keep((bought,), self.need.grams - bought.grams, bought.cost)

    def go(self, at: int, uncovered: float, price: float, taken: tuple[Bought, ...]) -> None:
        """Try every amount of the offer at `at` that may still lead to something better."""
        for bought in self._amounts(self.offers[at], uncovered):
            self.tries -= 1
            if self.tries <= 0 and self.best is not None:
                return
            left, cost = uncovered - bought.grams, price + bought.cost
            more = (*taken, bought) if bought.count else taken
            if left <= self.slack:
                self._keep(more, left, cost)
            elif at + 1 == len(self.offers) or self._fewer_are_hopeless(at, left, cost):
                return
            elif not self._hopeless(at + 1, left, cost, more):
                self.go(at + 1, left, cost, more)

    def _keep(self, taken: tuple[Bought, ...], uncovered: float, price: float) -> None:
        over = max(0.0, -uncovered)
        choice = Choice(taken, price + self.need.waste * over, over)
        if self.best is None or choice.rank < self.best.rank:
            self.best = choice

    def _least_for(self, at: int, uncovered: float) -> int:
        """Minor units that the rest costs at least: prices are whole ones, so a part of one rounds up.

        But for a counter's, which rounds to the nearest.
        """
        return math.ceil((uncovered - self.slack) * self.rates[at] - self.rounding - 1e-6)

    def _hopeless(self, at: int, uncovered: float, price: float, taken: tuple[Bought, ...]) -> bool:
        """Whether the rest, of the offers from `at` on, cannot come out better."""
        if self.best is None:
            return False
        least = price + self._least_for(at, uncovered)
        if self.best.left > 0 or least < self.best.price - 1e-9:
            return least > self.best.price + 1e-9
        packs = sum(one.count for one in taken) + math.ceil((uncovered - self.slack) / self.largest[at])
        return least > self.best.price + 1e-9 or packs >= self.best.packs

    def _fewer_are_hopeless(self, at: int, uncovered: float, price: float) -> bool:
        """Whether taking still fewer packs of the offer at `at` cannot come out better: the others cost more a gram."""
        offer, rate = self.offers[at], self.rates[at + 1]
        if self.best is None or offer.bundle or offer.by_weight or rate * offer.grams < offer.price:
            return False
        least = price + (uncovered - self.slack) * rate - self.rounding
        return least > self.best.price + 1e-9 * max(1.0, self.best.price)

    def _amounts(self, offer: Offer, uncovered: float) -> Iterator[Bought]:
        """What may sensibly be taken of an offer, the most first: what covers the rest (a bundle filled), or less."""
        if offer.by_weight:
            grams = max(math.ceil(uncovered - self.slack / 2), math.ceil(offer.least))
            yield from (Bought(offer, 1, float(grams), offer.cost_of(grams)), Bought(offer, 0, 0.0, 0))
            return
        enough = math.ceil((uncovered - self.slack / 2) / offer.grams)
        whole = math.ceil(enough / offer.bundle.packs) * offer.bundle.packs if offer.bundle else enough
        for count in itertools.chain([whole] if whole > enough else [], range(enough, -1, -1)):
            yield Bought(offer, count, count * offer.grams, offer.cost(count))
