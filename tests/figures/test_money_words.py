"""Money and per cent in words: nothing is shown as what it is not."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.figures.money_words import money, money_beside, pack_words, percent_text, rate_text
from binder.kitchen.binder import Binder
from tests.kitchen_binder import small_binder

SMALL = small_binder()


def in_locale(locale: str, currency: str = "USD") -> Binder:
    return small_binder(replace(SMALL.settings, locale=locale, currency=currency))


def test_a_cost_beside_its_cap_keeps_to_its_own_side() -> None:
    assert money_beside(SMALL, 174.6, 175) == "$1.746"
    assert money_beside(SMALL, 175.2, 175) == "$1.752"
    assert money_beside(SMALL, 175, 175) == "$1.75"
    assert money_beside(SMALL, 180.67, 175) == "$1.81"


@given(st.floats(0, 1e6), st.integers(0, 10**6))
def test_what_differs_is_shown_to_differ(minor: float, cap: int) -> None:
    if abs(minor - cap) > 1e-6 * max(1, cap):
        assert money_beside(SMALL, minor, cap) != money(SMALL, cap)


@pytest.mark.parametrize(
    ("part", "shown"),
    [
        (0.25, "25%"),
        (0.0225, "2.3%"),
        (0.02, "2%"),
        (0.07, "7%"),
        (0.0999, "10.0%"),
        (0.00228, "0.2%"),
        (-0.031, "-3.1%"),
        (0.00001, "0.001%"),
        (0, "0%"),
        (1.234, "123%"),
        (1e-15, "0%"),
    ],
)
def test_per_cent_with_a_figure_that_counts(part: float, shown: str) -> None:
    assert percent_text(SMALL, part) == shown


def test_per_cent_as_the_locale_writes_it() -> None:
    assert percent_text(in_locale("de_DE"), 0.0023) == "0,2\u00a0%"
    assert percent_text(in_locale("tr_TR"), 0.25) == "%25"
    assert percent_text(in_locale("nowhere"), 0.25) == "25%"


@pytest.mark.parametrize(
    ("currency", "locale", "shown"),
    [("JPY", "ja_JP", "￥1,235"), ("EUR", "de_DE", "12,35\u00a0€"), ("KWD", "en_US", "KWD\u00a01.235")],
)
def test_minor_units_are_those_of_iso_4217(currency: str, locale: str, shown: str) -> None:
    # ISO 4217: no minor unit for the yen, 2 digits for the euro, 3 for the Kuwaiti dinar; written as CLDR has it.
    assert money(in_locale(locale, currency), 1235) == shown


def test_a_pack_goes_by_its_label_or_its_size() -> None:
    pack = SMALL.packs["pack-onion"]
    assert pack_words(SMALL, replace(pack, label="net of onions")) == "net of onions"
    assert pack_words(SMALL, replace(pack, label="")) == "2 lb"


@pytest.mark.parametrize(
    ("rate", "shown"),
    [(0.0825, "8.25%"), (0.07, "7%"), (0.1, "10%"), (0.19, "19%"), (0.0, "0%"), (1.0, "100%"), (0.07375, "7.375%")],
)
def test_a_rate_of_tax_has_all_the_digits_it_was_set_with(rate: float, shown: str) -> None:
    assert rate_text(SMALL, rate) == shown


@given(st.integers(0, 10**6))
def test_any_rate_is_read_back_as_it_was_set(millionths: int) -> None:
    shown = rate_text(SMALL, millionths / 10**6)
    assert round(float(shown.rstrip("%")) * 10**4) == millionths
