"""One `.binder` file that is open: read, and written in one transaction a change.

What SQLite holds is the binder that the document shows; every error leaves both as they were.
"""

from __future__ import annotations

import os
from typing import TYPE_CHECKING, Self

import sqlalchemy as sa

from binder.kitchen.whole_file import UnreadableFileError, written_beside
from binder.storage.connection import PATIENCE, close, driver, reading, writing
from binder.storage.contents import Contents, read_entries, read_seal, write_seal
from binder.storage.file_errors import MovedFileError, NewerFileError, OutOfStepError, in_sentences
from binder.storage.file_facts import data_version, user_version
from binder.storage.file_header import key_of, note_closed, note_open
from binder.storage.journal import Entry, Kind, Scribe
from binder.storage.new_file import create_file
from binder.storage.opening import open_checked
from binder.storage.record_text import texts_of
from binder.storage.schema import JOURNAL
from binder.storage.seal import moved_seal
from binder.storage.soundness import checked_contents, damage_named
from binder.storage.table_writing import StrangeRowError, write_edits
from binder.storage.upgrade import Migrations, back_up

if TYPE_CHECKING:
    from pathlib import Path

    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.storage.opening import Opened


class BehindError(Exception):
    """A change made on a number that is not the last, as others have written. Never shown: catch up and repeat."""

    def __init__(self, path: Path) -> None:
        super().__init__(path)
        self.path = path


class BinderFile:
    """An open binder file. Use it in one thread at a time, and close it.

    `opened` is what it held when it was opened; `read_only` says that the file or its folder is write-protected, so
    that writing will fail.
    """

    def __init__(self, path: Path, opened: Opened, scribe: Scribe) -> None:
        self.path = path
        self.opened = opened.contents
        self.opened_data_version = opened.data_version
        self.read_only = not (os.access(path, os.W_OK) and os.access(path.absolute().parent, os.W_OK))
        self._connection = opened.connection
        self._scribe = scribe
        self._version = opened.version
        self._key = key_of(path)
        note_open(self._key)

    @classmethod
    def open(
        cls,
        path: Path,
        *,
        scribe: Scribe | None = None,
        patience: float = PATIENCE,
        migrations: Migrations | None = None,
    ) -> Self:
        """Open a file; `patience` is how many seconds to wait for another program that writes.

        An older file is brought up to date, and a copy of it as it was kept beside. Raises UnreadableFileError,
        UnwritableFileError or FileTroubleError; the file is then as it was.
        """
        opened = open_checked(path, patience=patience, migrations=migrations or Migrations())
        return cls(path, opened, scribe or Scribe())

    @classmethod
    def create(
        cls,
        path: Path,
        contents: Contents,
        *,
        replace: bool = False,
        scribe: Scribe | None = None,
        patience: float = PATIENCE,
    ) -> Self:
        """Write a binder to a new file and open that. Raises as `create_file`."""
        create_file(path, contents, replace=replace)
        return cls.open(path, scribe=scribe, patience=patience)

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_exception: object) -> None:
        self.close()

    def close(self) -> None:
        """Close the file; a second time does nothing."""
        if not self._connection.closed:
            close(self._connection)
            note_closed(self._key)

    def read(self) -> Contents:
        """The binder and its journal as they are now. Raises FileTroubleError."""
        with damage_named(self.path), reading(self._connection):
            return checked_contents(self._connection, self.path)

    def changes_since(self, sequence: int) -> tuple[Entry, ...]:
        """The journal past a number. Raises FileTroubleError."""
        with damage_named(self.path), reading(self._connection):
            return read_entries(self._connection, since=sequence)

    def data_version(self) -> int:
        """A number that is another one when others have written. Raises FileTroubleError, also if the file is gone."""
        self._require_in_place()
        with in_sentences(self.path), reading(self._connection):
            return data_version(self._connection)

    def _require_in_place(self) -> None:
        if not self.is_at(self.path):
            raise MovedFileError(self.path)

    def is_at(self, path: Path) -> bool:
        """Whether the file at `path`, by whatever name, is this one."""
        try:
            return key_of(path) == self._key
        except UnreadableFileError:
            return False

    def _require_our_version(self) -> None:
        """A newer program may have brought the file up to date while it was open here."""
        version = user_version(self._connection)
        if version != self._version:
            raise NewerFileError(self.path, version=version, known=self._version)

    def write(self, change: Change, *, made_on: int, kind: Kind = Kind.EDIT, of: int | None = None) -> Entry:
        """Write a change and its journal entry, both or neither. Returns the entry.

        `made_on` is the number of the last change known. Raises BehindError where it is not the last any more, and
        FileTroubleError; nothing is written then.
        """
        texts = texts_of(change.edits)
        entry = self._scribe.entry(change, kind=kind, of=of, made_on=made_on, texts=texts)
        with in_sentences(self.path), writing(self._connection):
            self._require_our_version()
            last = self._connection.execute(
                sa.select(sa.func.coalesce(sa.func.max(JOURNAL.c.sequence), 0))
            ).scalar_one()
            if last != made_on:
                raise BehindError(self.path)
            try:
                write_edits(self._connection, change.edits)
            except StrangeRowError as error:
                raise OutOfStepError(self.path) from error
            self._connection.execute(sa.insert(JOURNAL), entry.row())
            write_seal(self._connection, moved_seal(read_seal(self._connection) or "0", texts, entry))
        return entry

    def copy_to(self, path: Path, *, replace: bool = False) -> None:
        """Copy the file as it is at one moment. Raises UnwritableFileError, FileInTheWayError or FileTroubleError."""
        with written_beside(path, replace=replace) as beside, in_sentences(self.path):
            back_up(driver(self._connection), beside)


def read_binder(path: Path, *, patience: float = PATIENCE) -> Binder:
    """The binder in a file, as `read_contents_of` reads it."""
    return read_contents_of(path, patience=patience).binder


def read_contents_of(path: Path, *, patience: float = PATIENCE) -> Contents:
    """Binder and journal in a file, which is closed again and never changed, not even where it is of an older version.

    Raises UnreadableFileError or FileTroubleError.
    """
    opened = open_checked(path, patience=patience, migrations=Migrations(), leave_as_is=True)
    close(opened.connection)
    return opened.contents
