"""A sum as it is shown adds up, in any currency, and no figure is rounded onto what it is held against."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from babel.numbers import get_currency_precision
from hypothesis import given
from hypothesis import strategies as st

from binder.figures.added_up import MOST_ROWS, Measure, Scale, added_up, honest_scale
from binder.kitchen.binder import Binder
from binder.kitchen.money import parse_money
from tests.kitchen_binder import small_binder

SMALL = small_binder()


def in_currency(currency: str) -> Binder:
    return small_binder(replace(SMALL.settings, currency=currency))


def test_thirds_of_a_cent_add_up_to_the_cent_shown() -> None:
    rows = added_up(SMALL, [("a", 100 / 3), ("b", 100 / 3), ("c", 100 / 3)], 100, Scale(Measure.MONEY, 2))
    assert [row.shown for row in rows] == ["$0.34", "$0.33", "$0.33"]


def test_as_many_digits_as_it_takes() -> None:
    scale = honest_scale(SMALL, Measure.MONEY, 174.6, 175)
    assert scale.shown(SMALL, 174.6) == "$1.746"
    rows = added_up(SMALL, [("a", 174.6 / 2), ("b", 174.6 / 2)], 174.6, scale)
    assert [row.shown for row in rows] == ["$0.873", "$0.873"]


def test_minutes_and_grams_in_the_locales_own_numbers() -> None:
    german = small_binder(replace(SMALL.settings, locale="de_DE"))
    assert honest_scale(german, Measure.GRAMS, 1000.4, 1000).shown(german, 1000.4) == "1000,4 g"
    assert honest_scale(german, Measure.MINUTES, 30, 30).shown(german, 30) == "30 min"
    assert Scale(Measure.GRAMS, 0).shown(german, -12) == "−12 g"


def test_too_many_rows_are_put_together_and_still_add_up() -> None:
    rows = added_up(SMALL, [(f"food {at}", at + 0.25) for at in range(60)], 1785, Scale(Measure.MONEY, 2))
    assert len(rows) == MOST_ROWS
    assert rows[-1].text == "21 others"
    assert sum(row.amount for row in rows) == 1785
    assert [row.text for row in rows[:2]] == ["food 21", "food 22"]


@given(st.lists(st.floats(0, 10**6), min_size=1, max_size=60), st.sampled_from(["JPY", "EUR", "KWD", "USD"]), st.data())
def test_rows_shown_add_up_to_the_total_shown(parts: list[float], currency: str, data: st.DataObject) -> None:
    binder = in_currency(currency)
    digits = data.draw(st.integers(get_currency_precision(currency), 6))  # ISO 4217 minor units: 0, 2, 3 and 2
    scale, total = Scale(Measure.MONEY, digits), sum(parts)
    rows = added_up(binder, [("", part) for part in parts], total, scale)
    step = Decimal(1).scaleb(get_currency_precision(currency) - digits)
    assert sum((Decimal(repr(row.amount)) / step).to_integral_value() for row in rows) == scale.steps(binder, total)


@given(st.lists(st.integers(0, 10**6), min_size=1, max_size=30), st.sampled_from(["JPY", "EUR", "KWD"]))
def test_what_is_shown_reads_back_as_what_was_meant(parts: list[int], currency: str) -> None:
    binder = in_currency(currency)
    scale = Scale(Measure.MONEY, get_currency_precision(currency))
    rows = added_up(binder, [("", part) for part in parts], sum(parts), scale)
    read = [parse_money(row.shown, currency, "en_US") for row in rows]
    assert read == parts or sum(parts) == 0
    assert sum(read) == sum(parts)


@given(st.floats(0, 10**7), st.integers(0, 10**7), st.sampled_from(Measure))
def test_a_figure_is_never_shown_as_what_it_is_not(value: float, against: int, measure: Measure) -> None:
    scale = honest_scale(SMALL, measure, value, against)
    if abs(value - against) > 1e-6 * max(1, against):
        assert scale.shown(SMALL, value) != scale.shown(SMALL, against)
        assert (scale.steps(SMALL, value) < scale.steps(SMALL, against)) == (value < against)


def test_what_is_less_than_a_cent_is_not_shown_as_nothing() -> None:
    rows = added_up(small_binder(), [("beans", 99.7), ("salt", 0.2), ("water", 0.0)], 99.9, Scale(Measure.MONEY, 2))
    assert [row.shown for row in rows] == ["$1.00", "under $0.01", "$0.00"]
    assert sum(row.amount for row in rows) == 100
