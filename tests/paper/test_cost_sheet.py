"""The costs sheet names what a portion is counted as, and what it writes out adds up to it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from binder.figures.cap_basis import basis_text, portion_by_food
from binder.figures.cost import break_even_prices, shoot_costs
from binder.figures.date_text import date_text
from binder.kitchen.binder import Binder
from binder.kitchen.shoot import CapBasis
from binder.paper.dish_costs import line_money
from binder.paper.print_set import SheetKind
from tests.paper.example import SHOOT, full_binder
from tests.paper.said import words_of


def on(basis: CapBasis) -> Binder:
    """The usual binder on a basis, its dishes all of known cost."""
    binder = full_binder()
    shoot = replace(binder.shoots[SHOOT], cap_basis=basis)
    return binder.with_tables({"shoots": binder.shoots.with_changes([(SHOOT, shoot)])})


@pytest.mark.parametrize("basis", list(CapBasis))
def test_the_basis_stands_with_the_cost_of_every_dish(basis: CapBasis) -> None:
    binder = on(basis)
    words = words_of(binder, SheetKind.COSTS)
    known = [cost for cost in shoot_costs(binder, SHOOT) if cost.per_portion is not None]
    assert known
    assert words.count(f"a portion, {basis_text(basis)}") == len(known)
    assert ("Used cost a portion: the share of each pack" in words) == (basis is CapBasis.USED)


@pytest.mark.parametrize("basis", [CapBasis.STAPLES_FREE, CapBasis.WHOLE_PACKS])
def test_on_another_basis_than_used_cost_the_foods_are_written_out_that_make_the_figure(basis: CapBasis) -> None:
    binder = on(basis)
    words = words_of(binder, SheetKind.COSTS)
    for cost in shoot_costs(binder, SHOOT):
        if cost.per_portion is not None:
            foods = portion_by_food(binder, binder.dishes[cost.dish])
            assert not isinstance(foods, tuple)
            assert sum(foods.values()) == pytest.approx(cost.per_portion)
            for food, minor in foods.items():
                if minor:
                    assert f"{binder.foods[food].name} {line_money(binder, minor)}" in words


def test_every_price_says_of_which_day_it_is() -> None:
    binder = on(CapBasis.USED)
    words = words_of(binder, SheetKind.COSTS)
    prices = [price for cost in shoot_costs(binder, SHOOT) for price in break_even_prices(binder, cost.dish)]
    near = [price for price in prices if price.price_at_cap is None or price.price_at_cap <= 10 * price.price_now]
    assert near
    assert all(date_text(binder, price.on) in words for price in near)
