"""The sections of a store as one walks through them, dragged or moved by keys. Plain Python."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import Align, Cell, Column, Row, Tone
from binder.desktop.sheet.sheet import PlainSheet, record_of
from binder.figures.missing import Place
from binder.kitchen.edits.buying import move_section, walking_order
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.change import Change
    from binder.kitchen.price import Store


class WalkingOrder(PlainSheet):
    """A row a section. The subject is a store."""

    @property
    def name(self) -> str:
        return _("Walking order")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("number", "", characters=2.5, align=Align.RIGHT),
            Column("section", _("section"), characters=22, stretch=1),
        )

    def rows(self, sight: Sight) -> list[Row]:
        store = sight.binder.stores.get(sight.subject or "")
        if store is None:
            return []
        place = Place("stores", store.id)
        return [
            Row(f"section:{section}", (Cell(str(at), tone=Tone.QUIET), Cell(_(section))), place=place, lines=1.45)
            for at, section in enumerate(walking_order(store), 1)
        ]

    def move_by(self, sight: Sight, row: str, by: int) -> Change | None:
        store, section = _of(sight, row)
        at = walking_order(store).index(section) + by
        return move_section(store, section, to=at) if 0 <= at < len(walking_order(store)) else None

    def move_before(self, sight: Sight, row: str, before: str | None) -> Change | None:
        store, section = _of(sight, row)
        others = [one for one in walking_order(store) if one != section]
        target = record_of(before).id if before else ""
        return move_section(store, section, to=others.index(target) if target in others else len(others))


def _of(sight: Sight, row: str) -> tuple[Store, str]:
    return sight.binder.stores[sight.subject or ""], record_of(row).id
