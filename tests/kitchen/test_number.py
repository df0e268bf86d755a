"""Numbers as cooks write them."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.kitchen.number import UnreadableNumberError, in_decimals, in_fractions, parse_number


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("1 1/2", 1.5),
        ("1-1/2", 1.5),
        ("1½", 1.5),
        ("1 ½", 1.5),
        ("¾", 0.75),
        ("⅓", 1 / 3),
        ("2/3", 2 / 3),
        ("3⁄8", 0.375),
        ("0,5", 0.5),
        ("0.5", 0.5),
        ("250", 250.0),
        ("1,000", 1000.0),
        ("1,250.5", 1250.5),
        ("1'000", 1000.0),
    ],
)
def test_reads_what_a_cook_types(text: str, value: float) -> None:
    assert parse_number(text) == pytest.approx(value, rel=1e-15)


def test_a_decimal_comma_locale_groups_with_points() -> None:
    assert parse_number("1.000", decimal_comma=True) == 1000.0
    assert parse_number("1,000", decimal_comma=True) == 1.0
    assert parse_number("0.500", decimal_comma=True) == 0.5


@pytest.mark.parametrize(
    "text", ["", "-1", "one", "1/0", "1.2.3", "nan", "inf", "1e400", "10000001", "١٢", "½½", "1 2"]
)
def test_refuses_what_is_no_kitchen_number(text: str) -> None:
    with pytest.raises(UnreadableNumberError) as refused:
        parse_number(text)
    assert "is not an amount" in str(refused.value)


@pytest.mark.parametrize("text", ["9" * 5000, "9" * 5000 + "/7", "1/" + "9" * 5000, "9" * 400 + "/1", "9" * 400 + "½"])
def test_refuses_digits_without_end_in_one_short_line(text: str) -> None:
    with pytest.raises(UnreadableNumberError) as refused:
        parse_number(text)
    assert len(str(refused.value)) < 200


@pytest.mark.parametrize(
    ("value", "text"),
    [(1.5, "1½"), (1 / 3, "⅓"), (0.333, "⅓"), (2.0, "2"), (0.125, "⅛"), (2.6666667, "2⅔"), (0.3, None), (0.0, None)],
)
def test_writes_fractions_as_a_cook_does(value: float, text: str | None) -> None:
    assert in_fractions(value) == text


@given(st.integers(0, 99), st.sampled_from([Fraction(n, d) for d in (2, 3, 4, 8) for n in range(1, d)]))
def test_every_cooks_fraction_is_read_back_as_it_was_written(whole: int, part: Fraction) -> None:
    value = float(whole + part)
    written = in_fractions(value)
    assert written is not None
    assert parse_number(written) == pytest.approx(value, rel=1e-12)


def test_decimals_round_half_up_and_end_without_zeros() -> None:
    assert in_decimals(2.345, digits=2) == "2.35"
    assert in_decimals(0.5, digits=0) == "1"
    assert in_decimals(1.50, digits=2, decimal_mark=",") == "1,5"
    assert in_decimals(12.0, digits=3) == "12"
