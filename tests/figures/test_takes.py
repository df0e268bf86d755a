"""One more take, from what is left and nothing promised suffering."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.figures.base import BaseVerdict, base_balance
from binder.figures.shopping import shopping_list
from binder.figures.takes import bought_grams, stages, takes, why_no_more
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.edits.shoots import add_build
from binder.kitchen.food import Food
from binder.kitchen.price import Pack
from binder.kitchen.recipe import Line
from binder.kitchen.shoot import BuildKind
from tests.kitchen_binder import small_binder


def test_as_many_as_the_scarcest_food_allows() -> None:
    # Spread: tahini 60 g a build; 300 g bought, 60 + 60 + 30 = 150 g promised, so 150 g are left for two more.
    # Beans: 1000 g; 357 g needed; a build takes 300 / 1.05 / 2 = 142.9 g, so four more.
    found = takes(small_binder(), "dish-spread")
    assert (found.possible, found.limited_by) == (2, "tahini")


def test_from_a_later_step_only_what_is_still_to_go_in_counts() -> None:
    found = takes(small_binder(), "dish-spread", "spread/2")
    # Oil: 500 ml of density 0.9 are 450 g, 3 builds' worth of 26.6 g promised.
    assert found.limited_by == "oil"
    assert found.possible == int((450 - 1.5 * 2 * 14.78676478125 * 0.9) / (2 * 14.78676478125 * 0.9))


def test_stages_never_allow_more_the_further_they_go() -> None:
    counts = [found.possible or 0 for found in stages(small_binder(), "dish-bread")]
    assert counts == sorted(counts, reverse=True)


def test_the_base_can_be_what_stops_the_next_one() -> None:
    shoot = replace(small_binder().shoots["day"], base_amount=400, base_unit="g")
    found = takes(small_binder(shoot), "dish-spread")
    assert (found.possible, found.limited_by) == (0, "cooked")
    assert "not enough cooked beans" in why_no_more(small_binder(shoot), "dish-spread")


def test_of_what_gives_out_at_once_the_base_is_named_for_the_rest_can_be_fetched() -> None:
    small = small_binder()
    (jar,) = small.packs.where("food", "tahini")
    short, exact = replace(small.shoots["day"], base_amount=400, base_unit="g"), replace(jar, size=150)
    assert takes(small_binder(exact), "dish-spread").limited_by == "tahini"
    found = takes(small_binder(short, exact), "dish-spread")
    assert (found.possible, found.limited_by) == (0, "cooked")


def test_the_till_says_what_the_next_one_would_cost() -> None:
    found = takes(small_binder(), "dish-spread")
    assert found.next_costs == 600  # a third spread needs one more jar of tahini, and nothing else
    assert why_no_more(small_binder(), "dish-spread") == ""


def test_what_is_not_known_is_not_promised() -> None:
    binder = small_binder(
        Food(id="sumac", name="sumac"), Line(id="x", step="spread/2", food="sumac", low=1, high=1, unit="bunch")
    )
    found = takes(binder, "dish-spread")
    assert found.possible is None
    assert any("sumac" in lack.says for lack in found.missing)


@given(st.sampled_from(["dish-spread", "dish-bread"]), st.integers(400, 2000))
def test_so_many_more_can_really_be_made_from_what_is_bought_and_one_more_cannot(dish: str, grams: int) -> None:
    before = small_binder(replace(small_binder().shoots["day"], base_amount=grams, base_unit="g"))
    found = takes(before, dish)
    assert found.possible is not None
    enough = _with_more(before, dish, found.possible)
    assert _covered(before, enough)
    assert not _covered(before, _with_more(before, dish, found.possible + 1))


def _with_more(binder: Binder, dish: str, count: int) -> Binder:
    for _number in range(count):
        binder = apply(binder, add_build(binder, binder.dishes[dish], BuildKind.SPARE)[0])
    return binder


def _covered(before: Binder, after: Binder) -> bool:
    """Whether what was bought before is enough for the builds after."""
    balance = base_balance(after, "day")
    assert balance is not None
    bought = bought_grams(before, "day")
    enough = all(
        item.needed <= bought[item.food] * (1 + 1e-9)
        for item in shopping_list(after, "day").items
        if item.food != "salt"
    )
    return enough and balance.verdict is BaseVerdict.ENOUGH


def test_free_foods_never_stop_a_take() -> None:
    binder = small_binder(Line(id="x", step="spread/2", food="water", low=1, high=1, unit="l"))
    assert takes(binder, "dish-spread").possible == pytest.approx(2)


def test_what_conversions_add_can_stop_a_take_too() -> None:
    # Salt: a pack of 10 g; cooking adds 0.01 g a gram of soaked beans, 750 g of cooked take 714.3, so 7.14 g are
    # promised and 2.86 g left. One more spread takes 300 / 1.05 = 285.7 g of soaked and 2.857 g of salt: one, just.
    binder = small_binder(Pack(id="pack-salt", food="salt", size=10, unit="g"))
    found = takes(binder, "dish-spread")
    assert (found.possible, found.limited_by) == (1, "salt")
    assert found.next_costs == 100  # the second takes a pack of salt; the tahini is for two


def test_a_recipe_without_portions_says_why_nothing_is_known() -> None:
    recipe = replace(small_binder().recipes["spread"], portions=None)
    found = takes(small_binder(recipe), "dish-spread")
    assert found.possible is None
    assert "portions" in found.missing[0].says


def test_what_is_not_known_of_an_earlier_step_or_of_another_dish_does_not_matter() -> None:
    small = small_binder()
    flour = replace(small.lines["bread/1/1"], unit="bunch")
    assert takes(small_binder(flour), "dish-spread").possible == 2
    tahini = replace(small.lines["spread/1/2"], unit="bunch")
    assert takes(small_binder(tahini), "dish-spread", "spread/2").possible is not None
