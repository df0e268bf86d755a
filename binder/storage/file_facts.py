"""What SQLite itself says about an open file: its version, whether it is sound, whether its links hold."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import sqlalchemy as sa


def application_id(connection: sa.Connection) -> int:
    """The number by which a binder is told from other SQLite files."""
    return int(connection.exec_driver_sql("PRAGMA application_id").scalar_one())


def user_version(connection: sa.Connection) -> int:
    """The number of the file's schema."""
    return int(connection.exec_driver_sql("PRAGMA user_version").scalar_one())


def data_version(connection: sa.Connection) -> int:
    """A number that is not the one asked for before if another connection has written (sqlite.org/pragma.html)."""
    return int(connection.exec_driver_sql("PRAGMA data_version").scalar_one())


def first_fault(connection: sa.Connection) -> str | None:
    """The first thing that SQLite finds wrong with its pages, indexes or conditions; None where it finds nothing."""
    found = str(connection.exec_driver_sql("PRAGMA integrity_check(1)").scalar_one())
    return None if found == "ok" else found


def broken_links(connection: sa.Connection) -> list[str]:
    """The tables with a foreign key that leads nowhere."""
    return [str(row[0]) for row in connection.exec_driver_sql("PRAGMA foreign_key_check")]
