"""What can befall a binder file, each with a sentence that says how to mend it; and which SQLite code means which.

Codes that mean a fault of the program are left alone: they are for its authors (result codes: sqlite.org/rescode.html).
"""

from __future__ import annotations

import sqlite3
from contextlib import contextmanager
from typing import TYPE_CHECKING

from sqlalchemy.exc import DBAPIError

from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping
    from pathlib import Path


class FileTroubleError(BinderError):
    """A binder file that cannot be opened or written, for a reason outside the program."""

    def __init__(self, path: Path, template: str, **details: object) -> None:
        self.path = path
        super().__init__(template.format(file=path.name, **details))


class NotABinderError(FileTroubleError):
    """A file of another kind."""

    def __init__(self, path: Path, why: str) -> None:
        super().__init__(path, _("“{file}” is not a binder: {why} Choose another file."), why=why)


class NewerFileError(FileTroubleError):
    """A file that a newer version of the program has written."""

    def __init__(self, path: Path, *, version: int, known: int) -> None:
        self.version = version
        template = _(
            "“{file}” was written by a newer version of the program (its format is {version}, this one reads up to "
            "{known}). Update the program; the file is as it was."
        )
        super().__init__(path, template, version=version, known=known)


class DamagedFileError(FileTroubleError):
    """A binder file whose content is not what was written. `why` is for the curious."""

    def __init__(self, path: Path, why: str) -> None:
        self.why = why
        template = _("“{file}” is damaged ({why}). Open a backup, or have what can be read saved into a new file.")
        super().__init__(path, template, why=why)


class BusyFileError(FileTroubleError):
    """A file that another program holds."""

    def __init__(self, path: Path) -> None:
        super().__init__(path, _("“{file}” is held by another program. Try again in a moment, or close that program."))


class ReadOnlyFileError(FileTroubleError):
    """A file, or its folder, that must not be written."""

    def __init__(self, path: Path) -> None:
        template = _("“{file}” or its folder is write-protected. Save a copy in another folder, and go on in that.")
        super().__init__(path, template)


class MovedFileError(FileTroubleError):
    """A file that was moved, deleted or replaced while it was open."""

    def __init__(self, path: Path) -> None:
        template = _("“{file}” has been moved, deleted or replaced. Save a copy of what you see, and go on in that.")
        super().__init__(path, template)


class FullDiskError(FileTroubleError):
    """A disk with no room for the change."""

    def __init__(self, path: Path) -> None:
        template = _(
            "The disk of “{file}” is full. Make room on it and repeat the edit, or save a copy on another disk."
        )
        super().__init__(path, template)


class DiskTroubleError(FileTroubleError):
    """A disk that would not read or write."""

    def __init__(self, path: Path, code: str) -> None:
        template = _(
            "The disk would not read or write “{file}” ({code}); it may be full or taken out. "
            "See to it and repeat the edit, or save a copy on another disk."
        )
        super().__init__(path, template, code=code)


class UnreachableFileError(FileTroubleError):
    """A file that the system does not let be opened."""

    def __init__(self, path: Path) -> None:
        template = _("“{file}” cannot be opened. Check that its folder is there and that you may use it.")
        super().__init__(path, template)


class OwnFileError(FileTroubleError):
    """A copy that would take the place of the file it is a copy of."""

    def __init__(self, path: Path) -> None:
        template = _(
            "“{file}” is the binder you are working in; it is saved already. Choose another name for the copy."
        )
        super().__init__(path, template)


class OutOfStepError(FileTroubleError):
    """A file that another program has changed past the journal."""

    def __init__(self, path: Path) -> None:
        template = _(
            "“{file}” is no longer what is shown here: another program has written to it. Close it and open it again."
        )
        super().__init__(path, template)


_UNREADABLE_TEXT = "Could not decode to UTF-8"
"""How Python's sqlite3 begins its one error that has no code."""


def sentence_for(path: Path, error: BaseException | None) -> FileTroubleError | None:
    """The trouble that an error of sqlite3 means; None where it means a fault of the program."""
    if not isinstance(error, sqlite3.Error):
        return None
    code, name = getattr(error, "sqlite_errorcode", None), getattr(error, "sqlite_errorname", "")
    if code is None:
        return DamagedFileError(path, _("unreadable text")) if str(error).startswith(_UNREADABLE_TEXT) else None
    if code == sqlite3.SQLITE_READONLY_DBMOVED:
        return MovedFileError(path)
    return _by_primary_code(path, code & 0xFF, name)


def _by_primary_code(path: Path, code: int, name: str) -> FileTroubleError | None:
    plain: Mapping[int, type[BusyFileError | ReadOnlyFileError | FullDiskError | UnreachableFileError]] = {
        sqlite3.SQLITE_BUSY: BusyFileError,
        sqlite3.SQLITE_LOCKED: BusyFileError,
        sqlite3.SQLITE_READONLY: ReadOnlyFileError,
        sqlite3.SQLITE_FULL: FullDiskError,
        sqlite3.SQLITE_CANTOPEN: UnreachableFileError,
        sqlite3.SQLITE_PERM: UnreachableFileError,
        sqlite3.SQLITE_AUTH: UnreachableFileError,
    }
    if code in plain:
        return plain[code](path)
    if code == sqlite3.SQLITE_IOERR:
        return DiskTroubleError(path, name)
    if code in {sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB}:
        return DamagedFileError(path, name)
    return None


@contextmanager
def in_sentences(path: Path) -> Iterator[None]:
    """Turn what SQLite says of the file's surroundings into FileTroubleError; faults of the program pass."""
    try:
        yield
    except (DBAPIError, sqlite3.Error) as error:
        trouble = sentence_for(path, error.orig if isinstance(error, DBAPIError) else error)
        if trouble is None:
            raise
        raise trouble from error
