"""The list of recipes."""

from __future__ import annotations

from binder.desktop.dishes_page.recipe_list import ADD_RECIPE, RecipeList
from binder.desktop.sheet.cell import Mark
from binder.desktop.sheet.sheet import Sight
from binder.desktop.words.figure_text import mark_of
from binder.figures.cost import dish_cost
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.edits.money import set_cap_basis
from binder.kitchen.edits.recipes import add_recipe, set_recipe
from binder.kitchen.shoot import CapBasis
from tests.desktop.sheets import after_typing, cell_called, is_even

LIST = RecipeList()


def test_the_shoots_recipes_come_first_in_running_order(chickpeas: Binder) -> None:
    change, extra = add_recipe(chickpeas, "A spare sauce")
    sight = Sight(apply(chickpeas, change), "day")
    keys = [row.key for row in LIST.rows(sight)]
    assert keys[0] == "recipes:silky_hummus_with_lemon"
    assert keys[-2:] == [f"recipes:{extra.id}", ADD_RECIPE]
    assert is_even(LIST, sight)


def test_each_has_its_cost_a_portion_and_its_state(chickpeas: Binder) -> None:
    cell = cell_called(LIST, Sight(chickpeas, "day"), "recipes:smoky_tomato_stew", "cost")
    assert cell.text == "$1.83"
    assert cell.under == "used cost"
    assert cell.mark is Mark.WITHIN


def test_the_cost_is_the_one_its_cap_is_held_on(chickpeas: Binder) -> None:
    binder = apply(chickpeas, set_cap_basis(chickpeas.shoots["day"], CapBasis.WHOLE_PACKS))
    cell = cell_called(LIST, Sight(binder, "day"), "recipes:smoky_tomato_stew", "cost")
    cost = dish_cost(binder, "dish_3")
    assert cost.per_portion is not None
    assert cell.text == f"${cost.per_portion / 100:.2f}"
    assert cell.under == "whole packs over portions"
    assert cell.mark is mark_of(cost.verdict)


def test_one_without_portions_says_so_and_not_nothing(chickpeas: Binder) -> None:
    recipe = chickpeas.recipes["herb_fritters"]
    sight = Sight(apply(chickpeas, set_recipe(recipe, portions=None)), "day")
    cell = cell_called(LIST, sight, "recipes:herb_fritters", "cost")
    assert "how many portions" in cell.says


def test_recipes_are_named_added_and_removed(chickpeas: Binder) -> None:
    sight = Sight(chickpeas, "day")
    assert "lentil_cake" in after_typing(LIST, sight, ADD_RECIPE, "name", "Lentil cake").recipes
    renamed = after_typing(LIST, sight, "recipes:herb_fritters", "name", "Green fritters")
    assert renamed.recipes["herb_fritters"].name == "Green fritters"
    change, extra = add_recipe(chickpeas, "A spare sauce")
    grown = apply(chickpeas, change)
    gone = LIST.remove(Sight(grown, "day"), [f"recipes:{extra.id}"])
    assert gone is not None
    assert apply(grown, gone) == chickpeas
