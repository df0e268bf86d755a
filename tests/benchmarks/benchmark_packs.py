"""200 foods, 10 packs of each, 4 stores with trip costs: proven the cheapest in under 3 s by the clock, on 2 cores."""

from __future__ import annotations

import random
from typing import TYPE_CHECKING

import pytest

from binder.figures.pack_offers import Need, Offer, Terms
from binder.figures.pack_program import cheapest_purchase

if TYPE_CHECKING:
    from pytest_benchmark.fixture import BenchmarkFixture

SECONDS = 3.0
STORES = tuple(f"store {number}" for number in range(4))
TERMS = {
    "trips": Terms(trip_costs=dict(zip(STORES, (250, 400, 300, 600), strict=True))),
    "two stores": Terms(most_stores=2, trip_costs=dict.fromkeys(STORES, 300)),
    "one avoided": Terms(trip_costs=dict.fromkeys(STORES, 100), avoided={STORES[0]: 900}),
}


def question(seed: int) -> tuple[list[Need], list[Offer]]:
    """Packs of every food in every store, the larger ones cheaper a gram."""
    chance = random.Random(seed)
    needs, offers = [], []
    for number in range(200):
        food, rate = f"food {number}", chance.uniform(0.05, 2.0)
        needs.append(Need(food, chance.uniform(40, 3000), chance.choice([0.0, 0.0, rate / 2])))
        for pack in range(10):
            grams = float(chance.choice([100, 125, 200, 227, 250, 400, 454, 500, 750, 907, 1000, 2268]))
            price = max(1, round(rate * grams**0.93 * chance.uniform(0.8, 1.3)))
            offers.append(Offer(f"{number}/{pack}", food, STORES[pack % 4], grams, price))
    return needs, offers


@pytest.mark.benchmark(min_rounds=3)
@pytest.mark.parametrize("terms", TERMS)
@pytest.mark.parametrize("seed", [1, 2])
def test_packs_of_a_large_shoot(benchmark: BenchmarkFixture, seed: int, terms: str) -> None:
    needs, offers = question(seed)
    found = benchmark(cheapest_purchase, needs, offers, TERMS[terms])
    assert found.proven
    assert not found.uncovered
    assert benchmark.stats is None or benchmark.stats["mean"] < SECONDS
