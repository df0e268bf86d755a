"""The cells of one sheet of a workbook, in rows, each with what its format says of it."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING

from binder.exchange.csv_rows import MOST_ROWS, too_many_rows
from binder.exchange.plain_rows import PlainCell, PlainRows
from binder.exchange.table_cell import TableCell, TableRow, Trouble, UnusableCell
from binder.exchange.workbook_numbers import Formats, number_cell
from binder.exchange.workbook_parts import PartReader, StopReadingError, damaged, unfolds_too_far
from binder.exchange.workbook_texts import LONGEST_TEXT, SharedTexts, TextReader, kept_text
from binder.kitchen.turns import give_way

if TYPE_CHECKING:
    from collections.abc import Callable

    from binder.exchange.workbook_parts import WorkbookParts

_MOST_COLUMNS = 256
"""Cells beyond are none that a price list needs."""

_WIDEST = 16_384
"""Columns of the widest spreadsheet there is (from memory)."""

_FORMULA = UnusableCell(Trouble.FORMULA, "=")

_COMMON = frozenset({"row", "c", "v", "f"})
"""The elements that most of a sheet is made of: a row, a cell, its value and its formula."""


@dataclass(frozen=True)
class CellFacts:
    """What the cells of every sheet of a workbook refer to: texts, formats, and the day that days are counted from."""

    texts: list[str]
    formats: Formats
    since_1904: bool


def cell_facts(parts: WorkbookParts, *, texts: str, styles: str, since_1904: bool) -> CellFacts:
    """Read from the parts that hold texts and styles, where there are such. Raises UnreadableTableError."""
    shared, formats = SharedTexts(), Formats()
    for part, beside in ((texts, shared), (styles, formats)):
        if parts.has(part):
            parts.stream(part, beside)
    return CellFacts(shared.texts, formats, since_1904)


def sheet_rows(
    parts: WorkbookParts, name: str, facts: CellFacts, *, progress: Callable[[float], None] | None = None
) -> tuple[TableRow, ...]:
    """The rows of a sheet that are not empty. Raises UnreadableTableError."""
    reader = _SheetReader(facts)
    parts.stream(name, reader, progress=progress)
    return tuple(reader.rows)


class _SheetReader(PartReader):
    """Makes rows of what streams by. It sees every element of a sheet, a million of them, so it does little for each.

    An element of the four kinds that make most of a sheet is never within one of its own kind, which keeps them from
    nesting without end; all others are counted as usual.
    """

    def __init__(self, facts: CellFacts) -> None:
        super().__init__()
        self.rows: list[TableRow] = []
        self._texts, self._formats, self._since_1904 = facts.texts, facts.formats, facts.since_1904
        self._number = 0
        self._cells: dict[int, TableCell] | None = None
        self._place = -1
        self._in_row = 0
        self._places: dict[str, int] = {}
        self._attributes: dict[str, str] | None = None
        self._known: dict[tuple[str, str, str], TableCell] = {}
        self._value = ""
        self._is_formula = self._into = False
        self._inline = TextReader()

    def fed_by(self, parse: Callable[[bytes, bool], object]) -> Callable[[bytes, bool], object]:
        """Most rows are plain, and need no parser."""
        return PlainRows(parse, self._take).feed

    def _take(self, number: str, cells: list[PlainCell]) -> None:
        """A row with no more than values and texts."""
        self._start_row({"r": number})
        if len(cells) > _WIDEST:
            raise unfolds_too_far()
        known, places = self._known, self._places
        row: list[TableCell] = []
        for letters, style, kind, value, text, _rest in cells:
            place = places[letters] if letters in places else self._place_of(letters)
            if value:
                key = (kind or "n", style or "0", value)
                cell = known[key] if key in known else self._made(key)
            else:
                cell = kept_text(text) if text else ""
            if place >= len(row) and cell and place < _MOST_COLUMNS:
                row += [""] * (place - len(row))
                row.append(cell)
            elif cell and place < len(row):
                row[place] = cell
        self._cells = None
        give_way()
        if row:
            self.rows.append(TableRow(self._number, tuple(row)))

    def start(self, element: str, attributes: dict[str, str]) -> None:
        """An element of the sheet begins."""
        if element == "v" and not self._into:
            self._into = True
        elif element == "c" and self._attributes is None:
            self._attributes, self._value, self._is_formula = attributes, "", False
        elif element == "row" and self._cells is None:
            self._start_row(attributes)
        elif element == "f" and not self._is_formula:
            self._is_formula = True
        elif element in _COMMON:
            raise damaged()
        elif ":" in element:
            self.start(element.rpartition(":")[2], attributes)
        else:
            self._inline.start(element, attributes)

    def _start_row(self, attributes: dict[str, str]) -> None:
        self._number = int(attributes.get("r", self._number + 1))
        self._cells, self._place, self._in_row = {}, -1, 0
        if self._number > MOST_ROWS:
            raise too_many_rows()

    def say(self, text: str) -> None:
        """Text stands in the element that began last."""
        if self._into:
            if len(self._value) < LONGEST_TEXT:
                self._value += text
        else:
            self._inline.say(text)

    def end(self, element: str) -> None:
        """An element of the sheet ends."""
        if element == "v":
            self._into = False
        elif element == "c":
            self._end_cell()
        elif element == "row":
            self._end_row()
        elif element == "sheetData":
            raise StopReadingError
        elif ":" in element:
            self.end(element.rpartition(":")[2])
        elif element != "f":
            self._inline.end(element)

    def _end_cell(self) -> None:
        attributes, value = self._attributes or {}, self._value
        self._attributes = None
        reference = attributes.get("r")
        if reference is None:
            self._place += 1
        else:
            letters = reference.rstrip("0123456789")
            place = self._places.get(letters)
            self._place = self._place_of(letters) if place is None else place
        self._in_row += 1
        if self._in_row > _WIDEST:
            raise unfolds_too_far()
        if value and not self._is_formula:
            key = (attributes.get("t", "n"), attributes.get("s", "0"), value)
            cell = self._known.get(key)
            self._keep(self._made(key) if cell is None else cell)
        else:
            self._keep(_FORMULA if self._is_formula else self._inline.taken())

    def _keep(self, cell: TableCell) -> None:
        if cell != "" and self._cells is not None and self._place < _MOST_COLUMNS:
            self._cells[self._place] = cell

    def _end_row(self) -> None:
        give_way()
        if self._cells:
            get = self._cells.get
            self.rows.append(TableRow(self._number, tuple([get(place, "") for place in range(max(self._cells) + 1)])))
        self._cells = None

    def _place_of(self, letters: str) -> int:
        place = self._places[letters] = place_of_letters(letters)
        return place

    def _made(self, key: tuple[str, str, str]) -> TableCell:
        """Values recur, so each is made once a kind and style."""
        kind, style, value = key
        if kind == "n":
            cell = number_cell(value, self._formats.of(style), since_1904=self._since_1904)
        else:
            cell = self._shared(int(value)) if kind == "s" else _other(kind, value)
        self._known[key] = cell
        return cell

    def _shared(self, number: int) -> str:
        if not 0 <= number < len(self._texts):
            raise damaged()
        return self._texts[number]


def _other(kind: str, value: str) -> TableCell:
    if kind == "e":
        return UnusableCell(Trouble.ERROR, value[:20])
    if kind == "b":
        return "TRUE" if value == "1" else "FALSE"
    if kind == "d":
        try:
            return date.fromisoformat(value[:10])
        except ValueError:
            return UnusableCell(Trouble.ERROR, value[:20])
    return kept_text(value[:LONGEST_TEXT])


def place_of_letters(letters: str) -> int:
    """The place from 0 of a column by its letters. Raises UnreadableTableError where they are none."""
    if not re.fullmatch("[A-Z]{1,3}", letters):
        raise damaged()
    place = 0
    for letter in letters:
        place = place * 26 + ord(letter) - ord("A") + 1
    return place - 1
