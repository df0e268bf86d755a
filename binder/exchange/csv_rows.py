"""A table of separated values as rows of cells, however the spreadsheet that wrote it separates and encodes them."""

from __future__ import annotations

import csv
import io
import re
from typing import TYPE_CHECKING, NamedTuple

from binder.exchange.price_columns import guessed_columns
from binder.exchange.table_cell import TableRow, UnreadableTableError, tidied
from binder.exchange.text_safety import plain_cell
from binder.kitchen.turns import in_turns
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

MOST_ROWS = 100_000
"""No price list of a kitchen is longer; what is, is another kind of file."""

_MOST_CELLS = 256
_LONGEST_LINE = 1_000_000
"""Characters, of which the longest line of a price list has a thousandth."""

_SEPARATORS = (",", ";", "\t", "|")
_HEAD = 100_000
_LOOKED_AT = 30
"""Lines among which headings are looked for."""

_ROWS_BETWEEN_REPORTS = 1000


class CsvTable(NamedTuple):
    """The rows that are not empty, and what parts their cells."""

    rows: tuple[TableRow, ...]
    separator: str


def csv_table(content: bytes, *, progress: Callable[[float], None] | None = None) -> CsvTable:
    """The table in a file. Raises UnreadableTableError. `progress` is told the part done, from 0 to 1."""
    text, separator = _separated(_decoded(content))
    _require_short_lines(text)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator, strict=True)
    lines = text.count("\n") + 1
    rows = []
    try:
        for row in _rows(reader):
            rows.append(row)
            if progress and row.number % _ROWS_BETWEEN_REPORTS == 0:
                progress(min(1.0, row.number / lines))
    except csv.Error as error:
        raise UnreadableTableError(_slip(reader.line_num, str(error))) from None
    return CsvTable(tuple(rows), separator)


def _rows(reader: Iterator[list[str]]) -> Iterator[TableRow]:
    known: dict[str, str] = {}
    for number, cells in enumerate(in_turns(reader), start=1):
        if number > MOST_ROWS:
            raise too_many_rows()
        kept = tuple(known.get(cell) or _kept(cell, known) for cell in cells[:_MOST_CELLS])
        if any(kept):
            yield TableRow(number, kept)


def _kept(cell: str, known: dict[str, str]) -> str:
    """A cell as it is kept. What stands in one row of a price list mostly stands in others too."""
    kept = known[cell] = plain_cell(tidied(cell))
    return kept


def too_many_rows() -> UnreadableTableError:
    """A table longer than any price list."""
    says = _("it has more than {count} rows. Split it, or choose another file.")
    return UnreadableTableError(says.format(count=f"{MOST_ROWS:,}"))


def _require_short_lines(text: str) -> None:
    begin, number = 0, 1
    while len(text) - begin > _LONGEST_LINE:
        end = text.rfind("\n", begin, begin + _LONGEST_LINE + 1)
        if end < 0:
            raise UnreadableTableError(_slip(number, "larger than"))
        number += text.count("\n", begin, end + 1)
        begin = end + 1


def _slip(line: int, message: str) -> str:
    if "unexpected end" in message:
        return _("a quotation mark is opened and not closed. Close it.")
    if "larger than" in message:
        return _("line {line} has a cell far too long; a quotation mark may be missing. Mend it.").format(line=line)
    return _("line {line} has a quotation mark in the middle of a cell. Mend it.").format(line=line)


def _decoded(content: bytes) -> str:
    """UTF-8 with or without its mark, UTF-16 with it; else what western spreadsheets write, which any byte is."""
    marked = content.startswith((b"\xff\xfe", b"\xfe\xff"))
    for encoding in ("utf-16",) if marked else ("utf-8-sig", "cp1252"):
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
    head = [line for line in text[:_HEAD].splitlines() if line.strip()][:_LOOKED_AT]
    return text, max(_SEPARATORS, key=lambda separator: _fits(head, separator))


def _fits(head: list[str], separator: str) -> tuple[int, int]:
    """How many headings a separator brings to light in the best line, and how often it stands in the first."""
    known = (len(guessed_columns(_unquoted(line.split(separator)))) for line in head)
    return max(known, default=0), head[0].count(separator) if head else 0


def _unquoted(cells: list[str]) -> list[str]:
    return [cell.strip().strip('"') for cell in cells]
