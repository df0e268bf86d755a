"""The shopping list as a file: a table in CSV or XLSX, or plain text to paste into a message."""

from __future__ import annotations

import csv
import io
from datetime import date
from decimal import Decimal
from typing import TYPE_CHECKING

from binder.exchange.shopping_table import shopping_columns, shopping_rows
from binder.exchange.shopping_text import shopping_text
from binder.exchange.text_safety import safe_cell
from binder.kitchen.errors import BinderError
from binder.kitchen.money import uses_decimal_comma
from binder.kitchen.whole_file import write_whole
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from pathlib import Path

    from binder.exchange.shopping_table import Value
    from binder.kitchen.binder import Binder

SHOPPING_SUFFIXES = (".csv", ".xlsx", ".txt")
"""The kinds of file a shopping list can be written as."""


class NoShoppingFileError(BinderError):
    """A file of a kind that no shopping list is written as."""

    def __init__(self, path: Path) -> None:
        says = _("A shopping list is written as {kinds}: end “{file}” so.")
        super().__init__(says.format(kinds=listed(SHOPPING_SUFFIXES, joined_by=_("or")), file=path.name))


def write_shopping(binder: Binder, shoot_id: str, path: Path, *, replace: bool = True) -> None:
    """Write the shopping list of a shoot, whole or not at all, as the kind that the file's name ends in.

    Raises NoShoppingFileError, UnwritableFileError or FileInTheWayError.
    """
    write_whole(path, shopping_content(binder, shoot_id, path), replace=replace)


def shopping_content(binder: Binder, shoot_id: str, path: Path) -> bytes:
    """The bytes of the file that a shopping list is at `path`. Raises NoShoppingFileError."""
    suffix = path.suffix.casefold()
    if suffix == ".csv":
        return shopping_csv(binder, shoot_id).encode("utf-8-sig")
    if suffix == ".txt":
        return shopping_text(binder, shoot_id).encode()
    if suffix == ".xlsx":
        from binder.exchange.shopping_workbook import shopping_workbook

        return shopping_workbook(binder, shoot_id)
    raise NoShoppingFileError(path)


def shopping_csv(binder: Binder, shoot_id: str) -> str:
    """The list as RFC 4180 has it; in a locale that writes 0,5 with its commas, and semicolons between the cells.

    So a spreadsheet of the same locale reads numbers as numbers. Days are ISO 8601.
    """
    comma = uses_decimal_comma(binder.settings.locale)
    written = io.StringIO()
    table = csv.writer(written, delimiter=";" if comma else ",", lineterminator="\r\n")
    table.writerow([safe_cell(column.heading) for column in shopping_columns(binder)])
    for row in shopping_rows(binder, shoot_id):
        table.writerow([_written(value, comma=comma) for value in row])
    return written.getvalue()


def _written(value: Value | date, *, comma: bool) -> object:
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, Decimal | float):
        digits = f"{value:f}" if isinstance(value, Decimal) else f"{value:g}" if value < _LARGE else f"{value:.1f}"
        return digits.replace(".", ",") if comma else digits
    return safe_cell(value)


_LARGE = 100_000.0
"""From here on six digits that count are too few to write a weight to a tenth of a gram."""
