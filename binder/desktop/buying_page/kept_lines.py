"""The rows of lines of the list, kept while nothing they show is another: an edit of one line leaves two hundred."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.buying_page.list_rows import line_rows

if TYPE_CHECKING:
    from binder.desktop.buying_page.buying_figures import ListLine
    from binder.desktop.sheet.cell import Row
    from binder.kitchen.binder import Binder

_SHOWN = ("settings", "foods", "measures", "packs", "stores", "purchases")
"""The tables that a line's rows show something of, beside the line itself."""


class KeptLines:
    """Rows by line, of one value of the tables they show."""

    def __init__(self) -> None:
        self._binder: Binder | None = None
        self._rows: dict[tuple[str, str, bool], tuple[ListLine, list[Row]]] = {}

    def follow(self, binder: Binder) -> None:
        """Show another value of the binder; rows are kept where none of their tables is another."""
        before, self._binder = self._binder, binder
        if before is None or any(before.table(name) is not binder.table(name) for name in _SHOWN):
            self._rows = {}

    def rows(self, shoot: str, line: ListLine, *, first: bool) -> list[Row]:
        """The rows of a line, as `line_rows` makes them."""
        if self._binder is None:
            return []
        key = (shoot, line.key, first)
        kept = self._rows.get(key)
        if kept is None or kept[0] != line:
            kept = self._rows[key] = (line, line_rows(self._binder, shoot, line, first=first))
        return kept[1]
