"""Edits written to the tables of records, many at a time: SQLite prepares a statement once and is handed row after row.

In any order: foreign keys are looked at when the transaction ends, and a change has one edit a record.
"""

from __future__ import annotations

import functools
import sqlite3
from dataclasses import dataclass
from typing import TYPE_CHECKING

import sqlalchemy as sa
from sqlalchemy.dialects import sqlite
from sqlalchemy.exc import IntegrityError

from binder.kitchen.turns import in_turns
from binder.storage.rows import row_of
from binder.storage.schema import TABLES

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from binder.kitchen.change import Edit
    from binder.kitchen.record import Record
    from binder.storage.rows import Row, Value


class StrangeRowError(Exception):
    """A row that is there already and should not be, or is not and should. Never shown: the file is out of step."""


@dataclass(frozen=True)
class _Statements:
    """What SQLite is told about a table, with its columns in their order and the id first."""

    insert: str
    update: str
    delete: str


@functools.cache
def _statements(table: str) -> _Statements:
    columns = TABLES[table].c
    key = columns.id == sa.bindparam("record")
    return _Statements(
        insert=_text(sa.insert(TABLES[table])),
        update=_text(sa.update(TABLES[table]).where(key).values(dict.fromkeys(columns.keys()[1:], ""))),
        delete=_text(sa.delete(TABLES[table]).where(key)),
    )


def _text(statement: sa.Insert | sa.Update | sa.Delete) -> str:
    return str(statement.compile(dialect=sqlite.dialect()))


def write_edits(connection: sa.Connection, edits: Iterable[Edit]) -> None:
    """Write edits, one a record, within a transaction. Raises StrangeRowError where rows are not as the edits say."""
    gone: dict[str, list[Row]] = {}
    changed: dict[str, list[Row]] = {}
    made: dict[str, list[Row]] = {}
    for edit in in_turns(edits):
        if edit.after is None:
            gone.setdefault(edit.table, []).append((edit.id,))
        elif edit.before is None:
            made.setdefault(edit.table, []).append(row_of(edit.after))
        else:
            changed.setdefault(edit.table, []).append(_key_last(row_of(edit.after)))
    for table, rows in gone.items():
        _each_finds_one(connection, _statements(table).delete, rows)
    for table, rows in changed.items():
        _each_finds_one(connection, _statements(table).update, rows)
    for table, rows in made.items():
        _insert(connection, table, rows)


def _key_last(row: Row) -> Row:
    key: Value = row[0]
    return (*row[1:], key)


def _each_finds_one(connection: sa.Connection, statement: str, rows: Sequence[Row]) -> None:
    """Keys are no two the same, so that as many rows are found as there are keys only where each finds its own."""
    if connection.exec_driver_sql(statement, list(rows)).rowcount != len(rows):
        raise StrangeRowError


def _insert(connection: sa.Connection, table: str, rows: Sequence[Row]) -> None:
    try:
        connection.exec_driver_sql(_statements(table).insert, list(rows))
    except IntegrityError as error:
        if getattr(error.orig, "sqlite_errorcode", None) == sqlite3.SQLITE_CONSTRAINT_PRIMARYKEY:
            raise StrangeRowError from error
        raise


def insert_records(connection: sa.Connection, table: str, records: Iterable[Record]) -> None:
    """Put records into a table that has none of their ids. Raises StrangeRowError."""
    _insert(connection, table, [row_of(record) for record in records])
