"""What a cell of somebody's table holds: text as it was typed, or what a workbook knows it to be."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from binder.kitchen.errors import BinderError
from binder.kitchen.shapes import tidy
from binder.kitchen.wording import _


class UnreadableTableError(BinderError):
    """A file that is no price list at all, or whose rows cannot be told apart. `why` is the sentence's second half."""

    def __init__(self, why: str) -> None:
        self.why = why
        super().__init__(_("This is no price list: {why}").format(why=why))


class RefusedRowError(BinderError):
    """A row that cannot be taken; it becomes the row's fate."""


@dataclass(frozen=True, slots=True)
class ExactNumber:
    """A number that a workbook holds as one, with a point for its decimals whatever the locale.

    `currency` is the sign or code of money that the cell shows beside it; empty where it shows none.
    """

    text: str
    currency: str = ""


class Trouble(StrEnum):
    """Why a cell's value cannot be taken."""

    FORMULA = "formula"
    ERROR = "error"


@dataclass(frozen=True, slots=True)
class UnusableCell:
    """A cell whose value nobody typed: a formula, which is never worked out here, or an error such as `#N/A`."""

    trouble: Trouble
    text: str


TableCell = str | ExactNumber | date | UnusableCell


@dataclass(frozen=True, slots=True)
class TableRow:
    """One row of cells by its number in the spreadsheet, from 1."""

    number: int
    cells: tuple[TableCell, ...]

    def __getitem__(self, place: int | None) -> TableCell:
        """The cell at a place from 0; empty where there is none."""
        return self.cells[place] if place is not None and place < len(self.cells) else ""

    @property
    def shown(self) -> tuple[str, ...]:
        """The cells as texts, for someone who chooses columns."""
        return tuple(map(shown_text, self.cells))


def shown_text(cell: TableCell) -> str:
    """A cell as its spreadsheet shows it, near enough to be known again."""
    if isinstance(cell, ExactNumber):
        return f"{cell.text} {cell.currency}".rstrip()
    if isinstance(cell, UnusableCell):
        return cell.text
    return cell.isoformat() if isinstance(cell, date) else cell


_PLAIN = re.compile(r"[ -~]*")
"""What needs no tidying, and is most of what a price list holds."""


_UNSEEN = "\u200b\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2060\u2066\u2067\u2068\u2069\ufeff"
"""Marks without width that spreadsheets leave around text, mostly to tell its direction (Unicode category Cf)."""


def tidied(text: str) -> str:
    """A cell's text as it is kept, without blanks and unseen marks around it."""
    if _PLAIN.fullmatch(text):
        return text.strip()
    return tidy(text).strip().strip(_UNSEEN).strip()
