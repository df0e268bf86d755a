"""Cells of tables for other programs, so written that a spreadsheet shows them and never runs them.

A cell that begins like a formula gets an apostrophe before it, which spreadsheets take for “this is text” (CWE-1236 and
the advice on CSV injection of OWASP; from memory).
"""

from __future__ import annotations

_FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r", "＝", "＋", "－", "＠")
_APOSTROPHE = "'"

Cell = str | int | float | None
"""What a cell of a table holds: a number stays a number."""


def safe_cell(value: Cell) -> Cell:
    """The value as it is safe in a spreadsheet; only text that begins like a formula is different."""
    if isinstance(value, str) and value.lstrip(_APOSTROPHE).startswith(_FORMULA_STARTS):
        return _APOSTROPHE + value
    return value


def plain_cell(text: str) -> str:
    """What `safe_cell` was given, from what it gave."""
    if text.startswith(_APOSTROPHE) and text.lstrip(_APOSTROPHE).startswith(_FORMULA_STARTS):
        return text.removeprefix(_APOSTROPHE)
    return text
