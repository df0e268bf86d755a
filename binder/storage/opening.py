"""Opening a binder file: nothing of it is believed before it has been looked at.

Header, `application_id`, version, pages, conditions, foreign keys, tables, records, what must hold between them, and
the seal, in this order; an older file is brought up to date on the way.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.kitchen.wording import _
from binder.storage.connection import close, connect, connect_in_memory, driver, reading
from binder.storage.file_errors import (
    DamagedFileError,
    NewerFileError,
    NotABinderError,
    in_sentences,
)
from binder.storage.file_facts import application_id, data_version, first_fault, user_version
from binder.storage.file_header import require_binder_header
from binder.storage.schema import APPLICATION_ID
from binder.storage.soundness import checked_contents, damage_named
from binder.storage.upgrade import Migrations, upgrade, upgrade_file

if TYPE_CHECKING:
    from pathlib import Path

    import sqlalchemy as sa

    from binder.storage.contents import Contents


@dataclass(frozen=True)
class Opened:
    """A file that was found sound: the connection to it, what it holds, its schema's number, and its data version."""

    connection: sa.Connection
    contents: Contents
    version: int
    data_version: int


def open_checked(path: Path, *, patience: float, migrations: Migrations, leave_as_is: bool = False) -> Opened:
    """Open a binder file and check all of it. `leave_as_is`: an older one is brought up to date in memory only.

    Raises UnreadableFileError, FileTroubleError, or UnwritableFileError where an older file cannot be copied; the file
    is then as it was.
    """
    require_binder_header(path)
    with damage_named(path):
        connection = connect(path, patience=patience)
    try:
        if _is_older(connection, path, migrations):
            connection = _brought_up(connection, path, migrations, in_memory=leave_as_is)
        with damage_named(path), reading(connection):
            return Opened(connection, checked_contents(connection, path), migrations.version, data_version(connection))
    except BaseException:
        close(connection)
        raise


def _is_older(connection: sa.Connection, path: Path, migrations: Migrations) -> bool:
    """Whether a file must be brought up to date. Raises where it is not a binder, or newer, or no version at all."""
    with damage_named(path), reading(connection):
        if application_id(connection) != APPLICATION_ID:
            raise NotABinderError(path, _("it belongs to another program."))
        version = user_version(connection)
        if version > migrations.version:
            raise NewerFileError(path, version=version, known=migrations.version)
        if version < 1:
            raise DamagedFileError(path, _("it has no version"))
        fault = first_fault(connection)
        if fault:
            raise DamagedFileError(path, fault)
        return version < migrations.version


def _brought_up(connection: sa.Connection, path: Path, migrations: Migrations, *, in_memory: bool) -> sa.Connection:
    with in_sentences(path):
        if not in_memory:
            upgrade_file(connection, path, migrations)
            return connection
        copy = connect_in_memory()
        try:
            driver(connection).backup(driver(copy))
            upgrade(copy, path, migrations)
        except BaseException:
            close(copy)
            raise
    close(connection)
    return copy
