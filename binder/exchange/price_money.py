"""What a price in a list comes to, where it is of a pack and has one meaning; any other is asked for again."""

from __future__ import annotations

import re
from decimal import Decimal
from typing import TYPE_CHECKING

from binder.exchange.table_cell import ExactNumber, RefusedRowError
from binder.kitchen.money import UnreadablePriceError, minor_digits, parse_money, uses_decimal_comma
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.kitchen.settings import Settings

_PLAIN_LOCALE = "en_US"
"""How a workbook's own numbers are written out: with a point, and nothing that groups."""

_BY_MEASURE = re.compile(r"\d\D*(?:/|\bper\b|\bpro\b|\ba\b|\beach\b|\bea\b)\D*$", re.IGNORECASE)
_OFFER = re.compile(r"^\W*\d+\s*(?:for|@|x|×|/)\W*\d", re.IGNORECASE)
_NUMBER = re.compile(r"[.,]?\d[\d.,'’\s]*")
_THOUSAND = 3
_MOST_ROUNDED = Decimal("0.01")
"""The part of a price that rounding may change: more is a price of another currency, or of something else."""


def price_in_list(cell: str | ExactNumber, settings: Settings) -> tuple[int, bool]:
    """The price in minor units, and whether it was rounded to them. Raises RefusedRowError, UnreadablePriceError."""
    exact = isinstance(cell, ExactNumber)
    text = cell.text if isinstance(cell, ExactNumber) else cell
    locale = _PLAIN_LOCALE if exact else settings.locale
    minor = _parsed(text, settings.currency, locale)
    value = _decimal(text, comma=uses_decimal_comma(locale))
    if value is not None and not exact:
        _require_one_meaning(text, value, settings.currency)
    if not minor and not value:
        raise RefusedRowError(_("its price is nothing. Write what the pack costs, or take the row out."))
    off = Decimal(0) if value is None else abs(Decimal(minor).scaleb(-minor_digits(settings.currency)) - value)
    if value and off > value * _MOST_ROUNDED:
        says = _("its price, {price}, has more decimals than {currency} has. Round it, or change it over.")
        raise RefusedRowError(says.format(price=text[:40], currency=settings.currency))
    return minor, off > 0


def _parsed(text: str, currency: str, locale: str) -> int:
    try:
        return parse_money(text, currency, locale)
    except UnreadablePriceError:
        if not text.strip("-−–— "):
            raise UnreadablePriceError(text, _("write a number, or take the row out.")) from None
        if _OFFER.match(text):
            raise UnreadablePriceError(text, _("it is of several packs. Write what one costs.")) from None
        if _BY_MEASURE.search(text):
            raise UnreadablePriceError(text, _("it has a unit beside it. Write what the pack costs, alone.")) from None
        raise


def _decimal(text: str, *, comma: bool) -> Decimal | None:
    """The value as `parse_money` has read it, where it has decimals; None where all its digits are whole."""
    found = _NUMBER.search(text)
    number = re.sub(r"[^\d.,]", "", found[0]) if found else ""
    last = max(number.rfind("."), number.rfind(","))
    if last < 0 or number.count(number[last]) > 1:
        return None
    whole, tail = re.sub(r"\D", "", number[:last]), number[last + 1 :]
    groups = number[last] != ("," if comma else ".") and len(tail) == _THOUSAND and whole == number[:last]
    return None if groups and whole.strip("0") else Decimal(f"{whole or '0'}.{tail or '0'}")


def _require_one_meaning(text: str, value: Decimal, currency: str) -> None:
    """`1.234` of a currency with two decimals may be a thousand that another country wrote."""
    tail = -int(value.as_tuple().exponent)
    if tail == _THOUSAND > minor_digits(currency) and 1 <= value < 10**_THOUSAND:
        says = _("it may be {thousands} or {decimal}. Write it with as many decimals as {currency} has.")
        thousands = format(value.scaleb(_THOUSAND), "f")
        raise UnreadablePriceError(text, says.format(thousands=thousands, decimal=text.strip(), currency=currency))
