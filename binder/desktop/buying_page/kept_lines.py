"""The rows of lines of the list, kept while nothing they show is another: an edit of one line leaves two hundred."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.buying_page.list_rows import line_rows
from binder.kitchen.edits.buying import purchases_of

if TYPE_CHECKING:
    from binder.desktop.buying_page.buying_figures import ListLine
    from binder.desktop.sheet.cell import Row
    from binder.kitchen.binder import Binder


class KeptLines:
    """Rows by line, each with what it was made of."""

    def __init__(self) -> None:
        self._binder: Binder | None = None
        self._store_names: dict[str, str] = {}
        self._rows: dict[tuple[str, str, bool], tuple[tuple[object, ...], list[Row]]] = {}

    def follow(self, binder: Binder) -> None:
        """Show another value of the binder."""
        before, self._binder = self._binder, binder
        if before is None or before.stores is not binder.stores:
            self._store_names = {store.id: store.name for store in binder.stores.values()}

    def rows(self, shoot: str, line: ListLine, *, first: bool) -> list[Row]:
        """The rows of a line, as `line_rows` makes them."""
        if self._binder is None:
            return []
        key, shown = (shoot, line.key, first), self._shown(self._binder, shoot, line)
        kept = self._rows.get(key)
        if kept is None or kept[0] != shown:
            kept = self._rows[key] = (shown, line_rows(self._binder, shoot, line, first=first))
        return kept[1]

    def _shown(self, binder: Binder, shoot: str, line: ListLine) -> tuple[object, ...]:
        """All that the rows of a line show something of."""
        food = line.item.food
        bought = purchases_of(binder, shoot, food)
        return (
            line,
            binder.settings,
            binder.foods.get(food),
            binder.measures.where("food", food),
            binder.packs.where("food", food),
            self._store_names,
            bought,
            [binder.packs.get(one.pack or "") for one in bought],
        )
