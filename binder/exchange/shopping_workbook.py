"""The shopping list as an XLSX workbook: numbers are numbers, money is shown as money, and no text can run."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.exchange.shopping_lines import shopping_trips
from binder.exchange.shopping_table import Column, Kind, shopping_columns, shopping_rows, whole_money
from binder.exchange.workbook_writing import fill, new_workbook, number_formats, saved
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence
    from datetime import date

    from binder.exchange.shopping_table import Value
    from binder.kitchen.binder import Binder


def shopping_workbook(binder: Binder, shoot_id: str) -> bytes:
    """An XLSX file: a sheet with the list, and one with what each trip comes to."""
    book = new_workbook()
    formats = number_formats(binder)
    listed = book.worksheets[0]
    listed.title = _("Shopping list")
    fill(listed, shopping_columns(binder), shopping_rows(binder, shoot_id), formats)
    fill(book.create_sheet(_("Trips")), _trip_columns(binder), _trip_rows(binder, shoot_id), formats)
    return saved(book)


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
