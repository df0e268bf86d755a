"""The rows of lines of the list, kept while nothing they show is another: an edit of one line leaves two hundred."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.buying_page.buying_figures import ListLine
from binder.desktop.buying_page.list_rows import line_rows
from binder.figures.memory import remembered_from
from binder.kitchen.edits.buying import purchases_of
from binder.kitchen.turns import in_turns

if TYPE_CHECKING:
    from collections.abc import Mapping

    from binder.desktop.buying_page.buying_figures import BuyingFigures
    from binder.desktop.sheet.cell import Row
    from binder.kitchen.binder import Binder


class KeptLines:
    """Rows by line, each with what it was made of; those of many lines are had ready beside the window."""

    def __init__(self) -> None:
        self._rows: dict[tuple[str, str, bool], tuple[tuple[object, ...], list[Row]]] = {}

    def have_ready(self, binder: Binder, shoot: str, figures: BuyingFigures) -> None:
        """Make the rows of all lines that are to be fetched."""
        for plan in figures.plans:
            for fetched in in_turns(plan.lines):
                for number, taken in enumerate(fetched.packs):
                    self.rows(binder, shoot, ListLine(fetched.item, taken, plan.on), first=number == 0)

    def rows(self, binder: Binder, shoot: str, line: ListLine, *, first: bool) -> list[Row]:
        """The rows of a line, as `line_rows` makes them."""
        key, shown = (shoot, line.key, first), self._shown(binder, shoot, line)
        kept = self._rows.get(key)
        if kept is None or kept[0] != shown:
            kept = self._rows[key] = (shown, line_rows(binder, shoot, line, first=first))
        return kept[1]

    @staticmethod
    def _shown(binder: Binder, shoot: str, line: ListLine) -> tuple[object, ...]:
        """All that the rows of a line show something of."""
        food = line.item.food
        bought = purchases_of(binder, shoot, food)
        return (
            line,
            binder.settings,
            binder.foods.get(food),
            binder.measures.where("food", food),
            binder.packs.where("food", food),
            _store_names(binder),
            bought,
            [binder.packs.get(one.pack or "") for one in bought],
        )


@remembered_from(frozenset({"stores"}))
def _store_names(binder: Binder) -> Mapping[str, str]:
    return {store.id: store.name for store in binder.stores.values()}
