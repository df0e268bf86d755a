"""Records found by any of their names, in whatever case they are written."""

from __future__ import annotations

import difflib
from typing import TYPE_CHECKING, Generic, TypeVar

from binder.exchange.table_cell import RefusedRowError
from binder.kitchen.record import Record
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from collections.abc import Iterable

R = TypeVar("R", bound=Record)


class NamedRecords(Generic[R]):
    """`kind` is what a sentence calls one of them: food, store."""

    def __init__(self, kind: str, named: Iterable[tuple[R, Iterable[str]]]) -> None:
        self._kind = kind
        self._by_name: dict[str, dict[str, R]] = {}
        self._known: dict[str, R] = {}
        self._unknown: dict[str, str] = {}
        for record, names in named:
            self.add(record, names)

    def add(self, record: R, names: Iterable[str]) -> None:
        """Have a record found by more names."""
        for name in names:
            self._by_name.setdefault(_folded(name), {})[record.id] = record

    def knows(self, name: str) -> bool:
        """Whether anything is called so."""
        return _folded(name) in self._by_name

    def find(self, name: str) -> R:
        """The one record of that name. Raises RefusedRowError where there is none, or more than one."""
        known = self._known.get(name)
        if known is None:
            known = self._known[name] = self._found(name)
        return known

    def _found(self, name: str) -> R:
        if not name:
            raise RefusedRowError(_("its {kind} is missing. Add it.").format(kind=self._kind))
        found = self._by_name.get(_folded(name), {})
        if len(found) == 1:
            return next(iter(found.values()))
        if found:
            says = _("more than one {kind} is called “{name}”. Rename one of them.")
            raise RefusedRowError(says.format(kind=self._kind, name=name[:60]))
        raise RefusedRowError(self._nothing_called(name))

    def _nothing_called(self, name: str) -> str:
        """Remembered, since a name that is wrong once is often wrong in many rows."""
        if name not in self._unknown:
            close = difflib.get_close_matches(_folded(name)[:60], self._by_name, n=3)
            nearest = _(" The nearest: {names}.").format(names=listed(close, joined_by=_("or"))) if close else ""
            says = _("no {kind} is called “{name}”.{nearest} Correct it, or add the {kind} first.")
            self._unknown[name] = says.format(kind=self._kind, name=name[:60], nearest=nearest)
        return self._unknown[name]


def _folded(name: str) -> str:
    return " ".join(name.casefold().split())
