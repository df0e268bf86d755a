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
    assert spread.may_have == {"wheat": Contact(("dish-bread",), ("Blender",))}
    assert bread.may_have == {"sesame": Contact(("dish-spread",), ("blender",))}
    assert contact_text(binder, spread) == (
        "1 Bean spread may also carry wheat (by Blender, from 2 Onion flatbread). Tell everyone who tastes, or keep "
        "its things apart. Follow your local food code and your own food-safety lead."
    )
    assert contact_text(shared((), ()), allergen_matrix(shared((), ()), "day").dishes[0]) == ""


def test_frying_oil_is_shared() -> None:
    fried = Step(id="spread/3", recipe="spread", position=2, heat=Heat.OIL)
    spread, _bread = allergen_matrix(small_binder(*shared((), ()).lines.values(), fried), "day").dishes
    assert spread.may_have == {"wheat": Contact(("dish-bread",), ("the frying oil",))}


def test_what_was_not_yet_in_a_dish_is_not_on_its_things() -> None:
    """The tahini goes in at the first step of the spread; what only its second uses has had it, and the reverse not."""
    small = shared((), ())
    sieve = (
        replace(small.steps["bread/1"], equipment=("sieve",), position=0),
        replace(small.steps["spread/1"], equipment=("sieve",)),
    )
    late = Line(id="bread/1/1", step="bread/2", food="flour", low=2, high=2, unit="cup")
    spread, bread = allergen_matrix(small_binder(*small.lines.values(), *sieve, late), "day").dishes
    assert not spread.may_have  # the flour comes into the bread after the sieve
    assert set(bread.may_have) == {"sesame"}


def test_what_is_made_ahead_for_both_brings_nothing_of_the_others() -> None:
    """The bread holds spread and so contains sesame; its flour never comes near the spread's blender."""
    blended = replace(small_binder().steps["spread/1"], equipment=("blender",))
    spread, bread = allergen_matrix(small_binder(blended), "day").dishes
    assert set(bread.contains) == {"sesame", "wheat"}
    assert not spread.may_have
    kneaded = replace(small_binder().steps["bread/1"], equipment=("blender",))
    spread, _bread = allergen_matrix(small_binder(blended, kneaded), "day").dishes
    assert spread.may_have["wheat"].shared == ("blender",)
