from __future__ import annotations

import pytest

from binder.paper.typeface import Weight, capital_ratio, face_of, has, width_of_one


@pytest.mark.parametrize("weight", list(Weight))
def test_every_weight_has_what_a_kitchen_writes(weight: Weight) -> None:
    signs = "½⅓⅔¼¾⅛⅜⅝⅞°×–−…·→éßœ€£$’“”"
    assert [sign for sign in signs if not has(face_of(weight), ord(sign))] == []


@pytest.mark.parametrize("weight", list(Weight))
def test_figures_are_of_one_width_so_that_columns_stand_in_line(weight: Weight) -> None:
    assert len({width_of_one(weight.value, digit) for digit in "0123456789"}) == 1


def test_the_height_of_capitals_is_measured_from_the_outline() -> None:
    # Source Sans states a cap height of 660 of 1000 units in its OS/2 table; no capital is drawn higher than that.
    for weight in Weight:
        assert 0.65 <= capital_ratio(weight) <= 0.66
