"""No euro is taken for a dollar."""

from __future__ import annotations

import pytest

from binder.exchange.price_currency import currency_shown, is_own_currency, money_named


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("3.49 €", "€"),
        ("EUR3.49", "EUR"),
        ("R$ 5", "R$"),
        ("CA$5", "CA$"),
        ("12 kr", "kr"),
        ("5 zł", "zł"),
        ("₹5", "₹"),
        ("3.49", ""),
        ("three", ""),
        ("KGS of flour", "KGS"),
        ("BAG", ""),
        ("", ""),
    ],
)
def test_a_currency_is_seen_in_a_text(text: str, shown: str) -> None:
    assert currency_shown(text) == shown


@pytest.mark.parametrize(
    ("shown", "currency", "own"),
    [
        ("$", "USD", True),
        ("US$", "USD", True),
        ("usd", "USD", True),
        ("$", "CAD", True),
        ("CA$", "CAD", True),
        ("CA$", "USD", False),
        ("CAD", "USD", False),
        ("€", "EUR", True),
        ("€", "USD", False),
        ("¥", "JPY", True),
        ("euro", "EUR", True),
        ("Euros", "EUR", True),
        ("dollars", "USD", True),
        ("US dollars", "USD", True),
        ("Canadian dollars", "USD", False),
        ("euros", "USD", False),
        ("cents", "USD", False),
        ("", "EUR", False),
        ("1", "EUR", False),
        (".", "EUR", False),
    ],
)
def test_a_sign_is_ones_own_or_it_is_not(shown: str, currency: str, own: bool) -> None:
    assert is_own_currency(shown, currency, "en_US") is own


@pytest.mark.parametrize(
    ("note", "named"),
    [
        ("EUR", "EUR"),
        ("in €", "€"),
        ("euros", "euros"),
        ("US dollars", "US dollars"),
        ("cents", "cents"),
        ("Pence", "Pence"),
        ("net", ""),
        ("today", ""),
        ("", ""),
    ],
)
def test_a_heading_says_which_money_it_is_about(note: str, named: str) -> None:
    assert money_named(note) == named
