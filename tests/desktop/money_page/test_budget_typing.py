"""A cost beside the food typed whole, and what is shown of it meanwhile."""

from __future__ import annotations

import pytest

from binder.desktop.money_page.budget_typing import typed_line, understood_line
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.edits.records import set_fields
from binder.kitchen.errors import BinderError


@pytest.mark.parametrize(
    ("text", "name", "quantity", "rate"),
    [
        ("gas bottle, 2 × 24.50", "gas bottle", 2.0, 2450),
        ("gas bottle; 2 x $24.50", "gas bottle", 2.0, 2450),
        ("cook's assistant: 6 h @ 22", "cook's assistant", 6.0, 2200),
        ("studio kitchen: 800", "studio kitchen", 1.0, 80_000),
        ("studio kitchen, by the day, 1,200.00", "studio kitchen, by the day", 1.0, 120_000),
        ("props", "props", 1.0, 0),
        ("plates, white and blue", "plates, white and blue", 1.0, 0),
        ("half a day of cleaning, ½ × 120", "half a day of cleaning", 0.5, 12_000),
    ],
)
def test_a_line_is_typed_whole(chickpeas: Binder, text: str, name: str, quantity: float, rate: int) -> None:
    after = apply(chickpeas, typed_line(chickpeas, chickpeas.shoots["day"], text))
    line = next(iter(after.budget_lines.values()))
    assert (line.name, line.quantity, line.rate) == (name, quantity, rate)


def test_a_decimal_comma_is_no_end_of_a_name(chickpeas: Binder) -> None:
    german = apply(chickpeas, set_fields("x", chickpeas.settings, locale="de_DE", currency="EUR"))
    after = apply(german, typed_line(german, german.shoots["day"], "Gasflasche, 2 × 24,50 €"))
    line = next(iter(after.budget_lines.values()))
    assert (line.name, line.quantity, line.rate) == ("Gasflasche", 2.0, 2450)


@pytest.mark.parametrize("text", ["", "   ", "gas, 2 × 1.2.3"])
def test_what_is_no_cost_is_refused(chickpeas: Binder, text: str) -> None:
    with pytest.raises(BinderError):
        typed_line(chickpeas, chickpeas.shoots["day"], text)


def test_what_is_understood_is_shown_while_it_is_typed(chickpeas: Binder) -> None:
    assert understood_line(chickpeas, "gas bottle, 2 × 24.50") == "gas bottle: 2 at $24.50"
    assert understood_line(chickpeas, "gas bottle") == ""
    assert understood_line(chickpeas, "gas, 2 × 1.2.3") == ""
