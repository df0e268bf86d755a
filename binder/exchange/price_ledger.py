"""Packs and prices as rows of a price list enter them, gathered into one change."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.exchange.table_cell import RefusedRowError
from binder.kitchen.change import Change, Edit
from binder.kitchen.edits.identity import new_id
from binder.kitchen.edits.records import with_values
from binder.kitchen.price import Pack, Quote
from binder.kitchen.units import Dimension, unit
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from datetime import date

    from binder.kitchen.binder import Binder
    from binder.kitchen.food import Food
    from binder.kitchen.price import Store

_PackKey = tuple[str, str | None, float, str]
"""What makes two packs the same but for their label: food, store, size and unit; the unit of what is weighed or
measured may be its dimension, and the size then grams or millilitres."""

_DIGITS = 6
"""Of grams and millilitres; what differs less is one amount."""


class PriceLedger:
    """A binder's packs and prices, and what is entered beside them."""

    def __init__(self, binder: Binder, source: str) -> None:
        self._source = source
        self._measures = binder.settings.measures
        self._batch, self._made = new_id("import"), 0
        self._packs: dict[_PackKey, dict[str, Pack]] = {}
        self._quotes: dict[tuple[str, date], Quote] = {
            (quote.pack, quote.on): quote for quote in binder.quotes.values()
        }
        self._entered: dict[tuple[str, date], int] = {}
        self._new_packs: dict[str, Pack] = {}
        self._stores = set(binder.stores)
        self._new_stores: dict[str, Store] = {}
        self._edits: list[Edit] = []
        self._amounts: dict[tuple[float, str], tuple[float, str]] = {}
        for pack in binder.packs.values():
            self._file(pack)

    def _file(self, pack: Pack) -> None:
        key, label = _key(pack), pack.label.casefold()
        for one in dict.fromkeys((key, self._alike(key))):
            self._packs.setdefault(one, {}).setdefault(label, pack)

    def is_new(self, pack: Pack) -> bool:
        """Whether a pack is one that no row has entered yet."""
        return pack.id in self._new_packs

    def pack(self, food: Food, *, store: Store | None, size: float, unit: str, label: str) -> Pack:
        """The pack of that size, with that label where the row has one; a new one where there is none.

        A pack written in the same unit comes first, then one of as much: 1000 g is 1 kg. A new pack is entered with
        its first price and not before.
        """
        key = (food.id, store.id if store else None, size, unit)
        known = self._known(key, label) or self._known(self._alike(key), label)
        if known is not None:
            return known
        if store is not None and store.id not in self._stores:
            self._new_stores[store.id] = store
        made = Pack(id=self._next_id("pack"), food=key[0], store=key[1], label=label, size=size, unit=unit)
        self._new_packs[made.id] = made
        return made

    def _known(self, key: _PackKey, label: str) -> Pack | None:
        labelled = self._packs.get(key)
        if labelled is None:
            return None
        return labelled.get(label.casefold()) if label else next(iter(labelled.values()), None)

    def _alike(self, key: _PackKey) -> _PackKey:
        """The key of every pack of as much, in whatever unit; pieces are alike in their own unit only."""
        food, store, size, name = key
        amount = self._amounts.get((size, name))
        if amount is None:
            amount = self._amounts[size, name] = self._amount(size, name)
        return food, store, *amount

    def _amount(self, size: float, name: str) -> tuple[float, str]:
        """As much in grams or millilitres, with which of them; sizes recur from row to row."""
        given = unit(name, self._measures, pieces=frozenset({name}))
        if given.dimension is Dimension.PIECE:
            return size, name
        return round(size * given.factor, _DIGITS), given.dimension

    def enter(self, pack: Pack, *, price: int, on: date, number: int) -> int | None:
        """Enter a price in minor units and return the one known for the same pack and day; None where there is none.

        Raises RefusedRowError where row `number` says another price than a row before.
        """
        place = (pack.id, on)
        before = self._entered.setdefault(place, number)
        known = self._quotes.get(place)
        if before != number and known is not None and known.price != price:
            says = _("row {number} has another price for the same pack and day. Take one of them out.")
            raise RefusedRowError(says.format(number=before))
        self._enter_pack(pack)
        if known is None or known.price != price:
            self._quotes[place] = self._enter_quote(known, pack, price, on)
        return None if known is None else known.price

    def _next_id(self, kind: str) -> str:
        """An id no one else makes, without asking for randomness a hundred thousand times."""
        self._made += 1
        return f"{kind}-{self._batch.removeprefix('import-')}-{self._made}"

    def _enter_store(self, key: str | None) -> None:
        store = self._new_stores.pop(key or "", None)
        if store is not None:
            self._stores.add(store.id)
            self._edits.append(Edit(before=None, after=store))

    def _enter_pack(self, pack: Pack) -> None:
        if self._new_packs.pop(pack.id, None):
            self._enter_store(pack.store)
            self._file(pack)
            self._edits.append(Edit(before=None, after=pack))

    def _enter_quote(self, known: Quote | None, pack: Pack, price: int, on: date) -> Quote:
        if known is None:
            quote = Quote(id=self._next_id("quote"), pack=pack.id, price=price, on=on, source=self._source)
        else:
            quote = with_values(known, price=price, source=self._source)
        self._edits.append(Edit(before=known, after=quote))
        return quote

    def change(self) -> Change | None:
        """All that was entered, as one change; None where nothing was."""
        prices = sum(edit.table == "quotes" for edit in self._edits)
        label = ngettext("Import {count} price", "Import {count} prices", prices).format(count=prices)
        return Change(label, tuple(self._edits)) if self._edits else None


def _key(pack: Pack) -> _PackKey:
    return pack.food, pack.store, pack.size, pack.unit
