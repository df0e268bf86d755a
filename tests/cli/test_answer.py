"""An answer for programs: money that loses nothing, weights, and the same bytes each time."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.cli.answer import answer_of, paid, print_answer, weighed, worked_out
from tests.kitchen_binder import small_binder


@pytest.mark.parametrize(
    ("minor", "currency", "written"),
    [
        (349, "USD", "3.49"),
        (5, "EUR", "0.05"),
        (120, "JPY", "120"),
        (1250, "KWD", "1.250"),
        (10**13, "USD", "100000000000.00"),
    ],
)
def test_money_that_is_paid_has_exactly_the_currencys_digits(minor: int, currency: str, written: str) -> None:
    assert paid(minor, currency) == written


@pytest.mark.parametrize(
    ("minor", "currency", "written"),
    [
        (81.75, "USD", "0.8175"),
        (175.0, "USD", "1.75"),
        (100.0, "USD", "1.00"),
        (0.0, "USD", "0.00"),
        (-0.00000000001, "USD", "0.00"),
        (-3.5, "USD", "-0.035"),
        (81.75, "JPY", "81.75"),
        (80.0, "JPY", "80"),
        (100 / 3, "EUR", "0.33333333333"),
        (1e22, "USD", "100000000000000000000.00"),
    ],
)
def test_money_that_is_worked_out_keeps_what_matters(minor: float, currency: str, written: str) -> None:
    assert worked_out(minor, currency) == written


@given(st.floats(0, 1e6), st.sampled_from(["USD", "JPY", "KWD"]))
def test_money_that_is_worked_out_is_within_half_a_billionth_of_the_minor_unit(minor: float, currency: str) -> None:
    digits = {"USD": 2, "JPY": 0, "KWD": 3}[currency]
    written = worked_out(minor, currency)
    assert written is not None
    assert abs(Decimal(written).scaleb(digits) - Decimal(minor)) <= Decimal("0.5e-9")


@given(st.integers(1, 100_000), st.floats(1.1e-9, 1e-3))
def test_a_cost_over_its_cap_is_greater_as_a_string_too(cap: int, beyond: float) -> None:
    cost, shown = worked_out(cap * (1 + beyond), "USD"), paid(cap, "USD")
    assert cost is not None
    assert shown is not None
    assert Decimal(cost) > Decimal(shown)


def test_what_is_not_known_is_null() -> None:
    assert paid(None, "USD") is None
    assert worked_out(None, "USD") is None
    assert worked_out(float("inf"), "USD") is None
    assert weighed(None) is None
    assert weighed(float("nan")) is None


def test_weights_are_rounded_to_a_millionth_of_a_gram() -> None:
    assert weighed(453.59237000000004) == 453.59237
    assert str(weighed(-0.0)) == "0.0"


def test_every_answer_names_its_binder_shoot_and_currency_first(capsys: pytest.CaptureFixture[str]) -> None:
    small = small_binder()
    answer = answer_of(small, small.shoots["day"], items=["½"])
    assert list(answer) == ["binder", "shoot", "currency", "items"]
    print_answer(answer)
    assert '"½"' in capsys.readouterr().out
