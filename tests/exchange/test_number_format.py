"""What number formats say."""

from __future__ import annotations

import pytest
from openpyxl.styles.numbers import BUILTIN_FORMATS
from openpyxl.styles.numbers import is_date_format as openpyxl_says_date

from binder.exchange.number_format import format_currency, is_date_format


@pytest.mark.parametrize(
    "code", ["dd/mm/yyyy", "d. mmm yy", "[h]:mm", "yyyy-mm-dd;@", '[$-409]mmmm d, yyyy;"x"', "hh:mm"]
)
def test_days_are_days(code: str) -> None:
    assert is_date_format(164, code)
    assert openpyxl_says_date(code)


@pytest.mark.parametrize(
    "code", ["General", "0.00", '0 "days"', r"0\d", "#,##0.00 [$USD]", "[Red]0.00", '"Sum:" 0', "@"]
)
def test_numbers_are_none(code: str) -> None:
    assert not is_date_format(164, code)


def test_the_formats_every_workbook_has_are_known_by_their_number() -> None:
    for number, code in BUILTIN_FORMATS.items():
        assert is_date_format(number, "") == openpyxl_says_date(code), code


@pytest.mark.parametrize(
    ("code", "shown"),
    [
        ("[$€-407] #,##0.00", "€"),
        ('#,##0.00 "€"', "€"),
        (r"#,##0.00\ \€", "€"),
        ("#,##0.00 [$EUR]", "EUR"),
        ('"$"#,##0.00', "$"),
        ("$#,##0.00_);($#,##0.00)", "$"),
        ('_-* #,##0.00 "kr"_-', "kr"),
        ("[$-409]0.00", ""),
        ('0.00 "kg"', ""),
        ("General", ""),
        ("[Red]0.00", ""),
        ("", ""),
    ],
)
def test_the_money_beside_a_number_is_seen(code: str, shown: str) -> None:
    assert format_currency(code) == shown
