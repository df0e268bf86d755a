"""The shopping list as an XLSX workbook: numbers are numbers, money is shown as money, and no text can run."""

from __future__ import annotations

import io
from typing import TYPE_CHECKING

from binder.exchange.money_format import money_format
from binder.exchange.shopping_lines import shopping_trips
from binder.exchange.shopping_table import Column, Kind, shopping_columns, shopping_rows, whole_money
from binder.exchange.text_safety import safe_cell
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence
    from datetime import date

    from openpyxl.workbook import Workbook
    from openpyxl.worksheet.worksheet import Worksheet

    from binder.exchange.shopping_table import Value
    from binder.kitchen.binder import Binder

_DAY = "yyyy-mm-dd"
_NO_CHARACTERS = dict.fromkeys((0xFFFE, 0xFFFF))
"""What XML may not hold, of what a text of ours may."""


def shopping_workbook(binder: Binder, shoot_id: str) -> bytes:
    """An XLSX file: a sheet with the list, and one with what each trip comes to."""
    from openpyxl import Workbook

    book = Workbook()
    book.properties.creator = "Binder"
    formats = _formats(binder)
    listed = book.worksheets[0]
    listed.title = _("Shopping list")
    _fill(listed, shopping_columns(binder), shopping_rows(binder, shoot_id), formats)
    _fill(book.create_sheet(_("Trips")), _trip_columns(binder), _trip_rows(binder, shoot_id), formats)
    return _saved(book)


def _saved(book: Workbook) -> bytes:
    written = io.BytesIO()
    book.save(written)
    return written.getvalue()


def _formats(binder: Binder) -> dict[Kind, str]:
    money = money_format(binder.settings.currency, binder.settings.locale)
    return {Kind.DAY: _DAY, Kind.COUNT: "0", Kind.GRAMS: "#,##0.0", Kind.MONEY: money}


def _fill(
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


def _trip_columns(binder: Binder) -> tuple[Column, ...]:
    money = f" ({binder.settings.currency})"
    return (
        Column(_("day"), Kind.DAY, 12),
        Column(_("store"), Kind.TEXT, 30),
        Column(_("lines"), Kind.COUNT, 8),
        Column(_("to pay") + money, Kind.MONEY, 16),
        Column(_("deposit") + money, Kind.MONEY, 16),
    )


def _trip_rows(binder: Binder, shoot_id: str) -> Iterable[Sequence[Value | date]]:
    trips = shopping_trips(binder, shoot_id)
    for trip in trips:
        store = trip.store or _("any store")
        yield trip.on, store, len(trip.lines), whole_money(binder, trip.price), whole_money(binder, trip.deposit)
    price, deposit = sum(trip.price for trip in trips), sum(trip.deposit for trip in trips)
    lines = sum(len(trip.lines) for trip in trips)
    yield None, _("all trips"), lines, whole_money(binder, price), whole_money(binder, deposit)
