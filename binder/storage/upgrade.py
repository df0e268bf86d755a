"""From an older schema to this version's, in one transaction, after a copy of the file has been put beside it."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from binder.kitchen.whole_file import FileInTheWayError, written_beside
from binder.storage.connection import driver, writing
from binder.storage.contents import write_seal
from binder.storage.file_facts import user_version
from binder.storage.schema import SCHEMA_VERSION, revision_of
from binder.storage.soundness import checked_contents, damage_named

if TYPE_CHECKING:
    import sqlalchemy as sa


@dataclass(frozen=True)
class Migrations:
    """The folder of Alembic's migrations and the schema version that the newest leads to."""

    folder: Path = Path(__file__).parent / "migrations"
    version: int = SCHEMA_VERSION


def upgrade_file(connection: sa.Connection, path: Path, migrations: Migrations) -> Path:
    """Bring an older file up to date. Returns the copy of it as it was.

    Raises UnwritableFileError where no copy can be put beside, and then nothing has changed; as nothing has where a
    migration fails.
    """
    copy = _copy_beside(connection, path)
    upgrade(connection, path, migrations)
    return copy


def _copy_beside(connection: sa.Connection, path: Path) -> Path:
    """`NAME.before-upgrade`, or with a number where an earlier upgrade has left one."""
    number = 1
    while True:
        copy = path.with_name(f"{path.name}.before-upgrade{f'-{number}' if number > 1 else ''}")
        try:
            with written_beside(copy, replace=False) as beside:
                back_up(driver(connection), beside)
            return copy
        except FileInTheWayError:
            number += 1


def back_up(source: sqlite3.Connection, path: Path) -> None:
    """Copy a database, as it is at one moment, by SQLite's own backup; never by reading a file that is open."""
    with closing(sqlite3.connect(path)) as target:
        source.backup(target)


def upgrade(connection: sa.Connection, path: Path, migrations: Migrations) -> None:
    """Run the migrations that a database lacks. Raises DamagedFileError where it does not hang together afterwards."""
    beneath = driver(connection)
    beneath.execute("PRAGMA foreign_keys = OFF").close()  # a table that is made anew is for a moment not there
    try:
        with writing(connection):
            if user_version(connection) < migrations.version:
                run_migrations(connection, migrations)
                write_seal(connection)
            with damage_named(path):
                checked_contents(connection, path)
    finally:
        beneath.execute("PRAGMA foreign_keys = ON").close()


def run_migrations(connection: sa.Connection, migrations: Migrations) -> None:
    """Run what a database lacks, an empty one everything, within a transaction, and note the version it then has."""
    from alembic import command
    from alembic.config import Config

    config = Config()
    config.set_main_option("script_location", str(migrations.folder).replace("%", "%%"))
    config.set_main_option("path_separator", "os")
    config.attributes["connection"] = connection
    command.upgrade(config, revision_of(migrations.version))
    connection.exec_driver_sql(f"PRAGMA user_version = {migrations.version}")
