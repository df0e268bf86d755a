"""Money, read and written."""

from __future__ import annotations

import math
import re

import pytest
from babel.numbers import format_currency
from hypothesis import given
from hypothesis import strategies as st

from binder.kitchen.money import (
    UnknownCurrencyError,
    UnreadablePriceError,
    honest_digits,
    minor_digits,
    money_text,
    parse_money,
)


def test_minor_units_are_those_of_iso_4217() -> None:
    # ISO 4217 minor units: USD 2, EUR 2, JPY 0, KWD 3.
    assert [minor_digits(code) for code in ("USD", "EUR", "JPY", "KWD")] == [2, 2, 0, 3]


def test_a_currency_no_one_has_is_refused() -> None:
    with pytest.raises(UnknownCurrencyError):
        minor_digits("QQQ")


@pytest.mark.parametrize(
    ("text", "currency", "locale", "minor"),
    [
        ("3.49", "USD", "en_US", 349),
        ("$3.49", "USD", "en_US", 349),
        ("3,49 €", "EUR", "de_DE", 349),
        ("3,49", "USD", "en_US", 349),
        ("1,234.50", "USD", "en_US", 123450),
        ("1.234,50", "EUR", "de_DE", 123450),
        ("1'234.50", "CHF", "de_CH", 123450),
        ("1 234,50", "EUR", "fr_FR", 123450),
        ("1,234", "USD", "en_US", 123_400),
        ("350", "JPY", "ja_JP", 350),
        ("1.250", "KWD", "en_US", 1250),
        (".99", "USD", "en_US", 99),
        ("2.005", "USD", "en_US", 201),
        ("0.125", "EUR", "de_DE", 13),
        ("0,125", "USD", "en_US", 13),
        ("1 234 567,50", "EUR", "fr_FR", 123_456_750),
        ("12,34,567.50", "INR", "en_IN", 123_456_750),
    ],
)
def test_reads_prices_as_people_type_them(text: str, currency: str, locale: str, minor: int) -> None:
    assert parse_money(text, currency, locale) == minor


@pytest.mark.parametrize(
    ("currency", "locale", "example"),
    [("USD", "en_US", "3.49."), ("EUR", "de_DE", "3,49."), ("JPY", "ja_JP", "349."), ("KWD", "en_US", "3.490.")],
)
def test_what_is_no_price_is_answered_with_one_in_the_same_currency(currency: str, locale: str, example: str) -> None:
    with pytest.raises(UnreadablePriceError, match=f"such as {re.escape(example)}$"):
        parse_money("dear", currency, locale)


@pytest.mark.parametrize(
    "text", ["", "abc", "-1", "1.2.3,4,5", "3.49 EUR", "NaN", "1e5", "99999999999999", "3 49", "1 23 4", "3'49"]
)
def test_refuses_what_is_no_price(text: str) -> None:
    with pytest.raises(UnreadablePriceError):
        parse_money(text, "USD", "en_US")


@given(
    st.integers(0, 10**9),
    st.sampled_from([("USD", "en_US"), ("EUR", "de_DE"), ("JPY", "ja_JP"), ("KWD", "en_US"), ("EUR", "fr_FR")]),
)
def test_what_is_written_is_read_back(minor: int, pair: tuple[str, str]) -> None:
    currency, locale = pair
    assert parse_money(money_text(minor, currency, locale), currency, locale) == minor


@given(st.integers(0, 10**9))
def test_whole_minor_units_are_written_as_babel_writes_them(minor: int) -> None:
    assert money_text(minor, "USD", "en_US") == format_currency(minor / 100, "USD", locale="en_US")


@pytest.mark.parametrize(
    ("currency", "locale", "shown"),
    [
        ("KWD", "en_US", "KWD\u00a00.029"),
        ("CHF", "en_GB", "CHF\u00a00.29"),
        ("USD", "en_GB", "US$0.29"),
        ("USD", "en_US", "$0.29"),
        ("EUR", "de_DE", "0,29\u00a0€"),
        ("CHF", "de_CH", "CHF\u00a00.29"),
    ],
)
def test_a_code_keeps_off_the_digits_and_a_sign_does_not(currency: str, locale: str, shown: str) -> None:
    # Unicode Technical Standard 35, part 3, currency spacing; what Babel does not do by itself.
    assert money_text(29, currency, locale) == shown
    assert parse_money(shown, currency, locale) == 29


def test_what_is_owed_keeps_its_sign_before_the_code() -> None:
    assert money_text(-29, "KWD", "en_US") == "-KWD\u00a00.029"


def test_a_figure_near_its_cap_is_shown_on_its_own_side() -> None:
    # The rule of the house: 1.752 beside a cap of 1.75 is never shown as 1.75, nor 1.746.
    assert money_text(175.2, "USD", "en_US", digits=honest_digits(175.2, 175, "USD")) == "$1.752"
    assert money_text(174.6, "USD", "en_US", digits=honest_digits(174.6, 175, "USD")) == "$1.746"
    assert money_text(175.0, "USD", "en_US", digits=honest_digits(175.0, 175, "USD")) == "$1.75"
    assert honest_digits(120, 175, "USD") == 2


@given(st.floats(0, 1e6), st.integers(0, 10**6))
def test_honest_digits_never_show_two_different_figures_alike(minor: float, cap: int) -> None:
    digits = honest_digits(minor, cap, "USD")
    shown, beside = (money_text(value, "USD", "en_US", digits=digits) for value in (minor, cap))
    assert shown != beside or math.isclose(minor, cap, rel_tol=1e-9, abs_tol=1e-9)


def test_a_figure_a_hair_over_its_cap_is_still_shown_over_it() -> None:
    assert money_text(175.000001, "USD", "en_US", digits=honest_digits(175.000001, 175, "USD")) == "$1.75000001"


@pytest.mark.parametrize("currency", ["USD", "JPY", "KWD"])
def test_a_sum_beyond_all_reason_is_still_written(currency: str) -> None:
    assert ",000,000,000" in money_text(1e36, currency, "en_US")
