"""Amounts written as a cook would."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.kitchen.amount import Amount, parse_amount
from binder.kitchen.amount_text import (
    NumberStyle,
    amount_text,
    cooks_measure,
    grams_text,
    millilitres_text,
    sensible_count,
    sensible_grams,
)
from binder.kitchen.settings import Measures
from binder.kitchen.units import unit

US = Measures.US_CUSTOMARY


@pytest.mark.parametrize(
    ("amount", "text"),
    [
        (Amount(1.5, 1.5, "cup"), "1½ cups"),
        (Amount(1 / 3, 1 / 3, "cup"), "⅓ cup"),
        (Amount(1, 1, "cup"), "1 cup"),
        (Amount(2, 3, "clove"), "2–3 cloves"),
        (Amount(250, 250, "g"), "250 g"),
        (Amount(137, 137, "g"), "137 g"),
        (Amount(0.5, 0.5, "l"), "0.5 l"),
        (Amount(2, 2, "(14 oz) can"), "2 (14 oz) cans"),
        (Amount(3, 3, ""), "3"),
        (Amount(2, 2, "large"), "2 large"),
        (Amount(2, 2, "leaf"), "2 leaves"),
        (Amount(None, None, ""), ""),
    ],
)
def test_reads_like_a_recipe(amount: Amount, text: str) -> None:
    assert amount_text(amount) == text


def test_a_decimal_comma_where_the_locale_has_one() -> None:
    assert amount_text(Amount(0.5, 0.5, "kg"), NumberStyle(",")) == "0,5 kg"
    assert grams_text(1250, NumberStyle(",")) == "1,25 kg"


@pytest.mark.parametrize(
    ("grams", "text"),
    [
        (0.34, "0.3 g"),
        (3.2, "3 g"),
        (17.3, "17.5 g"),
        (137.4, "137 g"),
        (612.4, "612 g"),
        (1253, "1.25 kg"),
        (12_640, "12.6 kg"),
    ],
)
def test_grams_come_to_a_step_a_scale_can_follow(grams: float, text: str) -> None:
    assert grams_text(grams) == text


@given(st.floats(0.05, 1e6))
def test_a_sensible_step_is_never_far_from_the_weight(grams: float) -> None:
    assert abs(sensible_grams(grams) - grams) <= max(0.06, grams * 0.13)
    assert sensible_grams(grams) > 0


@pytest.mark.parametrize(
    ("millilitres", "text"),
    [
        (354.88, "1½ cups"),  # 1.5 US cups of 236.5882365 ml: NIST Handbook 44
        (14.79, "1 tbsp"),
        (4.93, "1 tsp"),
        (2.46, "½ tsp"),
        (0.2, "1 pinch"),
        (236.59 + 29.57, "1 cup + 2 tbsp"),
        (78.86, "⅓ cup"),
        (0.84 * 236.5882365, "¾ cup + 1½ tbsp"),
        (37.0, "2½ tbsp"),
        (2.33 * 14.78676478125, "2 tbsp + 1 tsp"),
        (1.60 * 236.5882365, "1½ cups + 1½ tbsp"),
        (3.7 * 946.352946, "3½ quarts + ¾ cup"),
    ],
)
def test_volumes_come_in_the_measures_of_the_drawer(millilitres: float, text: str) -> None:
    assert cooks_measure(millilitres, US) == text


def test_metric_kitchens_pour_millilitres_and_spoon_the_rest() -> None:
    assert cooks_measure(180, Measures.METRIC) == "180 ml"
    assert cooks_measure(15, Measures.METRIC) == "1 tbsp"
    assert cooks_measure(1500, Measures.METRIC) == "1.5 l"
    assert millilitres_text(80) == "80 ml"


@given(st.floats(0.7, 50_000), st.sampled_from(list(Measures)))
def test_a_cooks_measure_is_always_said(millilitres: float, measures: Measures) -> None:
    assert cooks_measure(millilitres, measures)


@given(st.floats(2.5, 20_000), st.sampled_from(list(Measures)))
def test_a_cooks_measure_is_near_the_volume(millilitres: float, measures: Measures) -> None:
    total = 0.0
    for part in cooks_measure(millilitres, measures).split(" + "):
        amount = parse_amount(part, measures)
        total += (amount.high or 0.0) * unit(amount.unit, measures).factor
    assert total == pytest.approx(millilitres, rel=0.13)


def test_counts_keep_to_fractions_a_cook_can_cut() -> None:
    assert sensible_count(2.47) == 2.5
    assert sensible_count(12.4) == 12
    assert sensible_count(0.01) > 0
