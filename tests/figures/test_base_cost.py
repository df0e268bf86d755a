"""The base's cost laid on dishes and rest, adding up to the cent however it is split."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.figures.base import base_balance
from binder.figures.base_cost import BaseCost, base_cost, divided
from binder.figures.cost import cost_by_bought_food, dish_cost
from binder.figures.form_cost import bought_for
from binder.figures.missing import Missing
from binder.kitchen.binder import Binder
from binder.kitchen.conversion import Addition, Conversion, CostSplit, Outcome
from binder.kitchen.food import Food
from binder.kitchen.recipe import Line
from tests.kitchen_binder import small_binder


def split_binder(split: CostSplit, share: float | None = None) -> Binder:
    small = small_binder()
    return small_binder(
        replace(small.conversions["cook"], split=split), replace(small.outcomes["cook/liquid"], cost_share=share)
    )


def cost_of(binder: Binder) -> BaseCost:
    cost = base_cost(binder, "day")
    assert isinstance(cost, BaseCost)
    return cost


@pytest.mark.parametrize("split", list(CostSplit))
def test_dishes_and_rest_add_up_to_what_the_bag_cost(split: CostSplit) -> None:
    cost = cost_of(split_binder(split, 0.1))
    assert cost.total == 400  # one kilogram at $4.00
    assert sum(cost.dishes.values()) + sum(cost.left.values()) == 400


@given(st.sampled_from(list(CostSplit)), st.floats(0, 1), st.integers(400, 5000), st.integers(1, 9))
def test_they_add_up_in_every_mode_and_amount(split: CostSplit, share: float, grams: int, portions: int) -> None:
    binder = split_binder(split, round(share, 3))
    shoot = replace(binder.shoots["day"], base_amount=grams, base_unit="g")
    dish = replace(binder.dishes["dish-spread"], portions=portions)
    changed = small_binder(*binder.conversions.values(), *binder.outcomes.values(), shoot, dish)
    cost = cost_of(changed)
    assert sum(cost.dishes.values()) + sum(cost.left.values()) == cost.total
    balance = base_balance(changed, "day")
    assert balance is not None
    if (balance.left or 0) >= 0:
        assert cost.total == pytest.approx(grams * 0.4, abs=0.51)


def test_all_to_the_first_leaves_the_liquid_free() -> None:
    binder = split_binder(CostSplit.MAIN)
    parts = bought_for(binder, "liquid")
    assert not isinstance(parts, Missing)
    assert parts["beans"] == 0
    cooked = bought_for(binder, "cooked")
    assert not isinstance(cooked, Missing)
    assert cooked["beans"] == pytest.approx(1 / 2 / 1.05)


def test_shares_are_the_users_own() -> None:
    binder = split_binder(CostSplit.SHARES, 0.2)
    liquid, cooked = bought_for(binder, "liquid"), bought_for(binder, "cooked")
    assert not isinstance(liquid, Missing)
    assert not isinstance(cooked, Missing)
    assert liquid["beans"] * 0.8 == pytest.approx(0.2 / 2)
    assert cooked["beans"] * 1.05 == pytest.approx(0.8 / 2)


def test_shares_that_do_not_add_up_are_named() -> None:
    small = small_binder()
    binder = small_binder(
        replace(small.conversions["cook"], split=CostSplit.SHARES),
        replace(small.outcomes["cook/cooked"], cost_share=0.5),
        replace(small.outcomes["cook/liquid"], cost_share=0.2),
    )
    lacking = bought_for(binder, "cooked")
    assert isinstance(lacking, Missing)
    assert "70 %" in lacking.says


def test_a_dish_carries_in_the_shoot_what_its_portions_carry() -> None:
    # The spread's hero, swap-out and the bread's half batch each use the whole blending step: cost a build, by hand.
    binder = small_binder()
    spread = cost_by_bought_food(binder, "dish-spread")["beans"] * 4
    assert cost_of(binder).dishes["dish-spread"] == pytest.approx(2 * spread, abs=1)


def test_no_price_is_named() -> None:
    binder = small_binder(Food(id="peas", name="peas"), replace(small_binder().shoots["day"], base="peas"))
    assert isinstance(base_cost(binder, "day"), Missing)


@given(st.integers(0, 10**6) | st.integers(0, 10**25), st.lists(st.floats(0, 1e4), min_size=1, max_size=20))
def test_a_division_is_exact_and_never_off_by_more_than_one(total: int, parts: list[float]) -> None:
    split = divided(total, parts)
    if sum(parts) > 0:
        assert sum(split) == total
        for whole, part in zip(split, parts, strict=True):
            assert abs(whole - total * Fraction(part) / sum(map(Fraction, parts))) < 1


@pytest.mark.parametrize("split", list(CostSplit))
def test_they_add_up_where_a_form_is_added_to_another(split: CostSplit) -> None:
    binder = small_binder(
        replace(small_binder().conversions["cook"], split=split),
        Food(id="stew", name="bean stew", form_of="beans"),
        Conversion(id="stew", takes="cooked", name="Stew", split=split),
        Outcome(id="stew/1", conversion="stew", form="stew", ratio=1.2),
        Addition(id="stew/2", conversion="stew", food="liquid", ratio=0.5),
        Line(id="x", step="bread/2", position=5, food="stew", low=300, high=300, unit="g"),
    )
    cost = cost_of(binder)
    assert cost.total == 400
    assert sum(cost.dishes.values()) + sum(cost.left.values()) == 400


def test_a_form_marked_free_still_carries_its_part_of_the_base() -> None:
    free = replace(small_binder().foods["liquid"], free=True)
    for dish in ("dish-spread", "dish-bread"):
        marked, plain = (dish_cost(binder, dish).per_portion for binder in (small_binder(free), small_binder()))
        assert marked == pytest.approx(plain)
        assert sum(cost_by_bought_food(small_binder(free), dish).values()) == pytest.approx(marked)
