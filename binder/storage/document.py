"""The open document: a binder that changes, the file it lives in, and those who want to know of each change.

The path of every edit: the change is applied to the value, written to the file, and announced once. If it cannot be
written the value is as before, and the person is told; the value can then be saved in another file.
"""

from __future__ import annotations

from contextlib import nullcontext
from enum import StrEnum
from typing import TYPE_CHECKING, Protocol, Self

from binder.kitchen.binder import Binder, every_record
from binder.kitchen.bulk import uncollected
from binder.kitchen.change import Change, Edit, apply, changed
from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _
from binder.storage.binder_file import BehindError, BinderFile
from binder.storage.connection import PATIENCE
from binder.storage.contents import Contents
from binder.storage.file_errors import BusyFileError, OwnFileError
from binder.storage.journal import Entry, Kind, Scribe, UndoOrder
from binder.storage.memory_store import MemoryStore
from binder.storage.new_file import create_file

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path


class Origin(StrEnum):
    """Where a change came from."""

    EDIT = "edit"
    UNDO = "undo"
    REDO = "redo"
    ELSEWHERE = "elsewhere"


class Store(Protocol):
    """Where a document's changes are kept."""

    @property
    def path(self) -> Path | None:
        """The file; None where there is none."""

    @property
    def read_only(self) -> bool:
        """Whether writing is known to fail."""

    def read(self) -> Contents:
        """All that is kept, as it is now."""

    def changes_since(self, sequence: int) -> tuple[Entry, ...]:
        """The journal past a number."""

    def data_version(self) -> int:
        """A number that is another one when others have written."""

    def write(self, change: Change, *, made_on: int, kind: Kind = Kind.EDIT, of: int | None = None) -> Entry:
        """Keep a change. Raises BehindError where others have written since `made_on`."""

    def is_at(self, path: Path) -> bool:
        """Whether the file at `path`, by whatever name, is the one it keeps changes in."""

    def close(self) -> None:
        """Let go of the file."""


_MOST_ATTEMPTS = 20
"""So often a change is tried on what others have just written before the file counts as busy."""


_MANY = 1000
"""Edits in a change from which on it pays not to look for cycles among what is made."""


class OpenDocument:
    """A binder that is worked on. Used by one thread at a time; a task gets `binder`, which never changes under it."""

    def __init__(self, store: Store, contents: Contents, *, data_version: int = 0) -> None:
        self._store = store
        self._binder = self._as_opened = contents.binder
        self._entries = list(contents.entries)
        self._order = UndoOrder(contents.entries)
        self._data_version = data_version
        self._listeners: list[Callable[[Change, Origin], None]] = []

    @classmethod
    def open(cls, path: Path, *, scribe: Scribe | None = None, patience: float = PATIENCE) -> Self:
        """Open a binder file. Raises as `BinderFile.open`."""
        return cls._of_file(BinderFile.open(path, scribe=scribe, patience=patience))

    @classmethod
    def create(cls, path: Path, binder: Binder, *, replace: bool = False, scribe: Scribe | None = None) -> Self:
        """Write a binder to a new file and open that. Raises as `BinderFile.create`."""
        return cls._of_file(BinderFile.create(path, Contents(binder), replace=replace, scribe=scribe))

    @classmethod
    def in_memory(cls, binder: Binder, *, scribe: Scribe | None = None) -> Self:
        """A document that is in no file yet."""
        contents = Contents(binder)
        return cls(MemoryStore(contents, scribe), contents)

    @classmethod
    def _of_file(cls, file: BinderFile) -> Self:
        return cls(file, file.opened, data_version=file.opened_data_version)

    @property
    def binder(self) -> Binder:
        """The binder as it is now."""
        return self._binder

    @property
    def path(self) -> Path | None:
        """The file it lives in; None where it is in none."""
        return self._store.path

    @property
    def read_only(self) -> bool:
        """Whether its file is write-protected: every change will be refused."""
        return self._store.read_only

    @property
    def undo_label(self) -> str | None:
        """The label of the change that `undo` takes back; None where there is none."""
        return self._label(self._order.next_undo)

    @property
    def redo_label(self) -> str | None:
        """The label of the change that `redo` does again; None where there is none."""
        return self._label(self._order.next_redo)

    @property
    def undo_size(self) -> int:
        """How large the change is that `undo` takes back, in characters of its entry; 0 where there is none."""
        return self._size(self._order.next_undo)

    @property
    def redo_size(self) -> int:
        """How large the change is that `redo` does again, as `undo_size`."""
        return self._size(self._order.next_redo)

    def _size(self, sequence: int | None) -> int:
        return 0 if sequence is None else len(self._entry(sequence).edits)

    def _label(self, sequence: int | None) -> str | None:
        return None if sequence is None else self._entry(sequence).label

    def _entry(self, sequence: int) -> Entry:
        return self._entries[sequence - self._entries[0].sequence]

    def history(self) -> tuple[Entry, ...]:
        """Every change ever made, the oldest first."""
        return tuple(self._entries)

    def listen(self, listener: Callable[[Change, Origin], None]) -> None:
        """Have `listener` called with each change, once it is made, and where it came from."""
        self._listeners.append(listener)

    def make(self, change: Change) -> Change:
        """Make a change and keep it. Returns what is different now, which may be nothing.

        Raises ConflictError, the errors of `integrity` or FileTroubleError, and then nothing has changed.
        """
        return self._make(change, Kind.EDIT, of=None)

    def undo(self) -> Change | None:
        """Take back the last change that is not taken back yet, also from before the document was opened.

        Returns what is different now; None where there was nothing to take back. Raises as `make`, and
        ForgottenChangeError where another version of the program wrote the change.
        """
        of = self._order.next_undo
        return None if of is None else self._make(self._entry(of).change().inverse(), Kind.UNDO, of=of)

    def redo(self) -> Change | None:
        """Do again the change that was taken back last. Returns and raises as `undo`."""
        of = self._order.next_redo
        return None if of is None else self._make(self._entry(of).change(), Kind.REDO, of=of)

    def go_back_to_opened(self) -> Change:
        """Go back to the binder as it was opened: one change, that can be taken back like any other."""
        label = _("Go back to how it was opened")
        return self.make(changed(label, before=every_record(self._binder), after=every_record(self._as_opened)))

    def _make(self, change: Change, kind: Kind, *, of: int | None, attempts: int = _MOST_ATTEMPTS) -> Change:
        with uncollected() if len(change.edits) > _MANY else nullcontext():
            return self._made(change, kind, of, attempts)

    def _made(self, change: Change, kind: Kind, of: int | None, attempts: int) -> Change:
        value = apply(self._binder, change)
        real = _differing(self._binder, value, change)
        if not real.edits and kind is Kind.EDIT:
            return real
        try:
            entry = self._store.write(real, made_on=self._sequence, kind=kind, of=of)
        except BehindError as behind:
            if not attempts:
                raise BusyFileError(behind.path) from behind
            self._take_in_news()
            return self._make(change, kind, of=of, attempts=attempts - 1)
        self._follow(entry, value)
        self._announce(real, Origin(kind))
        return real

    @property
    def _sequence(self) -> int:
        return self._entries[-1].sequence if self._entries else 0

    def _follow(self, entry: Entry, value: Binder) -> None:
        self._binder = value
        self._entries.append(entry)
        self._order.follow(entry)

    def _announce(self, change: Change, origin: Origin) -> None:
        for listener in tuple(self._listeners):
            listener(change, origin)

    def catch_up(self) -> bool:
        """Take in what others have written to the file, and announce it. Returns whether there was anything.

        Quick where there is nothing, so that it can be asked often. Raises FileTroubleError, MovedFileError among them.
        """
        version = self._store.data_version()
        if version == self._data_version:
            return False
        self._data_version = version
        return self._take_in_news()

    def _take_in_news(self) -> bool:
        changes = self._followed(self._store.changes_since(self._sequence)) or self._read_again()
        for change in changes:
            self._announce(change, Origin.ELSEWHERE)
        return bool(changes)

    def _followed(self, entries: tuple[Entry, ...]) -> list[Change]:
        """The changes of others, made on the value too; none where they do not fit it."""
        value, changes = self._binder, []
        try:
            for entry in entries:
                changes.append(entry.change())
                value = apply(value, changes[-1])
        except BinderError:
            return []
        for entry in entries:
            self._follow(entry, value)
        return changes

    def _read_again(self) -> list[Change]:
        """What is different in a file that was written past the journal, or by a newer version, as one change."""
        contents = self._store.read()
        change = changed(_("Changed elsewhere"), before=every_record(self._binder), after=every_record(contents.binder))
        self._binder, self._entries = contents.binder, list(contents.entries)
        self._order = UndoOrder(contents.entries)
        return [change] if change.edits else []

    def save_copy_as(self, path: Path, *, replace: bool = True) -> None:
        """Write the binder with its history to another file, and stay in this one.

        It is written from memory, so also where this file has been lost. Raises as `create_file`, and OwnFileError.
        """
        if self._store.is_at(path):
            raise OwnFileError(path)
        create_file(path, self._contents(), replace=replace)

    def move_to(self, path: Path, *, replace: bool = True, scribe: Scribe | None = None) -> None:
        """Write the binder with its history to another file, and go on in that. Raises as `save_copy_as`."""
        self.save_copy_as(path, replace=replace)
        file = BinderFile.open(path, scribe=scribe)
        self._store.close()
        self._store, self._data_version = file, file.opened_data_version

    def _contents(self) -> Contents:
        return Contents(self._binder, tuple(self._entries))

    def close(self) -> None:
        """Let go of the file; a second time does nothing."""
        self._store.close()


def _differing(before: Binder, after: Binder, change: Change) -> Change:
    """What a change really made different, one edit a record: what the file has to write."""
    touched = dict.fromkeys((edit.table, edit.id) for edit in change.edits)
    once = len(touched) == len(change.edits)
    if once and all(before.find(*key) is edit.before for key, edit in zip(touched, change.edits, strict=True)):
        return _without_idle(change) if any(map(_is_idle, change.edits)) else change
    edits = (Edit(before=before.find(*key), after=after.find(*key)) for key in touched)
    return _without_idle(Change(change.label, tuple(edits)))


def _is_idle(edit: Edit) -> bool:
    return (edit.before is None) == (edit.after is None) and edit.before == edit.after


def _without_idle(change: Change) -> Change:
    return Change(change.label, tuple(edit for edit in change.edits if not _is_idle(edit)))
