"""The one connection to a binder file, set so that a change is on the disk when it is said to be.

Rollback journal and `synchronous=FULL`, never WAL: a binder is one file that can be mailed, and SQLite notices at the
next write that it was moved or deleted. Nothing in a file from elsewhere runs (`trusted_schema=OFF`, as
sqlite.org/security.html advises).
"""

from __future__ import annotations

import sqlite3
from contextlib import contextmanager
from typing import TYPE_CHECKING, Any
from urllib.parse import quote

import sqlalchemy as sa
from sqlalchemy import event
from sqlalchemy.pool import StaticPool

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from pathlib import Path

_PRAGMAS = (
    "trusted_schema = OFF",
    "cell_size_check = ON",
    "mmap_size = 0",
    "foreign_keys = ON",
    "synchronous = FULL",
    "journal_mode = DELETE",
)

PATIENCE = 2.0
"""Seconds to wait for another program that is writing."""


def connect(path: Path, *, create: bool = False, patience: float = PATIENCE) -> sa.Connection:
    """A connection to the file at `path`, which must be there unless `create`. Raises SQLite's errors.

    One thread at a time may use it: a large change is written beside the window, which waits with its own.
    """
    address = f"{_uri(path)}?mode={'rwc' if create else 'rw'}"
    return _connection(lambda: sqlite3.connect(address, uri=True, timeout=patience, check_same_thread=False))


def connect_in_memory() -> sa.Connection:
    """A connection to an empty database that is on no disk."""
    return _connection(lambda: sqlite3.connect(":memory:"))


def _uri(path: Path) -> str:
    """The file's address as SQLite takes it: with an empty authority, also for a Windows share."""
    absolute = path.absolute().as_posix()
    return f"file://{'' if absolute.startswith('/') else '/'}{quote(absolute)}"


def _connection(make: Callable[[], sqlite3.Connection]) -> sa.Connection:
    """SQLAlchemy's documented way to have SQLite's own transactions: sqlite3 begins none, we begin each."""
    engine = sa.create_engine("sqlite://", creator=make, poolclass=StaticPool)
    event.listen(engine, "connect", _prepare)
    event.listen(engine, "begin", _begin)
    try:
        return engine.connect()
    except BaseException:
        engine.dispose()
        raise


def _prepare(connection: sqlite3.Connection, _record: object) -> None:
    connection.isolation_level = None
    try:
        for pragma in _PRAGMAS:
            connection.execute(f"PRAGMA {pragma}").close()
    except BaseException:
        connection.close()
        raise


def _begin(connection: sa.Connection) -> None:
    mode = connection.get_execution_options().get("begin", "IMMEDIATE")
    connection.exec_driver_sql(f"BEGIN {mode}")


@contextmanager
def reading(connection: sa.Connection) -> Iterator[None]:
    """A transaction that only reads: all it reads is of one moment, and it works on a write-protected file."""
    with _transaction(connection, "DEFERRED"):
        yield


@contextmanager
def writing(connection: sa.Connection) -> Iterator[None]:
    """A transaction that has the right to write from its start; another writer waits, or is waited for."""
    with _transaction(connection, "IMMEDIATE"):
        yield


@contextmanager
def _transaction(connection: sa.Connection, mode: str) -> Iterator[None]:
    """A COMMIT that SQLite refuses leaves its transaction open, and SQLAlchemy does not look again."""
    try:
        with connection.execution_options(begin=mode).begin():
            yield
    finally:
        if driver(connection).in_transaction:
            driver(connection).rollback()


def driver(connection: sa.Connection) -> sqlite3.Connection:
    """The sqlite3 connection beneath, for what no transaction may enclose."""
    beneath: Any = connection.connection.driver_connection
    driver_connection: sqlite3.Connection = beneath
    return driver_connection


def close(connection: sa.Connection) -> None:
    """Close the connection and the file."""
    connection.close()
    connection.engine.dispose()
