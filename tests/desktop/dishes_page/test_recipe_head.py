"""The head of a recipe."""

from __future__ import annotations

import pytest

from binder.desktop.dishes_page.recipe_head import RecipeHead
from binder.desktop.sheet.sheet import Sight
from binder.kitchen.binder import Binder
from binder.kitchen.errors import BinderError
from tests.desktop.sheets import after_typing, cell_called, is_even

HEAD = RecipeHead()


@pytest.fixture
def stew(chickpeas: Binder) -> Sight:
    return Sight(chickpeas, "day", "smoky_tomato_stew")


@pytest.mark.parametrize(
    ("column", "text", "field", "value"),
    [
        ("name", "Stew", "name", "Stew"),
        ("portions", "6", "portions", 6.0),
        ("portions", "", "portions", None),
        ("grams", "1.2 kg", "grams", 1200.0),
        ("millilitres", "1 l", "millilitres", 1000.0),
        ("grams", "", "grams", None),
    ],
)
def test_typing_edits_the_recipe(stew: Sight, column: str, text: str, field: str, value: object) -> None:
    binder = after_typing(HEAD, stew, "recipe", column, text)
    assert getattr(binder.recipes["smoky_tomato_stew"], field) == value
    assert is_even(HEAD, Sight(binder, "day", "smoky_tomato_stew"))


def test_a_weight_is_not_a_volume(stew: Sight) -> None:
    with pytest.raises(BinderError, match="weight"):
        HEAD.edit(stew, "recipe", "grams", "3 cups")


def test_the_introduction_is_a_paragraph(stew: Sight) -> None:
    binder = after_typing(HEAD, stew, "introduction", "name", "Good the day after.")
    cell = cell_called(HEAD, Sight(binder, "day", "smoky_tomato_stew"), "introduction", "name")
    assert cell.text == "Good the day after."
    assert cell.paragraph
