"""What a dish is made by, and notes on it."""

from __future__ import annotations

import pytest

from binder.desktop.sheet.sheet import Sight
from binder.desktop.shoot_page.dish_head import DishHead
from binder.kitchen.binder import Binder
from binder.kitchen.errors import BinderError
from tests.desktop.sheets import after_typing, cell_called, is_even

SHEET = DishHead()


@pytest.fixture
def fritters(chickpeas: Binder) -> Sight:
    return Sight(chickpeas, "day", "dish_2")


def test_a_dish_is_made_by_another_recipe_with_its_builds_to_the_end(fritters: Sight) -> None:
    binder = after_typing(SHEET, fritters, "dishes:dish_2", "recipe", "smoky tomato stew")
    assert binder.dishes["dish_2"].recipe == "smoky_tomato_stew"
    assert {build.up_to for build in binder.builds.where("dish", "dish_2")} == {None}


def test_notes_are_typed_in_place(fritters: Sight) -> None:
    binder = after_typing(SHEET, fritters, "dishes:dish_2", "notes", "Fry to order.\n")
    assert binder.dishes["dish_2"].notes == "Fry to order."
    assert cell_called(SHEET, Sight(binder, "day", "dish_2"), "dishes:dish_2", "notes").text == "Fry to order."


def test_an_unknown_recipe_is_refused(fritters: Sight) -> None:
    with pytest.raises(BinderError, match="no recipe is called so"):
        SHEET.edit(fritters, "dishes:dish_2", "recipe", "moon cheese")


def test_every_recipe_is_offered(fritters: Sight) -> None:
    assert is_even(SHEET, fritters)
    offered = cell_called(SHEET, fritters, "dishes:dish_2", "recipe").choices
    assert set(offered) == {recipe.name for recipe in fritters.binder.recipes.values()}
    assert SHEET.rows(Sight(fritters.binder, "day", "gone")) == []
