"""What builds need, each up to its step."""

from __future__ import annotations

from dataclasses import replace

import pytest

from binder.figures.base import BaseVerdict, base_balance
from binder.figures.card import station_card
from binder.figures.demand import shoot_demand
from binder.figures.mise import mise_list
from binder.figures.missing import MissingKind
from binder.kitchen.recipe import Line, Step
from binder.kitchen.shoot import Build, BuildKind
from tests.kitchen_binder import small_binder


def test_a_build_up_to_the_first_step_needs_that_step_alone() -> None:
    binder = small_binder(
        Build(id="spread-hero", dish="dish-spread", up_to="spread/1"),
        Build(id="spread-swap", dish="dish-spread", position=1, up_to="spread/1"),
    )
    needs = shoot_demand(binder, "day").by_dish["dish-spread"]
    assert needs == pytest.approx({"cooked": 600, "tahini": 120, "liquid": 160})


def test_a_builds_own_portions_come_before_the_dishs() -> None:
    binder = small_binder(Build(id="taste", dish="dish-spread", position=2, kind=BuildKind.TASTING, portions=0.5))
    assert shoot_demand(binder, "day").by_dish["dish-spread"]["tahini"] == pytest.approx(60 + 60 + 60 / 8)


def test_a_build_up_to_a_step_of_another_recipe_goes_to_the_end() -> None:
    small = small_binder()
    binder = small_binder(replace(small.builds["bread-swap"], up_to="spread/1"))
    whole = small_binder(replace(small.builds["bread-swap"], up_to=None))
    assert shoot_demand(binder, "day").grams == pytest.approx(dict(shoot_demand(whole, "day").grams))
    assert [build.stops_at for build in station_card(binder, "dish-bread").builds] == [None, None]


def test_what_is_not_known_of_one_food_leaves_the_base_known() -> None:
    binder = small_binder(replace(small_binder().lines["spread/1/2"], unit="bunch"))
    demand = shoot_demand(binder, "day")
    assert list(demand.missing_of) == ["tahini"]
    balance = base_balance(binder, "day")
    assert balance is not None
    assert (balance.verdict, balance.missing) == (BaseVerdict.ENOUGH, ())


def test_what_is_not_known_of_a_form_leaves_the_base_unknown() -> None:
    binder = small_binder(replace(small_binder().lines["spread/1/1"], unit="bunch"))
    balance = base_balance(binder, "day")
    assert balance is not None
    assert balance.verdict is BaseVerdict.UNKNOWN
    assert balance.missing[0].kind is MissingKind.CONVERSION


def test_a_recipe_without_portions_is_named_for_all_it_takes() -> None:
    binder = small_binder(replace(small_binder().recipes["bread"], portions=None))
    demand = shoot_demand(binder, "day")
    assert [lack.kind for lack in demand.missing] == [MissingKind.YIELD]
    assert set(demand.missing_of) >= {"flour", "onion", "cooked"}
    assert demand.by_dish["dish-bread"] == {}


def test_how_much_of_what_is_free_need_not_be_known() -> None:
    water = Line(id="x", step="spread/1", position=9, food="water", low=1, high=1, unit="bunch")
    assert shoot_demand(small_binder(water), "day").missing == ()


def test_ten_thousand_lines_still_add_up() -> None:
    steps = [Step(id=f"s{n}", recipe="spread", position=2 + n) for n in range(100)]
    lines = [
        Line(id=f"{step.id}/{n}", step=step.id, position=n, food="flour", low=1, high=1, unit="g")
        for step in steps
        for n in range(100)
    ]
    binder = small_binder(*steps, *lines)
    # Two dishes: the spread's hero, and half a batch of it in the bread's.
    assert shoot_demand(binder, "day").grams["flour"] == pytest.approx(10_000 * 1.5 + 500)
    assert len(mise_list(binder, "day")) > 20_000
