from __future__ import annotations

from dataclasses import replace

import pytest

from binder.figures.safety import recipe_allergens
from binder.kitchen.food import Food
from binder.kitchen.shoot import Dish
from binder.paper.print_set import SheetKind, sheet_bytes
from tests.paper.example import SHOOT, full_binder
from tests.paper.reader import all_words, read_pages
from tests.paper.said import words_of

TWELVE = (
    "wheat", "crustaceans", "eggs", "fish", "peanuts", "soybeans",
    "milk", "almonds", "celery", "mustard", "sesame", "sulphites",
)  # fmt: skip


@pytest.mark.parametrize("paper", ["a4", "4x6"])
def test_every_dish_says_in_words_which_allergens_it_has_and_by_which_food(paper: str) -> None:
    words, binder = words_of(full_binder(), SheetKind.ALLERGENS, paper), full_binder()
    for dish in binder.dishes.where("shoot", SHOOT):
        carried = recipe_allergens(binder, dish.recipe)
        assert carried
        for one in carried:
            assert f"{one.group} ({', '.join(one.foods)})" in words
    assert "Tell everyone who tastes." in words


def test_a_dish_with_twelve_and_forty_dishes_have_all_of_them_in_the_matrix() -> None:
    tahini: Food = full_binder().foods["tahini"]
    many = [Dish(id=f"many{at}", shoot=SHOOT, position=at + 2, recipe="salad", portions=2) for at in range(38)]
    binder = full_binder(replace(tahini, allergens=TWELVE), *many)
    content = sheet_bytes(binder, SHOOT, SheetKind.ALLERGENS, "a5")
    words = all_words(content)
    for one in recipe_allergens(binder, "salad"):
        assert one.group.capitalize() in words
    heads = " ".join(word for page in read_pages(content) for word in page.words.split() if word.isdigit())
    assert all(str(number) in heads.split() for number in range(1, 41))
