"""The basis on which a portion is held against its cap."""

from __future__ import annotations

from dataclasses import replace

import pytest

from binder.figures.cap_basis import basis_text
from binder.figures.cost import Verdict, break_even_prices, cost_by_bought_food, dish_cost
from binder.kitchen.binder import Binder
from binder.kitchen.record import Record
from binder.kitchen.shoot import CapBasis
from tests.kitchen_binder import small_binder


def on(basis: CapBasis, *others: Record) -> Binder:
    return small_binder(replace(small_binder().shoots["day"], cap_basis=basis), *others)


def test_used_cost_is_the_usual_basis() -> None:
    cost = dish_cost(small_binder(), "dish-spread")
    assert cost.basis is CapBasis.USED
    assert cost.per_portion == cost.used


def test_staples_free_leaves_out_what_any_kitchen_has() -> None:
    binder = on(CapBasis.STAPLES_FREE)
    by_food = cost_by_bought_food(binder, "dish-spread")
    cost = dish_cost(binder, "dish-spread")
    assert cost.per_portion == pytest.approx(by_food["beans"] + by_food["tahini"])
    assert cost.used == pytest.approx(sum(by_food.values()))
    assert {even.food for even in break_even_prices(binder, "dish-spread")} == {"beans", "tahini"}


def test_whole_packs_is_what_a_viewer_must_carry_home_to_cook_it_once() -> None:
    # One spread for four: a bag of beans 400, a jar of tahini 600, oil 900, salt 100: 2000 over 4 portions.
    cost = dish_cost(on(CapBasis.WHOLE_PACKS), "dish-spread")
    assert cost.per_portion == pytest.approx(2000 / 4)
    assert cost.verdict is Verdict.OVER
    assert break_even_prices(on(CapBasis.WHOLE_PACKS), "dish-spread") == ()


def test_a_staple_without_a_price_matters_only_where_staples_count() -> None:
    small = small_binder()
    gone = [replace(small.packs["pack-oil"], on_sale=False)]
    assert dish_cost(on(CapBasis.STAPLES_FREE, *gone), "dish-spread").verdict is Verdict.WITHIN
    assert dish_cost(on(CapBasis.USED, *gone), "dish-spread").verdict is Verdict.UNKNOWN
    unknown = dish_cost(on(CapBasis.WHOLE_PACKS, *gone), "dish-spread")
    assert unknown.verdict is Verdict.UNKNOWN
    assert any("olive oil" in lack.says for lack in unknown.missing)


def test_a_price_that_lacks_is_named_on_every_basis() -> None:
    small = small_binder()
    gone = replace(small.packs["pack-tahini"], on_sale=False)
    for basis in CapBasis:
        cost = dish_cost(on(basis, gone), "dish-spread")
        assert cost.per_portion is None
        assert any("tahini" in lack.says for lack in cost.missing)


def test_a_bundle_counts_at_the_till_not_in_the_used_cost() -> None:
    small = small_binder()
    quote = replace(small.quotes["quote-tahini"], bundle_packs=2, bundle_price=900)
    assert dish_cost(on(CapBasis.USED, quote), "dish-spread").used == dish_cost(small, "dish-spread").used


def test_each_basis_has_a_name_of_its_own() -> None:
    assert len({basis_text(basis) for basis in CapBasis}) == len(CapBasis)
