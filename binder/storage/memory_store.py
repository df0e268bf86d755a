"""A binder that is in no file: what a document has before it is saved for the first time, and in tests."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.storage.journal import Entry, Kind, Scribe

if TYPE_CHECKING:
    from pathlib import Path

    from binder.kitchen.change import Change
    from binder.storage.contents import Contents


class MemoryStore:
    """Keeps the journal's entries and nothing else: the document has the value."""

    path = None
    read_only = False

    def __init__(self, contents: Contents, scribe: Scribe | None = None) -> None:
        self.opened = contents
        self.opened_data_version = 0
        self._scribe = scribe or Scribe()

    def read(self) -> Contents:
        """What was there at the start: no one else can change it."""
        return self.opened

    def changes_since(self, sequence: int) -> tuple[Entry, ...]:  # noqa: ARG002 - no one else writes
        """Nothing: no one else writes."""
        return ()

    def data_version(self) -> int:
        """Always the same."""
        return 0

    def write(self, change: Change, *, made_on: int, kind: Kind = Kind.EDIT, of: int | None = None) -> Entry:
        """The entry of a change."""
        return self._scribe.entry(change, kind=kind, of=of, made_on=made_on)

    def is_at(self, path: Path) -> bool:  # noqa: ARG002 - it is nowhere
        """Never: it is in no file."""
        return False

    def close(self) -> None:
        """Nothing is open."""
