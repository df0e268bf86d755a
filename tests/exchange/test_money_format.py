"""Numbers that a spreadsheet shows as money."""

from __future__ import annotations

import pytest
from babel.core import get_global

from binder.exchange.money_format import money_format
from binder.exchange.number_format import format_currency, is_date_format
from binder.exchange.price_currency import is_own_currency
from binder.kitchen.money import minor_digits


@pytest.mark.parametrize(
    ("currency", "locale", "code"),
    [
        ("USD", "en_US", "[$$]#,##0.00"),
        ("EUR", "de_DE", "#,##0.00 [$€]"),
        ("JPY", "ja_JP", "[$￥]#,##0"),
        ("KWD", "en_US", "[$KWD]#,##0.000"),
        ("INR", "en_IN", "[$₹]#,##0.00"),
        ("CHF", "de_CH", "[$CHF] #,##0.00"),
        ("USD", "no such place", "[$$]#,##0.00"),
    ],
)
def test_the_sign_stands_where_the_locale_has_it(currency: str, locale: str, code: str) -> None:
    assert money_format(currency, locale) == code


@pytest.mark.parametrize("locale", ["en_US", "de_DE", "ar_EG", "he_IL", "fa_IR", "lt_LT"])
def test_every_currency_comes_back_as_ones_own_with_its_digits(locale: str) -> None:
    for currency in sorted(get_global("all_currencies")):
        code = money_format(currency, locale)
        assert is_own_currency(format_currency(code), currency, locale), code
        assert not is_date_format(164, code)
        assert ("." in code.split("[")[0] + code.split("]")[-1]) == bool(minor_digits(currency)), code
