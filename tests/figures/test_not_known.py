from __future__ import annotations

from binder.figures.missing import Missing, MissingKind, Place
from binder.figures.not_known import not_known_text
from tests.kitchen_binder import small_binder


def _no_price(food: str) -> Missing:
    return Missing(MissingKind.PRICE, f"No price for {food}: add one.", Place("foods", food))


def test_missing_prices_are_named_and_other_lacks_say_how_they_are_mended() -> None:
    cannot = Missing(MissingKind.CONVERSION, "Cannot convert 1 bunch of salt: add its weight.", Place("foods", "salt"))
    says = not_known_text(small_binder(), [_no_price("tahini"), cannot, _no_price("oil"), _no_price("tahini")])
    assert says == ("not known: no price for tahini and olive oil. Cannot convert 1 bunch of salt: add its weight.")
    assert not_known_text(small_binder(), []) == "not known"


def test_a_price_that_is_not_one_food_s_keeps_its_own_sentence() -> None:
    lack = Missing(MissingKind.PRICE, "No 1 stores together sell everything: allow more.", Place("shoots", "day"))
    assert not_known_text(small_binder(), [lack]) == "not known. No 1 stores together sell everything: allow more."
