"""A price list in an XLSX workbook as rows of cells. No formula is ever worked out: its cell says that it is one.

Our own reader of the three parts it takes: openpyxl, which writes our workbooks, took 14 seconds for 50,000 rows where
this takes less than one (measured). The tests hold the two to each other.
"""

from __future__ import annotations

import posixpath
import re
from typing import TYPE_CHECKING

from binder.exchange.price_table import PriceTable
from binder.exchange.sheet_rows import cell_facts, sheet_rows
from binder.exchange.table_cell import UnreadableTableError
from binder.exchange.workbook_parts import PartReader, WorkbookParts, damaged
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from collections.abc import Callable, Collection, Mapping

    from binder.exchange.table_cell import TableRow


class _Book(PartReader):
    """What the workbook says of its sheets: (name, id of its relation), those in sight first."""

    def __init__(self) -> None:
        super().__init__()
        self._in_sight: list[tuple[str, str]] = []
        self._hidden: list[tuple[str, str]] = []
        self.since_1904 = False

    @property
    def sheets(self) -> list[tuple[str, str]]:
        """All sheets."""
        return self._in_sight + self._hidden

    def started(self, element: str, attributes: dict[str, str]) -> None:
        """A sheet by its name, or the day that days are counted from."""
        if element == "sheet":
            found = self._in_sight if attributes.get("state", "visible") == "visible" else self._hidden
            found.append((attributes.get("name", ""), _relation_id(attributes)))
        elif element == "workbookPr":
            self.since_1904 = attributes.get("date1904", "0") in {"1", "true"}


class _Relations(PartReader):
    """The parts that relations of each kind lead to, by the relation's id: (kind, id, part), none outside the file."""

    def __init__(self, folder: str) -> None:
        super().__init__()
        self._folder = folder
        self._found: list[tuple[str, str, str]] = []

    def started(self, element: str, attributes: dict[str, str]) -> None:
        """A relation."""
        if element == "Relationship" and attributes.get("TargetMode") != "External":
            kind = attributes.get("Type", "").rpartition("/")[2]
            target = posixpath.normpath(posixpath.join("/", self._folder, attributes.get("Target", ""))).lstrip("/")
            self._found.append((kind, attributes.get("Id", ""), target))

    def of(self, wanted: str, key: str | None = None) -> str:
        """The part that a relation of one kind (and id) leads to; empty where there is none."""
        return next((part for kind, found, part in self._found if kind == wanted and key in {None, found}), "")


def workbook_table(
    content: bytes, *, sheet: str | None = None, progress: Callable[[float], None] | None = None
) -> PriceTable:
    """The sheet called so, or else the first with cells, of a workbook. Raises UnreadableTableError."""
    parts = WorkbookParts(content)
    main = _relations(parts, "").of("officeDocument")
    book, beside = _Book(), _relations(parts, main)
    parts.stream(main, book)
    if not book.sheets:
        raise damaged()
    # Sheets that are a chart have no cells.
    sheets = {name: part for name, key in book.sheets if (part := beside.of("worksheet", key))}
    candidates = _candidates(sheets, sheet)
    facts = cell_facts(parts, texts=beside.of("sharedStrings"), styles=beside.of("styles"), since_1904=book.since_1904)
    rows: tuple[TableRow, ...] = ()
    name = ""
    for name in candidates:
        rows = sheet_rows(parts, sheets[name], facts, progress=progress)
        if rows:
            break
    return PriceTable(rows, sheet=name, sheets=tuple(sheets))


def _candidates(sheets: Collection[str], asked: str | None) -> list[str]:
    """The sheet that is asked for; else all of them, of which the first with cells is taken."""
    if asked is None:
        return list(sheets)
    for name in sheets:
        if name.casefold() == asked.strip().casefold():
            return [name]
    says = _("no sheet of it is called “{sheet}”: it is {sheets}.")
    names = listed((f"“{name[:60]}”" for name in list(sheets)[:10]), joined_by=_("or"))
    raise UnreadableTableError(says.format(sheet=asked[:60], sheets=names))


def _relation_id(attributes: Mapping[str, str]) -> str:
    return next((value for name, value in attributes.items() if re.fullmatch(r".+:id", name)), "")


def _relations(parts: WorkbookParts, part: str) -> _Relations:
    """What a part of the workbook relates to; of none, what the workbook does."""
    folder, name = posixpath.split(part)
    relations = _Relations(folder)
    beside = posixpath.join(folder, "_rels", f"{name}.rels")
    if parts.has(beside):
        parts.stream(beside, relations)
    return relations
