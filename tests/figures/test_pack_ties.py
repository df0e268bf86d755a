"""Ties between purchases: against going through every purchase there is."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from hypothesis import given
from hypothesis import strategies as st

from binder.figures.pack_choice import Choice
from binder.figures.pack_offers import Bought, Offer
from binder.figures.pack_ties import StoreSets, best_in_each, best_within, worth

STORES = ("A", "B", "C")


def choice(stores: frozenset[str], price: int, left: int, packs: int) -> Choice:
    offers = [Offer(f"{store}/{price}", "food", store, 100.0, price) for store in sorted(stores)]
    bought = [Bought(offer, packs, packs * offer.grams, price) for offer in offers]
    return Choice(tuple(bought), float(price), float(left))


choices = st.builds(
    choice,
    st.frozensets(st.sampled_from(STORES), min_size=1, max_size=2),
    st.integers(1, 4),
    st.integers(0, 2),
    st.integers(1, 2),
)
foods = st.lists(st.lists(choices, min_size=1, max_size=4), min_size=1, max_size=3)
trips = st.fixed_dictionaries({store: st.integers(0, 2) for store in STORES})


@given(foods, trips, st.sampled_from([None, 1, 2, 3]))
def test_none_costs_less_or_as_much_with_less_left_over_or_fewer_packs(
    groups: list[list[Choice]], asked: dict[str, int], most: int | None
) -> None:
    def stores(purchase: Sequence[Choice]) -> frozenset[str]:
        return frozenset().union(*(one.stores for one in purchase))

    def cost(purchase: Sequence[Choice]) -> int:
        return round(sum(one.price for one in purchase)) + sum(asked[store] for store in stores(purchase))

    every = [list(one) for one in itertools.product(*groups)]
    allowed = [one for one in every if most is None or len(stores(one)) <= most]
    best = best_in_each(groups, StoreSets(frozenset(STORES), most), cost)
    least = min((worth(one, cost) for one in allowed), default=None)
    assert (None if best is None else worth(best, cost)) == least


def test_a_food_that_only_a_barred_store_has_leaves_no_purchase() -> None:
    group = [choice(frozenset("A"), 3, 0, 1), choice(frozenset("AB"), 2, 0, 1)]
    assert best_within([group], frozenset("B")) == [group[0]]
    assert best_within([group], frozenset("A")) is None


def test_more_stores_than_can_be_looked_at_are_left_to_the_solver() -> None:
    many = StoreSets(frozenset(f"store {number}" for number in range(40)))
    assert list(many.each()) == []
    assert sum(1 for _set in StoreSets(many.stores, 2).each()) == 1 + 40 + 40 * 39 // 2
