"""Workbooks of ours: numbers are numbers, money is shown as money, and no text can run."""

from __future__ import annotations

import io
from typing import TYPE_CHECKING

from binder.exchange.money_format import money_format
from binder.exchange.shopping_table import Kind
from binder.exchange.text_safety import safe_cell

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence
    from datetime import date

    from openpyxl.workbook import Workbook
    from openpyxl.worksheet.worksheet import Worksheet

    from binder.exchange.shopping_table import Column, Value
    from binder.kitchen.binder import Binder

_DAY = "yyyy-mm-dd"
_NO_CHARACTERS = dict.fromkeys((0xFFFE, 0xFFFF))
"""What XML may not hold, of what a text of ours may."""


def new_workbook() -> Workbook:
    """A workbook with one empty sheet."""
    from openpyxl import Workbook

    book = Workbook()
    book.properties.creator = "Binder"
    return book


def saved(book: Workbook) -> bytes:
    """The bytes of a finished workbook."""
    written = io.BytesIO()
    book.save(written)
    return written.getvalue()


def number_formats(binder: Binder) -> dict[Kind, str]:
    """How each kind of value is shown; text as it is."""
    money = money_format(binder.settings.currency, binder.settings.locale)
    return {Kind.DAY: _DAY, Kind.COUNT: "0", Kind.GRAMS: "#,##0.0", Kind.MONEY: money}


def fill(
    sheet: Worksheet,
    columns: Sequence[Column],
    rows: Iterable[Sequence[Value | date]],
    formats: dict[Kind, str],
) -> None:
    """Write headings and rows, with formats and widths; the headings stay in sight."""
    from openpyxl.styles import Alignment, Font
    from openpyxl.utils import get_column_letter

    sheet.append([column.heading for column in columns])
    for number, row in enumerate(rows, start=2):
        for place, (column, value) in enumerate(zip(columns, row, strict=True), start=1):
            if value is None:
                continue
            cell = sheet.cell(number, place, _shown(value))
            cell.number_format = formats.get(column.kind, "General")
    for place, column in enumerate(columns, start=1):
        heading = sheet.cell(1, place)
        heading.font, heading.alignment = Font(bold=True), Alignment(wrap_text=True, vertical="bottom")
        sheet.column_dimensions[get_column_letter(place)].width = column.characters
    sheet.freeze_panes = "A2"
    sheet.auto_filter.ref = sheet.dimensions


def _shown(value: Value | date) -> Value | date:
    """A text made safe; all else as it is."""
    return safe_cell(value.translate(_NO_CHARACTERS)) if isinstance(value, str) else value
