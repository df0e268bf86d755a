"""The numbers of a workbook's cells: what their format makes of them, in full, and as days."""

from __future__ import annotations

from datetime import date, timedelta
from decimal import Decimal, InvalidOperation
from typing import NamedTuple

from binder.exchange.number_format import format_currency, is_date_format
from binder.exchange.table_cell import ExactNumber, TableCell, Trouble, UnusableCell
from binder.exchange.workbook_parts import PartReader, damaged

_LAST_SERIAL = 2_958_465
"""31 December 9999 as a spreadsheet counts days from 1900."""

_LAST_SERIAL_SINCE_1904 = _LAST_SERIAL - 1462

_LEAP_THAT_WAS_NONE = 60
"""Spreadsheets count a 29 February 1900, which there was not; days after it are one too high (from memory)."""

_DIGITS_THAT_COUNT = 15


class Meaning(NamedTuple):
    """What a number with some format is: a day, or money of a currency (empty: the format shows none)."""

    is_day: bool
    currency: str


class Formats(PartReader):
    """What the numbers of each style of the workbook mean."""

    def __init__(self) -> None:
        super().__init__()
        self._codes: dict[int, str] = {}
        self._of_style: list[int] = []
        self._in_cell_styles = False

    def started(self, element: str, attributes: dict[str, str]) -> None:
        """A format with its code, or a style with its format."""
        if element == "numFmt":
            self._codes[int(attributes.get("numFmtId", "0"))] = attributes.get("formatCode", "")
        elif element == "cellXfs":
            self._in_cell_styles = True
        elif element == "xf" and self._in_cell_styles:
            self._of_style.append(int(attributes.get("numFmtId", "0")))

    def ended(self, element: str) -> None:
        """After the styles of cells there are those of other things."""
        if element == "cellXfs":
            self._in_cell_styles = False

    def of(self, style: str) -> Meaning:
        """What numbers of a style mean."""
        place = int(style)
        number = self._of_style[place] if 0 <= place < len(self._of_style) else 0
        code = self._codes.get(number, "")
        return Meaning(is_date_format(number, code), format_currency(code))


def number_cell(value: str, meaning: Meaning, *, since_1904: bool) -> TableCell:
    """What a cell holds, by its number and what its style means."""
    if meaning.is_day:
        return day_of_serial(value, since_1904=since_1904)
    return ExactNumber(exact_number(value), meaning.currency)


def exact_number(value: str) -> str:
    """A number as a spreadsheet shows it in full: 15 digits that count, and no exponent."""
    if len(value) <= _DIGITS_THAT_COUNT and value.replace(".", "", 1).isdecimal() and value.isascii():
        return value
    try:
        return format(Decimal(f"{float(value):.15g}"), "f")
    except (ValueError, InvalidOperation, OverflowError):
        raise damaged() from None


def day_of_serial(value: str, *, since_1904: bool) -> date | UnusableCell:
    """The day that a spreadsheet's count of days means."""
    serial = float(value)
    if not 1 <= serial < (_LAST_SERIAL_SINCE_1904 if since_1904 else _LAST_SERIAL) + 1:
        return UnusableCell(Trouble.ERROR, value[:20])
    days = int(serial)
    if since_1904:
        return date(1904, 1, 1) + timedelta(days=days)
    return date(1899, 12, 31 if days < _LEAP_THAT_WAS_NONE else 30) + timedelta(days=days)
