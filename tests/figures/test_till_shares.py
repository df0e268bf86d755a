"""A pack's price is borne by those who use it, to the last minor unit.

By hand: the spread is built twice (once to its first step), the bread once in full, with half a batch of spread, and
once to its first step, which has none of it: tahini is 2 x 60 g for the spread and 30 g for the bread.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from binder.figures.shopping import needed_to_buy, shopping_list
from binder.figures.till_shares import BASE_REST, LEFT_OVER, TASTING, Bearer, BearerKind, bearers, borne, food_uses
from binder.kitchen.binder import Binder
from binder.kitchen.buying import PantryItem
from binder.kitchen.food import Food
from binder.kitchen.shoot import Build, BuildKind
from tests.kitchen_binder import small_binder
from tests.samples.opened import sample, shoot_of
from tests.strategies import binders

SMALL = small_binder()
SPREAD, BREAD = Bearer(BearerKind.DISH, "dish-spread"), Bearer(BearerKind.DISH, "dish-bread")


def test_dishes_bear_what_they_use_and_the_rest_is_left_over() -> None:
    # 150 g of a jar of 300 g for 600: 120 g are 240, 30 g are 60.
    assert borne(SMALL, "day", "tahini", 600, 300) == {SPREAD: 240, BREAD: 60, LEFT_OVER: 300}


def test_what_is_at_home_is_used_first() -> None:
    home = small_binder(PantryItem(id="home", shoot="day", food="tahini", amount=50))
    # 100 of 150 g come from the jar: the spread's 120 are 80 of them, the bread's 30 are 20.
    assert borne(home, "day", "tahini", 600, 300) == {SPREAD: 160, BREAD: 40, LEFT_OVER: 400}


def test_less_than_is_needed_is_borne_by_those_who_need_it() -> None:
    assert borne(SMALL, "day", "tahini", 600, 75) == {SPREAD: 480, BREAD: 120, LEFT_OVER: 0}


def test_what_nobody_uses_is_left_over() -> None:
    idle = small_binder(Food(id="sumac", name="sumac"))
    assert borne(idle, "day", "sumac", 7, 100) == {LEFT_OVER: 7}
    assert borne(idle, "day", "sumac", 7, 0) == {LEFT_OVER: 7}


def test_what_was_bought_by_no_known_weight_is_borne_by_its_users() -> None:
    assert borne(SMALL, "day", "tahini", 600, 0) == {SPREAD: 480, BREAD: 120}


def test_tasting_is_apart_from_the_dish() -> None:
    tasted = small_binder(Build(id="taste", dish="dish-spread", position=2, kind=BuildKind.TASTING, portions=2))
    # half a batch: 30 g of tahini beside 120 and 30
    assert borne(tasted, "day", "tahini", 600, 300) == {SPREAD: 240, TASTING: 60, BREAD: 60, LEFT_OVER: 240}


def test_the_base_is_borne_by_the_forms_used_and_what_is_left_of_them() -> None:
    uses = food_uses(SMALL, "day")["beans"]
    # 750 g of cooked beans come of 714.29 g soaked, with 571.43 g of liquid of which 200 are used. All of 1321.43 g
    # carries the cost of 357.14 g dried: the spread's 600 + 160, the bread's 150 + 40, and 371.43 left.
    a_gram = (750 / 1.05 / 2) / (750 + 750 / 1.05 * 0.8)
    assert uses[SPREAD] == pytest.approx(760 * a_gram)
    assert uses[BREAD] == pytest.approx(190 * a_gram)
    assert uses[BASE_REST] == pytest.approx(1000 - 950 * a_gram)
    assert sum(uses.values()) == pytest.approx(1000)


def test_every_gram_bought_for_the_samples_has_a_bearer() -> None:
    for name in ("chickpeas", "four_birds"):
        binder = sample(name)
        shoot = shoot_of(binder)
        uses, needed = food_uses(binder, shoot), needed_to_buy(binder, shoot)
        for item in shopping_list(binder, shoot).items:
            assert sum(uses[item.food].values()) == pytest.approx(needed[item.food]), item.name


@given(st.integers(0, 10**9), st.floats(0, 1e6), st.sampled_from(sorted(SMALL.foods)))
def test_a_price_divided_adds_up_to_the_price(paid: int, grams: float, food: str) -> None:
    parts = borne(SMALL, "day", food, paid, grams)
    assert sum(parts.values()) == paid
    assert all(part >= 0 for part in parts.values())


@settings(suppress_health_check=[HealthCheck.too_slow])
@given(binders(), st.integers(0, 10**6), st.floats(0, 1e6))
def test_in_any_binder_a_price_divided_adds_up(binder: Binder, paid: int, grams: float) -> None:
    for shoot in binder.shoots:
        for food in [*food_uses(binder, shoot), *binder.foods][:20]:
            parts = borne(binder, shoot, food, paid, grams)
            assert sum(parts.values()) == paid
            assert set(parts) <= set(bearers(binder, shoot))


@pytest.mark.parametrize(("currency", "paid"), [("JPY", 1), ("JPY", 601), ("EUR", 199), ("KWD", 1999)])
def test_minor_units_of_any_size_divide(currency: str, paid: int) -> None:
    # ISO 4217: the yen has no minor unit, the dinar three digits; the division knows whole numbers only.
    binder = small_binder(replace(SMALL.settings, currency=currency))
    parts = borne(binder, "day", "tahini", paid, 300)
    assert all(isinstance(part, int) for part in parts.values())
    assert sum(parts.values()) == paid
