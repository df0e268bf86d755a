"""Whole packs that cover the need, the cheapest there are."""

from __future__ import annotations

import itertools
import math
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.figures.price import PricedPack
from binder.figures.shopping import cheapest_packs, shopping_list
from binder.kitchen.food import Food
from binder.kitchen.price import Pack, Quote
from binder.kitchen.recipe import Line
from tests.kitchen_binder import small_binder


def priced(size: float, price: int, name: str = "p") -> PricedPack:
    pack = Pack(id=name, food="f", size=size, unit="g")
    return PricedPack(pack, Quote(id=name, pack=name, price=price, on=date(2026, 1, 1)), size)


@given(
    st.lists(st.tuples(st.integers(50, 2000), st.integers(1, 900)), min_size=1, max_size=4),
    st.integers(1, 5000),
)
def test_no_cheaper_set_of_packs_covers_the_need(offers: list[tuple[int, int]], grams: int) -> None:
    packs = [priced(size, price, f"p{n}") for n, (size, price) in enumerate(offers)]
    chosen = cheapest_packs(packs, grams)
    covered = sum(one.priced.grams * one.count for one in chosen)
    assert covered >= grams
    assert sum(one.price for one in chosen) == _brute_force(offers, grams)


def _brute_force(offers: list[tuple[int, int]], grams: int) -> int:
    """Dynamic programming over grams: another way to the same answer."""
    best = [0] + [10**12] * grams
    for need in range(1, grams + 1):
        best[need] = min(price + best[max(0, need - size)] for size, price in offers)
    return best[grams]


def test_ties_go_to_less_left_over_then_to_fewer_packs() -> None:
    chosen = cheapest_packs([priced(100, 10, "a"), priced(50, 5, "b"), priced(300, 10, "c")], 100)
    assert [(one.priced.pack.id, one.count) for one in chosen] == [("a", 1)]


@pytest.mark.parametrize(("need", "count"), [(35 * 453.59237, 35), (34.29 * 453.59237, 35), (30.74 * 453.59237, 31)])
def test_packs_to_buy_round_up(need: float, count: int) -> None:
    # H. "Applying yield percent", worked example 14: 34.29 lb of sweet potato as purchased are 35 lb at the store;
    # USDA Food Buying Guide method, example 44: 30.74 lb of corn are 31 whole pounds.
    (only,) = cheapest_packs([priced(453.59237, 100)], need)
    assert only.count == count


def test_the_shopping_list_sums_all_builds() -> None:
    bought = shopping_list(small_binder(), "day")
    items = {item.food: item for item in bought.items}
    # Flour: bread hero and swap-out, 2 cups of 125 g each.
    assert items["flour"].needed == pytest.approx(500)
    assert items["flour"].spend == 150
    assert items["flour"].left_over == pytest.approx(500)
    # Onion: two builds of 240 g edible at 90 %: 533 g, one pack of 2 lb.
    assert items["onion"].needed == pytest.approx(480 / 0.9)
    assert items["onion"].packs[0].count == 1
    assert "water" not in items
    assert "cooked" not in items
    assert items["beans"].needed == pytest.approx(1000)
    assert bought.spend == sum(item.spend or 0 for item in bought.items)


def test_what_conversions_need_is_bought_too() -> None:
    items = {item.food: item for item in shopping_list(small_binder(), "day").items}
    assert items["salt"].needed == pytest.approx(0.01 * 750 / 1.05)


def test_a_food_without_a_price_is_listed_and_the_spend_is_not_known() -> None:
    binder = small_binder(
        Food(id="sumac", name="sumac"), Line(id="x", step="spread/2", food="sumac", low=5, high=5, unit="g")
    )
    bought = shopping_list(binder, "day")
    item = next(item for item in bought.items if item.food == "sumac")
    assert item.spend is None
    assert item.left_over is None
    assert bought.spend is None
    assert bought.known_spend > 0
    assert any("sumac" in lack.says for lack in bought.missing)


def test_the_brute_force_of_this_test_is_right_on_a_case_done_by_hand() -> None:
    assert _brute_force([(3, 5), (4, 6)], 7) == 11
    assert math.isclose(min(5 * a + 6 * b for a, b in itertools.product(range(5), repeat=2) if 3 * a + 4 * b >= 7), 11)


def test_many_packs_of_awkward_sizes_stay_quick() -> None:
    packs = [priced(97 + 13 * n, 100 + 12 * n, f"p{n}") for n in range(10)]
    assert sum(one.priced.grams * one.count for one in cheapest_packs(packs, 50_000)) >= 50_000


def test_an_absurd_amount_is_a_big_bill_and_not_a_crash() -> None:
    (only,) = cheapest_packs([priced(100, 10)], 1e13)
    assert only.count == pytest.approx(10**11, rel=1e-5)
