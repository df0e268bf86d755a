"""A price list's text as rows of named cells, however the spreadsheet that wrote it separates and encodes them."""

from __future__ import annotations

import csv
import io
import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.exchange.text_safety import plain_cell
from binder.kitchen.errors import BinderError
from binder.kitchen.shapes import tidy
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

COLUMNS = ("food", "store", "pack size", "unit", "price", "date", "label")
_REQUIRED = ("food", "pack size", "price")
_SEPARATORS = (",", ";", "\t")


class UnreadableTableError(BinderError):
    """A file that is no price list at all, or whose rows cannot be told apart."""

    def __init__(self, why: str) -> None:
        super().__init__(_("This is no price list: {why}").format(why=why))


class RefusedRowError(BinderError):
    """A row that cannot be taken; it becomes the row's fate."""


@dataclass(frozen=True)
class TableRow:
    """One row by its number in the spreadsheet, the header being 1. A column that is not there is an empty cell."""

    number: int
    cells: dict[str, str]
    has_more_cells: bool = False

    def __getitem__(self, column: str) -> str:
        return self.cells.get(column, "")


def rows_of(content: bytes) -> list[TableRow]:
    """The rows below the header that are not empty. Raises UnreadableTableError."""
    text = _decoded(content)
    text, separator = _separated(text)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator, strict=True)
    try:
        return list(_named(reader))
    except csv.Error as error:
        raise UnreadableTableError(_slip(reader.line_num, str(error))) from None


def _slip(line: int, message: str) -> str:
    if "unexpected end" in message:
        return _("a quotation mark is opened and not closed. Close it.")
    if "larger than" in message:
        return _("line {line} has a cell far too long; a quotation mark may be missing. Mend it.").format(line=line)
    return _("line {line} has a quotation mark in the middle of a cell. Mend it.").format(line=line)


def _decoded(content: bytes) -> str:
    """UTF-8 with or without its mark; else what western spreadsheets write, of which every byte is a character."""
    for encoding in ("utf-8-sig", "cp1252"):
        try:
            return content.decode(encoding)
        except UnicodeDecodeError:
            continue
    return content.decode("latin-1")


def _separated(text: str) -> tuple[str, str]:
    """The text, without a spreadsheet's own `sep=;` line, and its separator."""
    told = re.match(r"^sep=(.)\r?\n", text, re.IGNORECASE)
    if told:
        return text[told.end() :], told[1]
    head = text.lstrip("\r\n").split("\n", 1)[0]
    return text, max(_SEPARATORS, key=lambda separator: len(_known(head.split(separator))))


def _known(cells: Sequence[str]) -> list[str]:
    return [name for name in map(_column, cells) if name]


def _column(cell: str) -> str:
    """The column that a header means, however it is spaced; empty for one of no use here."""
    bare = re.sub(r"[\W_]+", "", cell).casefold()
    names = {name.replace(" ", ""): name for name in COLUMNS} | {"size": "pack size", "pack": "pack size"}
    return names.get(bare, "")


def _named(reader: Iterator[list[str]]) -> Iterator[TableRow]:
    columns: list[str] = []
    for number, cells in enumerate(reader, start=1):
        if not any(cell.strip() for cell in cells):
            continue
        if not columns:
            columns = _columns(cells)
            continue
        tidied = [plain_cell(tidy(cell).strip()) for cell in cells]
        more = any(tidied[len(columns) :])
        yield TableRow(number, {name: cell for name, cell in zip(columns, tidied, strict=False) if name}, more)
    if not columns:
        raise UnreadableTableError(_("it is empty. Choose another file."))


def _columns(header: list[str]) -> list[str]:
    columns = [_column(cell) for cell in header]
    missing = [name for name in _REQUIRED if name not in columns]
    if missing:
        raise UnreadableTableError(
            _("its first row must name the columns {columns}, and {missing} is not among them. Add it.").format(
                columns=listed(COLUMNS), missing=missing[0]
            )
        )
    twice = [name for name in columns if name and columns.count(name) > 1]
    if twice:
        raise UnreadableTableError(_("it has two columns called {column}. Take one out.").format(column=twice[0]))
    return columns
