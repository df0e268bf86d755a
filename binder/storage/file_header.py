"""What the first bytes of a file say, read before SQLite opens it (format: sqlite.org/fileformat2.html, section 1.3).

Never while this process has the file open: closing a second handle to it would drop the locks that SQLite holds
(sqlite.org/howtocorrupt.html, section 2.2).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.kitchen.whole_file import read_start, require_plain_file
from binder.kitchen.wording import _
from binder.storage.file_errors import DamagedFileError, NotABinderError
from binder.storage.schema import APPLICATION_ID

if TYPE_CHECKING:
    from pathlib import Path

MAGIC = b"SQLite format 3\x00"
HEADER_BYTES = 100
APPLICATION_ID_BYTES = slice(68, 72)
_SMALLEST_FILE = 512

FileKey = tuple[int, int]
"""Device and number of a file: the same for all its names."""

_open_here: dict[FileKey, int] = {}


def key_of(path: Path) -> FileKey:
    """The key of the file at `path`. Raises UnreadableFileError where there is no plain file."""
    facts = require_plain_file(path)
    return facts.st_dev, facts.st_ino


def note_open(key: FileKey) -> None:
    """Remember that this process has the file open once more."""
    _open_here[key] = _open_here.get(key, 0) + 1


def note_closed(key: FileKey) -> None:
    """Remember that this process has closed the file once."""
    left = _open_here.get(key, 0) - 1
    if left > 0:
        _open_here[key] = left
    else:
        _open_here.pop(key, None)


def is_open_here(path: Path) -> bool:
    """Whether this process has the file at `path` open. Raises UnreadableFileError where there is no plain file."""
    return key_of(path) in _open_here


def looks_like_sqlite(start: bytes) -> bool:
    """Whether a file that begins so is one of SQLite's."""
    return start.startswith(MAGIC)


def require_binder_header(path: Path) -> None:
    """Check that a file may be a binder. Raises UnreadableFileError, NotABinderError or DamagedFileError."""
    if is_open_here(path):
        return
    start = read_start(path, _SMALLEST_FILE)
    if not start:
        raise NotABinderError(path, _("it is empty."))
    if not looks_like_sqlite(start):
        raise NotABinderError(path, _("it is a file of another kind."))
    if len(start) < _SMALLEST_FILE:
        raise DamagedFileError(path, _("most of it is missing"))
    if start[APPLICATION_ID_BYTES] != APPLICATION_ID.to_bytes(4):
        raise NotABinderError(path, _("it belongs to another program."))
