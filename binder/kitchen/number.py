"""Numbers as cooks write and read them: `1 1/2`, `1½`, `0,5`, and back."""

from __future__ import annotations

import math
import re
from fractions import Fraction

from binder.kitchen.errors import BinderError
from binder.kitchen.shapes import LARGEST_AMOUNT
from binder.kitchen.wording import _

FRACTION_SIGNS = {
    "½": Fraction(1, 2),
    "⅓": Fraction(1, 3),
    "⅔": Fraction(2, 3),
    "¼": Fraction(1, 4),
    "¾": Fraction(3, 4),
    "⅕": Fraction(1, 5),
    "⅖": Fraction(2, 5),
    "⅗": Fraction(3, 5),
    "⅘": Fraction(4, 5),
    "⅙": Fraction(1, 6),
    "⅚": Fraction(5, 6),
    "⅛": Fraction(1, 8),
    "⅜": Fraction(3, 8),
    "⅝": Fraction(5, 8),
    "⅞": Fraction(7, 8),
}
_SIGNS = "".join(FRACTION_SIGNS)
_COOKS_FRACTIONS = {value: sign for sign, value in FRACTION_SIGNS.items() if value.denominator in {2, 3, 4, 8}}

NUMBER_PATTERN = rf"(?:\d+[ -]\d+[/⁄]\d+|\d+[/⁄]\d+|\d+\s?[{_SIGNS}]|[{_SIGNS}]|\d[\d.,']*\d|\d+)"
"""Matches one number as a cook types it; `parse_number` gives its value."""

_LONGEST_NUMBER = 40
"""Characters; what is longer is no number, and reckoning with its digits would take time for nothing."""

_MIXED = re.compile(r"^(?:(?P<whole>\d+)[ -])?(?P<over>\d+)[/⁄](?P<under>\d+)$")
_SIGNED = re.compile(rf"^(?P<whole>\d+)?\s?(?P<sign>[{_SIGNS}])$")


class UnreadableNumberError(BinderError):
    """Text that is no number a kitchen uses."""

    def __init__(self, text: str, why: str) -> None:
        super().__init__(_("“{text}” is not an amount: {why}").format(text=text[:60], why=why))


def parse_number(text: str, *, decimal_comma: bool = False) -> float:
    """The value of a number as a cook types it, finite and from 0 to ten million.

    A comma or a point is the decimal mark; before exactly three digits the one that is not the locale's own decimal
    mark (`decimal_comma`) groups thousands. Raises UnreadableNumberError.
    """
    plain = text.strip()
    value = _value(plain, decimal_comma=decimal_comma) if len(plain) <= _LONGEST_NUMBER else None
    if value is None:
        raise UnreadableNumberError(text, _("write a number such as 2, 1½, 1 1/2 or 0.5."))
    if value > LARGEST_AMOUNT:
        raise UnreadableNumberError(text, _("it is larger than any kitchen holds. Write a smaller one."))
    return value


def _value(text: str, *, decimal_comma: bool) -> float | None:
    mixed, signed = _MIXED.match(text), _SIGNED.match(text)
    if mixed:
        under = int(mixed["under"])
        return float(int(mixed["whole"] or 0) + Fraction(int(mixed["over"]), under)) if under else None
    if signed:
        return float(int(signed["whole"] or 0) + FRACTION_SIGNS[signed["sign"]])
    return _decimal(text, decimal_comma=decimal_comma)


def _decimal(text: str, *, decimal_comma: bool) -> float | None:
    grouping = "." if decimal_comma else ","
    plain = text.replace("'", "")
    if re.fullmatch(rf"\d{{1,3}}(?:\{grouping}\d{{3}})+(?:[.,]\d+)?", plain) and not plain.startswith("0"):
        plain = plain.replace(grouping, "")
    plain = plain.replace(",", ".")
    return float(plain) if re.fullmatch(r"\d+(?:\.\d+)?", plain) and plain.isascii() else None


def in_fractions(value: float) -> str | None:
    """`value` as whole and eighths or thirds (`1½`, `⅓`); None where it is neither."""
    whole, rest = divmod(value, 1)
    for fraction, sign in _COOKS_FRACTIONS.items():
        if abs(rest - float(fraction)) < 0.002:  # noqa: PLR2004 - 0.333 and 0.67 are thirds, 0.334 typed by hand too
            return f"{int(whole)}{sign}" if whole else sign
    nearest = round(value)
    return str(nearest) if abs(value - nearest) < 1e-6 and nearest > 0 else None  # noqa: PLR2004


def in_decimals(value: float, *, digits: int, decimal_mark: str = ".") -> str:
    """`value` with at most `digits` decimals, none of them a trailing zero; halves round up."""
    scaled = math.floor(value * 10**digits + 0.5 + 1e-9)
    whole, rest = divmod(scaled, 10**digits)
    decimals = str(rest).rjust(digits, "0").rstrip("0") if digits else ""
    return f"{whole}{decimal_mark}{decimals}" if decimals else str(whole)
