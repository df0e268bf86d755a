"""What is bought for a recipe, by hand: a bag of beans gives soaked beans two for one, and these 1.85 in two forms."""

from __future__ import annotations

import pytest

from binder.figures.bought_uses import BoughtUse, bought_by_food, bought_uses
from binder.figures.missing import Missing, MissingKind
from binder.kitchen.conversion import Conversion, Outcome
from binder.kitchen.food import Food
from binder.kitchen.recipe import Line
from tests.kitchen_binder import small_binder

# A gram of dried beans is 2 g soaked; with 0.01 g of salt a gram of these is 1.05 g cooked and 0.80 g of liquid.
BEANS, SALT = 0.5 / 1.85, 0.01 / 1.85


def test_forms_are_traced_back_to_the_bag_and_water_is_free() -> None:
    grams = bought_by_food(small_binder(), "spread")
    assert not isinstance(grams, tuple)
    assert grams == pytest.approx(
        {"beans": (300 + 80) * BEANS, "salt": (300 + 80) * SALT, "tahini": 60, "oil": 2 * 14.78676478125 * 0.9}
    )


def test_each_use_belongs_to_a_line_of_the_recipe_asked_about() -> None:
    uses = [use for use in bought_uses(small_binder(), "bread") if isinstance(use, BoughtUse)]
    inner = [use for use in uses if use.line == "bread/2/1"]
    assert {use.food for use in inner} == {"beans", "salt", "tahini", "oil"}
    assert next(use.grams for use in inner if use.food == "tahini") == pytest.approx(30)
    (onion,) = [use for use in uses if use.food == "onion"]
    assert onion.grams == pytest.approx(240 / 0.9)


def test_what_cannot_be_weighed_is_named_in_the_place_of_all_grams() -> None:
    line = Line(id="x", step="spread/1", food="tahini", low=1, high=1, unit="bunch")
    lacking = bought_by_food(small_binder(line), "spread")
    assert isinstance(lacking, tuple)
    assert [lack.kind for lack in lacking] == [MissingKind.CONVERSION]


def test_conversions_in_a_loop_are_named() -> None:
    back = small_binder(
        Conversion(id="dry", takes="cooked", name="Dry"),
        Outcome(id="a/soaked", conversion="dry", form="soaked", ratio=0.5),
    )
    lacking = bought_by_food(back, "spread")
    assert isinstance(lacking, tuple)
    assert any("loop" in lack.says for lack in lacking)


def test_a_line_to_taste_is_not_counted_and_an_unmade_form_is_bought_as_it_is() -> None:
    odd = small_binder(
        Food(id="paste", name="paste", form_of="beans"),
        Line(id="x", step="spread/1", food="paste", low=1, high=1, unit="g"),
    )
    uses = bought_uses(odd, "spread")
    assert not any(isinstance(use, Missing) for use in uses)
    assert {use.line for use in uses if isinstance(use, BoughtUse)} == {f"spread/1/{n}" for n in (1, 2, 3)} | {
        "spread/2/1",
        "x",
    }
