"""A price of a list is of one pack and has one meaning, or it is asked for again."""

from __future__ import annotations

import pytest

from binder.exchange.price_money import price_in_list
from binder.exchange.table_cell import ExactNumber
from binder.kitchen.errors import BinderError
from binder.kitchen.settings import SETTINGS_ID, Settings


def settings(currency: str = "USD", locale: str = "en_US") -> Settings:
    return Settings(id=SETTINGS_ID, name="Binder", currency=currency, locale=locale)


US, GERMAN = settings(), settings("EUR", "de_DE")
YEN, DINAR = settings("JPY", "ja_JP"), settings("KWD", "en_US")


@pytest.mark.parametrize(
    ("cell", "where", "minor"),
    [
        ("3.49", US, 349),
        ("3,49", US, 349),
        ("$ 3.49", US, 349),
        (".5", US, 50),
        ("5.", US, 500),
        ("1,234", US, 123_400),
        ("1 234.50", US, 123_450),
        ("1.234,50", GERMAN, 123_450),
        ("1.234", GERMAN, 123_400),
        ("3,49 €", GERMAN, 349),
        ("349", YEN, 349),
        ("1,349", YEN, 1349),
        ("349.00", YEN, 349),
        ("1.250", DINAR, 1250),
        ("12.5", DINAR, 12_500),
        (ExactNumber("3.49"), GERMAN, 349),
    ],
)
def test_a_price_is_what_it_says(cell: str | ExactNumber, where: Settings, minor: int) -> None:
    assert price_in_list(cell, where) == (minor, False)


@pytest.mark.parametrize(
    ("cell", "where", "minor"),
    [
        ("3.4999", US, 350),
        ("1,2345", GERMAN, 123),
        ("349.5", YEN, 350),
        (ExactNumber("1.005"), US, 101),
        ("1.2505", DINAR, 1251),
    ],
)
def test_a_price_that_is_rounded_says_so(cell: str | ExactNumber, where: Settings, minor: int) -> None:
    assert price_in_list(cell, where) == (minor, True)


TWO = "Write it with as many decimals as"
MORE = "Round it, or change it over."


@pytest.mark.parametrize(
    ("cell", "where", "why"),
    [
        ("1.234", US, f"“1.234” is not a price: it may be 1234 or 1.234. {TWO} USD has."),
        ("1,234", GERMAN, f"“1,234” is not a price: it may be 1234 or 1,234. {TWO} EUR has."),
        ("3.49", YEN, f"its price, 3.49, has more decimals than JPY has. {MORE}"),
        (ExactNumber("3.49"), YEN, f"its price, 3.49, has more decimals than JPY has. {MORE}"),
        ("0.005", GERMAN, f"its price, 0.005, has more decimals than EUR has. {MORE}"),
        ("0.004", US, f"its price, 0.004, has more decimals than USD has. {MORE}"),
        ("0", US, "its price is nothing. Write what the pack costs, or take the row out."),
        ("0.00", US, "its price is nothing. Write what the pack costs, or take the row out."),
        ("-", US, "“-” is not a price: write a number, or take the row out."),
        ("3 49", US, "“3 49” is not a price: what parts its digits is neither a point nor a comma. Take it out."),
        ("2 for 5", US, "“2 for 5” is not a price: it is of several packs. Write what one costs."),
        ("2/$5", US, "“2/$5” is not a price: it is of several packs. Write what one costs."),
        ("3.49/lb", US, "“3.49/lb” is not a price: it has a unit beside it. Write what the pack costs, alone."),
        ("3.49 each", US, "“3.49 each” is not a price: it has a unit beside it. Write what the pack costs, alone."),
        ("-3.49", US, "“-3.49” is not a price: a price is not below zero."),
    ],
)
def test_a_price_with_two_meanings_or_none_is_asked_for(cell: str | ExactNumber, where: Settings, why: str) -> None:
    with pytest.raises(BinderError) as caught:
        price_in_list(cell, where)
    assert caught.value.says == why
