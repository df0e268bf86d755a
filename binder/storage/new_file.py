"""A new binder file, written beside and put in place whole."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import sqlalchemy as sa

from binder.kitchen.integrity import require_all_whole
from binder.kitchen.whole_file import written_beside
from binder.storage.connection import close, connect, writing
from binder.storage.contents import write_contents
from binder.storage.file_errors import in_sentences
from binder.storage.schema import APPLICATION_ID, METADATA, REVISION, SCHEMA_VERSION, revision_of

if TYPE_CHECKING:
    from binder.storage.contents import Contents


def create_file(path: Path, contents: Contents, *, replace: bool = False) -> None:
    """Write a binder and its journal to a new file. Nothing is there, or what was, until all of it is on the disk.

    Raises FileInTheWayError, UnwritableFileError or FileTroubleError, and the errors of `integrity`.
    """
    require_all_whole(contents.binder)
    with written_beside(path, replace=replace) as beside, in_sentences(path):
        connection = connect(beside, create=True)
        try:
            with writing(connection):
                _fill(connection, contents)
        finally:
            close(connection)
        _forget_journal(path)


def _fill(connection: sa.Connection, contents: Contents) -> None:
    connection.exec_driver_sql(f"PRAGMA application_id = {APPLICATION_ID}")
    connection.exec_driver_sql(f"PRAGMA user_version = {SCHEMA_VERSION}")
    METADATA.create_all(connection)
    connection.execute(sa.insert(REVISION), {"version_num": revision_of(SCHEMA_VERSION)})
    write_contents(connection, contents)


def _forget_journal(path: Path) -> None:
    """Take away what a crash left of an older file of this name: SQLite would play it back into the new one."""
    Path(f"{path.resolve()}-journal").unlink(missing_ok=True)
