"""The store that a row of a price list names: one the binder has, or where that is asked for, a new one."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.exchange.named_records import NamedRecords
from binder.kitchen.edits.identity import readable_id
from binder.kitchen.price import Store
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder


class StoreReader:
    """`makes_new`: a name that no store has makes a store; else its row is refused, and it is one of `unknown`."""

    def __init__(self, binder: Binder, *, makes_new: bool) -> None:
        self._named = NamedRecords(_("store"), ((store, (store.name,)) for store in binder.stores.values()))
        self._stores = dict(binder.stores)
        self._makes_new = makes_new
        self._unknown: dict[str, None] = {}
        self._read: dict[str, Store | None] = {"": None}

    @property
    def unknown(self) -> tuple[str, ...]:
        """The names that no store has, in the order in which they were first read."""
        return tuple(self._unknown)

    def read(self, name: str) -> Store | None:
        """The store of that name; None where the row names none. Raises RefusedRowError, UnfitValueError."""
        if name not in self._read:
            self._read[name] = self._found(name)
        return self._read[name]

    def _found(self, name: str) -> Store:
        if not self._named.knows(name):
            if self._makes_new:
                return self._made(name)
            self._unknown[name] = None
        return self._named.find(name)

    def _made(self, name: str) -> Store:
        store = Store(id=readable_id(name, self._stores), name=name)
        self._stores[store.id] = store
        self._named.add(store, (store.name, name))
        return store
