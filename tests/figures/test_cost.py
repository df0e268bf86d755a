"""Used cost against caps, by hand-checkable numbers."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.figures.checks import cost_beside_cap
from binder.figures.cost import Verdict, break_even_prices, cost_by_bought_food, dish_cost, shoot_costs
from binder.figures.form_cost import bought_for, cost_per_gram
from binder.figures.missing import Missing, MissingKind
from binder.figures.price import buyable_packs, chosen_pack
from binder.kitchen.change import apply
from binder.kitchen.edits.foods import set_price
from binder.kitchen.food import Food
from binder.kitchen.price import Pack, Quote
from binder.kitchen.recipe import Line, Recipe
from binder.kitchen.shoot import Dish
from tests.kitchen_binder import small_binder

TBSP = 14.78676478125  # ml; NIST Handbook 44, Appendix C
POUND = 453.59237  # g; NIST Handbook 44, Appendix C
BEANS_A_GRAM = 400 / 1000
SALT_A_GRAM = 100 / 500


def cooked_a_gram() -> float:
    """By hand: 1 g dried gives 2 g soaked; 1 g soaked with 0.01 g salt gives 1.05 + 0.80 g."""
    soaked = BEANS_A_GRAM / 2.0
    return (soaked + 0.01 * SALT_A_GRAM) / 1.85


def spread_batch() -> float:
    """By hand: 300 g cooked, 4 tbsp tahini of 15 g, 80 ml liquid (the upper end), 2 tbsp oil of density 0.9."""
    return 300 * cooked_a_gram() + 60 * 600 / 300 + 80 * cooked_a_gram() + 2 * TBSP * 0.9 * 900 / 450


def test_a_form_costs_its_share_of_what_went_in() -> None:
    binder = small_binder()
    assert cost_per_gram(binder, "cooked") == pytest.approx(cooked_a_gram())
    parts = bought_for(binder, "cooked")
    assert not isinstance(parts, Missing)
    assert parts["beans"] == pytest.approx(1 / 2 / 1.85)
    assert parts["salt"] == pytest.approx(0.01 / 1.85)


def test_a_portion_costs_what_the_hand_calculation_says() -> None:
    cost = dish_cost(small_binder(), "dish-spread")
    assert cost.per_portion == pytest.approx(spread_batch() / 4)
    assert cost.verdict is Verdict.WITHIN
    assert cost.headroom == pytest.approx(200 - spread_batch() / 4)
    assert cost.not_counted == ("salt",)


def test_a_recipe_in_a_recipe_costs_its_share() -> None:
    cost = dish_cost(small_binder(), "dish-bread")
    onion = 240 / 0.9 * 180 / (2 * POUND)
    expected = (250 * 150 / 1000 + onion + spread_batch() * 250 / 500) / 2
    assert cost.per_portion == pytest.approx(expected)
    assert [line.name for line in cost.lines] == ["flour", "onion", "Bean spread"]
    assert sum(line.share or 0 for line in cost.lines) == pytest.approx(1)


def test_as_purchased_is_edible_over_yield() -> None:
    onion = dish_cost(small_binder(), "dish-bread").lines[1]
    assert onion.edible == pytest.approx(120)
    assert onion.purchased == pytest.approx(120 / 0.9)


def test_a_missing_price_makes_the_cost_unknown_and_is_named() -> None:
    binder = small_binder(
        Food(id="sumac", name="sumac"), Line(id="x", step="spread/2", food="sumac", low=1, high=1, unit="g")
    )
    cost = dish_cost(binder, "dish-spread")
    assert cost.per_portion is None
    assert cost.verdict is Verdict.UNKNOWN
    assert [lack.kind for lack in cost.missing] == [MissingKind.PRICE]
    assert "sumac" in cost.missing[0].says
    assert all(line.share is None for line in cost.lines)
    assert next(line for line in cost.lines if line.name == "tahini").cost == pytest.approx(30)


def test_a_free_price_of_zero_is_a_price() -> None:
    cost = dish_cost(
        small_binder(Quote(id="quote-tahini", pack="pack-tahini", price=0, on=date(2026, 11, 2))), "dish-spread"
    )
    assert next(line for line in cost.lines if line.name == "tahini").cost == 0


def test_water_costs_nothing() -> None:
    assert cost_per_gram(small_binder(), "water") == 0


def test_a_recipe_that_says_no_portions_cannot_be_costed_a_portion() -> None:
    cost = dish_cost(small_binder(Recipe(id="spread", name="Bean spread", grams=500)), "dish-spread")
    assert cost.verdict is Verdict.UNKNOWN
    assert "portions" in cost.missing[0].says


def test_a_recipe_with_nothing_in_it_is_not_free() -> None:
    dish = Dish(id="new", shoot="day", recipe="toast", position=9, portions=4)
    cost = dish_cost(small_binder(Recipe(id="toast", name="Onion toast", portions=4), dish), "new")
    assert (cost.per_portion, cost.verdict) == (None, Verdict.UNKNOWN)
    assert [lack.says for lack in cost.missing] == ["Onion toast has nothing in it yet: add its lines."]


def test_a_dishs_own_cap_comes_before_the_shoots() -> None:
    assert [cost.cap for cost in shoot_costs(small_binder(), "day")] == [200, 150]


@pytest.mark.parametrize(("cap", "verdict"), [(100, Verdict.OVER), (150, Verdict.WITHIN)])
def test_cost_and_cap_are_compared_unrounded(cap: int, verdict: Verdict) -> None:
    binder = small_binder(
        Quote(id="quote-tahini", pack="pack-tahini", price=301, on=date(2026, 11, 2)),
        Recipe(id="plain", name="plain", portions=1),
        Dish(id="dish-spread", shoot="day", recipe="plain", portions=1, cap=cap),
        *_one_line("plain", "tahini", 100),
    )
    cost = dish_cost(binder, "dish-spread")
    assert cost.per_portion == pytest.approx(100 * 301 / 300)
    assert cost.verdict is verdict


def test_exactly_the_cap_is_within_it() -> None:
    binder = small_binder(
        Recipe(id="plain", name="plain", portions=3),
        Dish(id="dish-spread", shoot="day", recipe="plain", portions=3, cap=20),
        *_one_line("plain", "tahini", 30),
    )
    assert dish_cost(binder, "dish-spread").verdict is Verdict.WITHIN


def _one_line(recipe: str, food: str, grams: float) -> list[Line]:
    from binder.kitchen.recipe import Step

    step = Step(id=f"{recipe}/1", recipe=recipe)
    return [step, Line(id=f"{recipe}/1/1", step=step.id, food=food, low=grams, high=grams, unit="g")]  # type: ignore[list-item]


def test_the_newest_quote_is_chosen_unless_one_is_pinned() -> None:
    newer = Quote(id="newer", pack="pack-tahini", price=700, on=date(2026, 11, 20))
    binder = small_binder(newer)
    assert chosen(binder) == 700
    pinned = small_binder(
        newer, Quote(id="quote-tahini", pack="pack-tahini", price=600, on=date(2026, 11, 2), pinned=True)
    )
    assert chosen(pinned) == 600


def chosen(binder: object) -> int:
    priced = chosen_pack(binder, "tahini")  # type: ignore[arg-type]
    assert not isinstance(priced, Missing)
    return priced.price


def test_of_two_quotes_of_a_day_the_cheaper_by_the_gram_is_chosen() -> None:
    big = Pack(id="big", food="tahini", size=1, unit="kg")
    binder = small_binder(big, Quote(id="big-quote", pack="big", price=1500, on=date(2026, 11, 2)))
    assert chosen(binder) == 1500


def test_a_pack_that_cannot_be_weighed_is_named() -> None:
    binder = small_binder(Pack(id="pack-tahini", food="tahini", size=1, unit="bunch"))
    lacking = chosen_pack(binder, "tahini")
    assert isinstance(lacking, Missing)
    assert lacking.kind is MissingKind.CONVERSION


def test_at_its_break_even_price_a_dish_just_meets_its_cap() -> None:
    binder = small_binder()
    for even in break_even_prices(binder, "dish-bread"):
        assert even.price_at_cap is not None
        quote = binder.quotes[f"quote-{even.food}"]
        at_cap = round(even.price_at_cap)
        cost = dish_cost(apply(binder, set_price(binder, quote, at_cap)), "dish-bread")
        assert cost.per_portion == pytest.approx(150, abs=even.cost_in_portion / even.price_now * 0.51 + 1e-9)


def test_costs_by_bought_food_add_up_to_the_portion() -> None:
    binder = small_binder()
    for dish in ("dish-spread", "dish-bread"):
        assert sum(cost_by_bought_food(binder, dish).values()) == pytest.approx(dish_cost(binder, dish).per_portion)


@given(st.integers(0, 10**6))
def test_a_dearer_food_never_makes_a_dish_cheaper(price: int) -> None:
    binder = small_binder()
    before = dish_cost(binder, "dish-spread").per_portion
    after = dish_cost(apply(binder, set_price(binder, binder.quotes["quote-tahini"], price)), "dish-spread").per_portion
    assert before is not None
    assert after is not None
    assert (after >= before) == (price >= 600)


def test_of_two_pinned_prices_the_newer_counts_and_both_may_be_bought() -> None:
    big = Pack(id="big", food="tahini", size=1, unit="kg")
    binder = small_binder(
        Quote(id="quote-tahini", pack="pack-tahini", price=600, on=date(2026, 11, 2), pinned=True),
        Quote(id="newest", pack="pack-tahini", price=900, on=date(2026, 11, 30)),
        big,
        Quote(id="pinned", pack="big", price=1500, on=date(2026, 11, 3), pinned=True),
    )
    assert chosen(binder) == 1500
    assert {priced.quote.price for priced in buyable_packs(binder, "tahini")} == {600, 1500}


@pytest.mark.parametrize(("currency", "shown"), [("JPY", "29"), ("KWD", "0.029")])
def test_minor_units_are_the_currencys_own(currency: str, shown: str) -> None:
    settings = replace(small_binder().settings, currency=currency)
    binder = small_binder(settings, replace(small_binder().dishes["dish-spread"], cap=29))
    cost = dish_cost(binder, "dish-spread")
    assert cost.per_portion == pytest.approx(spread_batch() / 4)
    assert cost_beside_cap(binder, cost)[1].lstrip("¥KWD\u00a0") == shown


def test_a_cap_of_nothing_is_met_only_by_what_costs_nothing() -> None:
    free = Recipe(id="plain", name="plain", portions=1), *_one_line("plain", "water", 100)
    dish = Dish(id="dish-spread", shoot="day", recipe="plain", portions=1, cap=0)
    assert dish_cost(small_binder(*free, dish), "dish-spread").verdict is Verdict.WITHIN
    dear = Recipe(id="plain", name="plain", portions=1), *_one_line("plain", "salt", 0.001)
    assert dish_cost(small_binder(*dear, dish), "dish-spread").verdict is Verdict.OVER
