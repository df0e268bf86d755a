"""Purchases that cost the same: the one with the least left over, then with the fewest packs.

Once it is settled where one shops, each food is by itself, so that the best of each is the best of all. Where the
stores are few, every set of them is looked at.
"""

from __future__ import annotations

import itertools
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.kitchen.turns import in_turns

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

    from binder.figures.pack_choice import Choice

_MOST_SETS = 2000


@dataclass(frozen=True)
class StoreSets:
    """Which stores one may go to together: `stores` ask for a trip, all others never do; `most` of them at once."""

    stores: frozenset[str]
    most: int | None = None

    def each(self) -> Iterator[frozenset[str]]:
        """Every set of stores; none at all where they are more than can be looked at."""
        most = len(self.stores) if self.most is None else min(self.most, len(self.stores))
        sets = itertools.chain.from_iterable(
            itertools.combinations(sorted(self.stores), count) for count in range(most + 1)
        )
        some = list(itertools.islice(sets, _MOST_SETS + 1))
        return iter(()) if len(some) > _MOST_SETS else map(frozenset, some)


def best_in_each(
    choices: Sequence[Sequence[Choice]], sets: StoreSets, cost: Callable[[Sequence[Choice]], int]
) -> list[Choice] | None:
    """The best purchase over every set of stores; None where they are too many, or sell too little.

    `cost` is what choices come to with their trips, in parts of a minor unit.
    """
    ordered = [sorted(group, key=lambda choice: choice.rank) for group in choices]
    purchases = (best_within(ordered, sets.stores - allowed) for allowed in in_turns(sets.each()))
    return min((one for one in purchases if one is not None), key=lambda one: worth(one, cost), default=None)


def best_within(ordered: Sequence[Sequence[Choice]], barred: frozenset[str]) -> list[Choice] | None:
    """The first choice of each food that asks for no barred store; None where a food has none such."""
    found = []
    for group in ordered:
        first = next((choice for choice in group if not choice.stores & barred), None)
        if first is None:
            return None
        found.append(first)
    return found


def worth(purchase: Sequence[Choice], cost: Callable[[Sequence[Choice]], int]) -> tuple[int, float, int]:
    """What is better is less: cost, then grams left over, then packs."""
    left = round(sum(choice.left for choice in purchase), 6)
    return cost(purchase), left, sum(choice.packs for choice in purchase)
