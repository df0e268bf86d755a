"""The stores: what going there costs, and what not going is worth. Plain Python."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Row, Tone, key_of
from binder.desktop.sheet.sheet import PlainSheet, record_of
from binder.desktop.words.figure_text import plain_money
from binder.desktop.words.typed import Reading, UnreadableError, typed_money
from binder.figures.missing import Place
from binder.figures.money_words import money
from binder.kitchen.edits.buying import set_store
from binder.kitchen.edits.foods import add_store
from binder.kitchen.edits.records import remove
from binder.kitchen.wording import _, listed, ngettext

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.kitchen.price import Store

ADD_STORE = "add:store"


class Stores(PlainSheet):
    """A row a store."""

    @property
    def name(self) -> str:
        return _("Stores")

    @property
    def columns(self) -> tuple[Column, ...]:
        avoided = _("Added to what buying there costs when packs are chosen, where you would rather not go")
        return (
            Column("name", _("store"), characters=20, stretch=2),
            Column(
                "trip_cost",
                _("going there costs"),
                characters=12,
                align=Align.RIGHT,
                tip=_("Added once where anything is bought there"),
            ),
            Column("avoided", _("not going is worth"), characters=12, align=Align.RIGHT, tip=avoided),
            Column("packs", _("sells"), characters=10),
            Column("notes", _("notes"), characters=18, stretch=3),
        )

    def rows(self, sight: Sight) -> list[Row]:
        stores = sorted(sight.binder.stores.values(), key=lambda store: store.name.casefold())
        return [*(_row(sight.binder, store) for store in stores), _adding()]

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder = sight.binder
        if row == ADD_STORE:
            if not text.strip():
                raise UnreadableError(text, _("write what the store is called."))
            return add_store(binder, text.strip())[0]
        values: dict[str, Reading] = {
            "name": text.strip,
            "trip_cost": lambda: typed_money(binder, text) or 0,
            "avoided": lambda: typed_money(binder, text) or 0,
            "notes": text.strip,
        }
        return set_store(binder.stores[record_of(row).id], **{column: values[column]()})

    def remove(self, sight: Sight, rows: Sequence[str]) -> Change | None:
        stores = [sight.binder.stores[record_of(row).id] for row in rows if row != ADD_STORE]
        names = listed(store.name for store in stores)
        return remove(_("Remove {stores}").format(stores=names), sight.binder, *stores) if stores else None


def store_called(binder: Binder, text: str) -> Store:
    """The store of a name, or of the beginning of just one. Raises UnreadableError where there is none."""
    wanted = text.strip().casefold()
    exact = [one for one in binder.stores.values() if one.name.casefold() == wanted]
    begun = [one for one in binder.stores.values() if wanted and one.name.casefold().startswith(wanted)]
    if len(exact) != 1 and len(begun) != 1:
        raise UnreadableError(text, _("no store is called so. Add it to the stores first."))
    return (exact if len(exact) == 1 else begun)[0]


def _row(binder: Binder, store: Store) -> Row:
    place = Place("stores", store.id)
    count = len(binder.packs.where("store", store.id))
    cells = (
        Cell(store.name, edit=store.name),
        _cost(binder, store.trip_cost),
        _cost(binder, store.avoided),
        Cell(ngettext("{count} pack", "{count} packs", count).format(count=count), tone=Tone.QUIET),
        Cell(store.notes, edit=store.notes, placeholder="–", folds=True, tip=store.notes),
    )
    return Row(key_of(place), cells, place=place)


def _cost(binder: Binder, minor: int) -> Cell:
    return Cell(
        money(binder, minor) if minor else "", edit=plain_money(binder, minor) if minor else "", placeholder="–"
    )


def _adding() -> Row:
    cell = Cell(edit="", placeholder=_("Add a store: what it is called"))
    return Row(ADD_STORE, (cell, *(NOTHING,) * 4), spans=((0, 5),), lines=1.8, rule=False, adds=True)
