"""Tax by section: contained in the price or added to it, rounded once a rate."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.figures.tax import TaxRow, food_tax_rate, is_taxed, tax_on, tax_rate, tax_rows, with_tax, without_tax
from binder.kitchen.binder import Binder
from binder.kitchen.budget import TaxRate
from binder.kitchen.food import Section
from tests.kitchen_binder import small_binder


def taxed(*, contained: bool) -> Binder:
    return small_binder(
        replace(small_binder().shoots["day"], prices_taxed=contained),
        TaxRate(id="all", shoot="day", rate=0.05),
        TaxRate(id="tins", shoot="day", section=Section.TINS_AND_JARS, rate=0.2),
    )


def test_a_section_has_its_own_rate_or_that_of_all_else() -> None:
    binder = taxed(contained=True)
    assert food_tax_rate(binder, "day", "tahini") == 0.2
    assert food_tax_rate(binder, "day", "flour") == 0.05
    assert tax_rate(binder, "day") == 0.05
    assert is_taxed(binder, "day")


def test_without_any_rate_nothing_is_taxed() -> None:
    assert tax_rate(small_binder(), "day", "produce") == 0
    assert not is_taxed(small_binder(), "day")


def test_a_price_on_the_shelf_with_and_without_tax() -> None:
    contained, added = taxed(contained=True), taxed(contained=False)
    assert with_tax(contained, "day", "tahini", 600) == 600
    assert without_tax(contained, "day", "tahini", 600) == pytest.approx(500)
    assert with_tax(added, "day", "tahini", 600) == pytest.approx(720)
    assert without_tax(added, "day", "tahini", 600) == 600


def test_halves_round_up_whatever_floats_say() -> None:
    assert 50 * 0.29 < 14.5  # so a float would round it down
    assert tax_on(50, 0.29, contained=False) == 15
    assert tax_on(107, 0.07, contained=True) == 7


def test_tax_is_rounded_once_for_each_rate() -> None:
    rows = tax_rows([(0.07, 10), (0.07, 10), (0.07, 10), (0.2, 99), (0, 1000)], contained=False)
    assert rows == (TaxRow(0.07, 30, 2), TaxRow(0.2, 99, 20))


@given(st.integers(0, 10**9), st.integers(0, 100))
def test_tax_added_is_the_tax_contained_in_the_sum(net: int, percent: int) -> None:
    rate = percent / 100
    gross = net + tax_on(net, rate, contained=False)
    assert abs(tax_on(gross, rate, contained=True) - tax_on(net, rate, contained=False)) <= 1
