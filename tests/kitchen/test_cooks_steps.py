"""A little less is an amount that can be measured."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.kitchen.amount import Amount, parse_amount
from binder.kitchen.amount_text import amount_text
from binder.kitchen.cooks_steps import measures_below
from binder.kitchen.settings import Measures


@pytest.mark.parametrize(
    ("count", "unit", "below"),
    [
        (5, "oz", [4.75, 4.5, 4.25, 4]),
        (1, "cup", [3 / 4, 2 / 3, 1 / 2]),
        (1.25, "us cup", [1, 3 / 4, 2 / 3]),
        (0.25, "cup", [1 / 8]),
        (2, "tbsp", [1.5, 1]),
        (1, "tsp", [3 / 4, 1 / 2]),
        (0.125, "tsp", []),
        (250, "g", [249, 248, 247]),
        (20, "g", [19.5, 19]),
        (2, "g", [1.9, 1.8]),
        (1200, "g", [1190, 1180]),
        (1001, "g", [1000, 999]),
        (1.2, "kg", [1.19, 1.18]),
        (0.5, "l", [0.499]),
        (1, "lb", [7 / 8, 6 / 8, 5 / 8, 4 / 8]),
        (3, "each", [2.5, 2, 1.5]),
        (5, "clove", [4, 3]),
        (1, "(14.5 oz) can", []),
        (2, "(14.5 oz) can", [1]),
        (1.5, "onion of my own", [1]),
    ],
)
def test_the_next_measures_down(count: float, unit: str, below: list[float]) -> None:
    found = list(measures_below(count, unit, least=count / 2))[: len(below) or None]
    assert found == pytest.approx(below)


UNITS = st.sampled_from(["g", "kg", "ml", "l", "cup", "tbsp", "tsp", "oz", "lb", "fl oz", "clove", "(14 oz) can", "x"])


@given(st.floats(0.001, 2000), UNITS)
def test_they_fall_and_stay_within_half(count: float, unit: str) -> None:
    found = list(measures_below(count, unit, least=count / 2))
    assert found == sorted(set(found), reverse=True)
    assert all(count / 2 * 0.999999 <= amount < count for amount in found)


@given(st.floats(0.25, 2000), st.sampled_from(["g", "ml", "cup", "tbsp", "tsp", "oz", "clove"]))
def test_each_is_written_and_read_back_as_it_is(count: float, unit: str) -> None:
    for amount in list(measures_below(count, unit, least=count / 2))[:20]:
        read = parse_amount(amount_text(Amount(amount, amount, unit)), Measures.US_CUSTOMARY).high
        assert read == pytest.approx(amount, rel=2e-3)
