"""Allergens for everyone who tastes: what a dish contains, and what it may get from what dishes share."""

from __future__ import annotations

from dataclasses import replace

from binder.figures.allergen_matrix import Contact, allergen_matrix, contact_text
from binder.kitchen.binder import Binder
from binder.kitchen.recipe import Heat, Line, Step
from binder.kitchen.settings import AllergenScheme
from tests.kitchen_binder import small_binder


def shared(spread: tuple[str, ...], bread: tuple[str, ...]) -> Binder:
    """The small binder without spread in its bread; the two dishes made with these things."""
    small = small_binder()
    plain = Line(id="bread/2/1", step="bread/2", food="onion", low=10, high=10, unit="g")
    steps = [
        replace(small.steps["spread/1"], equipment=spread),
        replace(small.steps["bread/2"], equipment=bread),
    ]
    return small_binder(plain, *steps)


def test_what_each_dish_contains_by_the_scheme() -> None:
    matrix = allergen_matrix(shared((), ()), "day")
    assert matrix.allergens == ("sesame", "wheat")
    spread, bread = matrix.dishes
    assert (spread.dish, spread.contains) == ("dish-spread", {"sesame": ("tahini",)})
    assert (bread.dish, bread.contains) == ("dish-bread", {"wheat": ("flour",)})
    assert not spread.may_have
    eu = small_binder(replace(small_binder().settings, allergens=AllergenScheme.EU_FOURTEEN))
    assert allergen_matrix(eu, "day").allergens == ("cereals containing gluten", "sesame seeds")


def test_a_shared_blender_brings_each_dish_the_others_allergens() -> None:
    binder = shared(("Blender", "bowl"), ("blender", "plate"))
    spread, bread = allergen_matrix(binder, "day").dishes
    assert spread.may_have == {"wheat": Contact(("dish-bread",), ("blender",))}
    assert bread.may_have == {"sesame": Contact(("dish-spread",), ("Blender",))}
    assert contact_text(binder, spread) == (
        "1 Bean spread may also carry wheat (by blender, from 2 Onion flatbread). Tell everyone who tastes, or keep "
        "its things apart. Follow your local food code and your own food-safety lead."
    )
    assert contact_text(shared((), ()), allergen_matrix(shared((), ()), "day").dishes[0]) == ""


def test_frying_oil_is_shared() -> None:
    fried = Step(id="spread/3", recipe="spread", position=2, heat=Heat.OIL)
    spread, _bread = allergen_matrix(small_binder(*shared((), ()).lines.values(), fried), "day").dishes
    assert spread.may_have == {"wheat": Contact(("dish-bread",), ("the frying oil",))}


def test_what_is_made_ahead_counts_with_its_dish() -> None:
    """The bread holds spread, so it contains sesame, and the spread's blender is its blender too."""
    binder = small_binder(replace(small_binder().steps["spread/1"], equipment=("blender",)))
    spread, bread = allergen_matrix(binder, "day").dishes
    assert set(bread.contains) == {"sesame", "wheat"}
    assert spread.may_have["wheat"].shared == ("blender",)
