"""What a batch uses, down through recipes in recipes, to taste, in ranges and beyond all reason."""

from __future__ import annotations

import sys
from dataclasses import replace

import pytest

from binder.figures.cost import Verdict, dish_cost
from binder.figures.mise import made_ahead
from binder.figures.missing import Missing, MissingKind
from binder.figures.recipe_use import recipe_uses, recipes_within
from binder.figures.safety import recipe_allergens
from binder.figures.shopping import shopping_list
from binder.kitchen.binder import Binder
from binder.kitchen.recipe import Line, Recipe, Step
from binder.kitchen.record import Record
from binder.kitchen.shoot import Build, Dish
from tests.kitchen_binder import small_binder


def nested(depth: int, *, width: int = 1) -> Binder:
    """Recipes in recipes: each of 2 batches of the next on each of `width` lines, the last of 3 to 5 g of tahini."""
    records: list[Record] = []
    for level in range(depth):
        key = f"level{level}"
        records += [Recipe(id=key, name=f"Level {level}", portions=1), Step(id=key, recipe=key)]
        inner = f"level{level + 1}" if level < depth - 1 else None
        for number in range(width if inner else 1):
            line = Line(id=f"{key}/{number}", step=key, position=number, food="tahini", low=3, high=5, unit="g")
            of_inner = replace(line, food=None, made=inner, low=1, high=2, unit="batch") if inner else line
            records.append(of_inner)
        records.append(Line(id=f"{key}/salt", step=key, position=width, food="salt", to_taste=True))
    records += [Dish(id="deep", shoot="day", position=5, recipe="level0", portions=1), Build(id="deep/1", dish="deep")]
    return small_binder(*records)


def test_many_levels_of_ranges_come_to_their_upper_ends() -> None:
    binder = nested(25)
    tahini = next(use for use in recipe_uses(binder, "level0") if use.food == "tahini")
    assert tahini.purchased == pytest.approx(5 * 2**24, rel=1e-12)
    assert tahini.step == "level0"
    cost = dish_cost(binder, "deep")
    assert cost.per_portion == pytest.approx(5 * 2**24 * 2, rel=1e-12)
    assert cost.not_counted == ("salt",)
    ahead = made_ahead(binder, "day")
    levels = [recipe for recipe in ahead if recipe.startswith("level")]
    assert levels == [f"level{level}" for level in range(24, 0, -1)]
    assert (ahead["level24"], ahead["level1"]) == pytest.approx((2.0**24, 2.0))


def test_recipes_that_share_their_parts_do_not_double_at_each_level() -> None:
    binder = nested(30, width=3)
    assert len([use for use in recipe_uses(binder, "level0") if use.food == "tahini"]) == 3  # one a line of the dish
    uses = recipe_uses(nested(8, width=3), "level0")
    tahini = [use.purchased for use in uses if use.food == "tahini" and not isinstance(use.purchased, Missing)]
    assert sum(tahini) == pytest.approx(5 * 6**7)
    assert made_ahead(nested(6, width=3), "day")["level5"] == pytest.approx(6**5)
    assert {allergen.group for allergen in recipe_allergens(binder, "level0")}


def test_recipes_may_be_nested_deeper_than_python_calls() -> None:
    depth = sys.getrecursionlimit() // 2
    binder = nested(depth)
    assert len(recipes_within(binder, "level0")) == depth - 1
    assert recipes_within(binder, "level0")[-1] == "level1"
    assert recipe_allergens(binder, "level0")


def test_more_than_any_kitchen_holds_is_named_and_stops_nothing() -> None:
    binder = nested(120)
    cost = dish_cost(binder, "deep")
    assert cost.verdict is Verdict.UNKNOWN
    (lack,) = cost.missing
    assert lack.kind is MissingKind.AMOUNT
    assert "More than a thousand tonnes of tahini" in lack.says
    assert lack in shopping_list(binder, "day").missing


def test_too_many_portions_are_named_at_the_dish() -> None:
    binder = small_binder(Dish(id="dish-spread", shoot="day", recipe="spread", portions=1e7))
    lacks = shopping_list(binder, "day").missing
    assert {(lack.place.table, lack.place.id) for lack in lacks} == {("dishes", "dish-spread")}
    assert {lack.kind for lack in lacks} == {MissingKind.AMOUNT}


def test_a_recipe_to_taste_is_not_counted_like_a_food_to_taste() -> None:
    binder = small_binder(Line(id="bread/2/1", step="bread/2", made="spread", to_taste=True))
    cost = dish_cost(binder, "dish-bread")
    assert cost.per_portion is not None
    assert set(cost.not_counted) == {"cooked beans", "tahini", "bean liquid", "olive oil", "salt"}
    assert {allergen.group for allergen in recipe_allergens(binder, "bread")} >= {"sesame"}


@pytest.mark.parametrize(("unit", "batches"), [("g", 0.5), ("portion", 62.5), ("", 62.5), ("batch", 250.0)])
def test_a_line_of_a_recipe_may_be_in_anything_the_recipe_yields(unit: str, batches: float) -> None:
    binder = small_binder(Line(id="bread/2/1", step="bread/2", made="spread", low=250, high=250, unit=unit))
    tahini = next(use for use in recipe_uses(binder, "bread") if use.food == "tahini")
    assert tahini.edible == pytest.approx(60 * batches)


@pytest.mark.parametrize(
    ("unit", "kind"), [("ml", MissingKind.YIELD), ("sprig", MissingKind.YIELD), ("smidgen", MissingKind.CONVERSION)]
)
def test_a_unit_a_recipe_does_not_yield_is_named(unit: str, kind: MissingKind) -> None:
    binder = small_binder(Line(id="bread/2/1", step="bread/2", made="spread", low=2, high=2, unit=unit))
    (lack,) = dish_cost(binder, "dish-bread").missing
    assert lack.kind is kind
    assert lack.place.id == "spread"
