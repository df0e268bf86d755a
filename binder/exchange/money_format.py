"""The number format that makes a spreadsheet show a number as money of a currency."""

from __future__ import annotations

import re

from binder.kitchen.locale import known_locale
from binder.kitchen.money import minor_digits


def money_format(currency: str, locale: str) -> str:
    """A format code with the currency's sign where the locale has it, and its own decimals: `[$€]`, `[$$]`.

    Marks for decimals and thousands are always written `.` and `,` here; a spreadsheet shows its own. Raises
    UnknownCurrencyError.
    """
    from babel.numbers import get_currency_symbol

    digits, known = minor_digits(currency), known_locale(locale)
    pattern = known.currency_formats["standard"].pattern.split(";")[0]
    number = "#,##0" + ("." + "0" * digits if digits else "")
    sign = get_currency_symbol(currency, locale=known)
    shown = re.sub(r"\s", " ", _without_marks(re.sub(r"[#,0.]+", number, pattern, count=1)))
    return shown.replace("¤", f"[${sign}]")


def _without_marks(text: str) -> str:
    """Without the marks of direction that some locales write."""
    return re.sub("[\u061c\u200e\u200f]", "", text)
