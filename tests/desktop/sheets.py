"""Presenters asked as the window asks them, without a window."""

from __future__ import annotations

from binder.desktop.sheet.cell import Cell, Row
from binder.desktop.sheet.sheet import Sheet, Sight
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply


def row_called(sheet: Sheet, sight: Sight, key: str) -> Row:
    """The row with a key."""
    return next(row for row in sheet.rows(sight) if row.key == key)


def cell_called(sheet: Sheet, sight: Sight, key: str, column: str) -> Cell:
    """A cell by its row's key and its column's id."""
    at = [one.id for one in sheet.columns].index(column)
    return row_called(sheet, sight, key).cells[at]


def after_typing(sheet: Sheet, sight: Sight, key: str, column: str, text: str) -> Binder:
    """The binder once a text has been typed into a cell."""
    return apply(sight.binder, sheet.edit(sight, key, column, text))


def is_even(sheet: Sheet, sight: Sight) -> bool:
    """Whether every row has a cell for each column, and no key comes twice."""
    rows = sheet.rows(sight)
    keys = [row.key for row in rows]
    return len(set(keys)) == len(keys) and all(len(row.cells) == len(sheet.columns) for row in rows)
