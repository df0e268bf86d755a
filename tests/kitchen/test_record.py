"""Records hold only what fits."""

from __future__ import annotations

import math
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.kitchen.food import Food, Measure, Section
from binder.kitchen.price import Quote
from binder.kitchen.record import UnfitValueError, field_of, fields_of
from binder.kitchen.shapes import Number, Reference


def test_a_record_knows_its_fields_and_their_shapes() -> None:
    assert [field.name for field in fields_of(Measure)] == ["id", "food", "unit", "preparation", "grams", "source"]
    assert field_of(Measure, "food").shape == Reference("foods", owner=True)
    assert field_of(Measure, "grams").shape == Number(0, 1e7, open_below=True)
    assert field_of(Food, "density").optional
    assert field_of(Food, "name").required


@pytest.mark.parametrize("grams", [0, -1, 1e-300, 9e-7, math.nan, math.inf, 1e308, 2**63, "3", None, True])
def test_weights_that_cannot_be_are_refused(grams: object) -> None:
    with pytest.raises(UnfitValueError) as refused:
        Measure(id="m", food="onion", unit="cup", grams=grams)  # type: ignore[arg-type]
    assert "grams cannot be" in str(refused.value)


def test_a_millionth_is_the_least_that_is_above_zero() -> None:
    assert Measure(id="m", food="saffron", unit="strand", grams=1e-6).grams == 1e-6


def test_a_name_of_ten_thousand_characters_is_refused_in_one_short_line() -> None:
    with pytest.raises(UnfitValueError) as refused:
        Food(id="x", name="x" * 10_000)
    assert len(str(refused.value)) < 300
    assert "1 to 300 characters" in str(refused.value)


def test_values_are_kept_in_one_form() -> None:
    food = Food(id="x", name="cafe\u0301\x00", section="fish", other_names=["a"], density=1, trim_yield=1)  # type: ignore[arg-type]
    assert food.name == "café"
    assert food.section is Section.FISH
    assert food.other_names == ("a",)
    assert isinstance(food.density, float)


def test_minus_zero_is_zero() -> None:
    from binder.kitchen.shoot import Shoot

    assert math.copysign(1, Shoot(id="s", name="s", base_amount=-0.0).base_amount) == 1


def test_money_is_whole_minor_units() -> None:
    with pytest.raises(UnfitValueError):
        Quote(id="q", pack="p", price=3.49, on=date(2026, 1, 1))  # type: ignore[arg-type]


@given(st.text(max_size=400))
def test_any_name_is_kept_tidy_or_refused(name: str) -> None:
    try:
        food = Food(id="x", name=name)
    except UnfitValueError:
        return
    assert food == Food(id="x", name=food.name)
    assert 1 <= len(food.name) <= 300
    food.name.encode("utf-8")
