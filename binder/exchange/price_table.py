"""A price list as rows of cells, whichever kind of file it came in: told by what is in it and not by its name."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.exchange.csv_rows import csv_table
from binder.exchange.price_columns import price_layout
from binder.exchange.table_cell import UnreadableTableError
from binder.kitchen.bulk import uncollected
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from binder.exchange.price_columns import PriceLayout
    from binder.exchange.table_cell import TableRow

_ZIP_MAGIC = (b"PK\x03\x04", b"PK\x05\x06")
_OLD_MAGIC = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
"""How workbooks begin that are older than XLSX, and such as have a password (from memory)."""

_OTHER_KINDS = (
    b"%PDF",
    b"\x89PNG",
    b"\xff\xd8\xff",
    b"GIF8",
    b"SQLite format 3",
    b"\x1f\x8b",
    b"{\\rtf",
    b"<",
    b"{",
    b"[{",
)
"""How a page, a picture, a database and other documents begin that are often beside a price list (from memory)."""


@dataclass(frozen=True)
class PriceTable:
    """The rows of a price list that are not empty.

    `sheets` are the names of a workbook's sheets, `sheet` the one that was read. `cells_may_slip`: a comma too many
    moves the cells after it to other columns, as it does in a CSV file and not in a workbook; `commas_part` its cells.
    """

    rows: tuple[TableRow, ...]
    sheet: str = ""
    sheets: tuple[str, ...] = ()
    cells_may_slip: bool = False
    commas_part: bool = False

    def layout(self, chosen: Mapping[str, int | None] | None = None) -> PriceLayout:
        """Which column is what: guessed, but for those chosen by their place from 0 (None: not in the list)."""
        return price_layout(self.rows, chosen)

    def prices(self, layout: PriceLayout) -> Sequence[TableRow]:
        """The rows that hold prices, in the order of `PriceList.rows`."""
        return self.rows[layout.first :]


def price_table(
    content: bytes, *, sheet: str | None = None, progress: Callable[[float], None] | None = None
) -> PriceTable:
    """The table in the bytes of a CSV or XLSX file: of a workbook, the sheet called so or else the first with cells.

    `progress` is told the part done, from 0 to 1, and may raise to stop. Raises UnreadableTableError.
    """
    if content.startswith(_OLD_MAGIC):
        raise UnreadableTableError(_("it is a workbook with a password, or of an old kind. Save it as .xlsx without."))
    if content[:100].lstrip().startswith(_OTHER_KINDS):
        raise UnreadableTableError(_("it is a page, a picture or another document. Save its table as .csv or .xlsx."))
    with uncollected():
        table = _table(content, sheet, progress)
    if not table.rows:
        raise UnreadableTableError(_("it is empty. Choose another file."))
    return table


def _table(content: bytes, sheet: str | None, progress: Callable[[float], None] | None) -> PriceTable:
    if content.startswith(_ZIP_MAGIC):
        from binder.exchange.price_workbook import workbook_table

        return workbook_table(content, sheet=sheet, progress=progress)
    rows, separator = csv_table(content, progress=progress)
    return PriceTable(rows, cells_may_slip=True, commas_part=separator == ",")
