"""All that a binder file holds, read and written in one transaction."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import sqlalchemy as sa

from binder.kitchen.binder import Binder, binder_of, every_record
from binder.storage.journal import Entry, entry_of_row
from binder.storage.rows import records_of_rows
from binder.storage.schema import JOURNAL, SEAL, TABLES
from binder.storage.seal import seal_of
from binder.storage.table_writing import insert_records

if TYPE_CHECKING:
    from collections.abc import Iterable

    from binder.kitchen.record import Record

_SEAL_ID = "binder"


@dataclass(frozen=True)
class Contents:
    """A binder and the journal of how it came to be."""

    binder: Binder
    entries: tuple[Entry, ...] = ()

    @property
    def sequence(self) -> int:
        """The number of the last change; 0 where there was none."""
        return self.entries[-1].sequence if self.entries else 0


def read_contents(connection: sa.Connection) -> Contents:
    """Everything, within a transaction. Raises UnfitValueError or ValueError where a row is no record."""
    return Contents(binder_of(_read_records(connection)), read_entries(connection))


def _read_records(connection: sa.Connection) -> Iterable[Record]:
    for name, table in TABLES.items():
        yield from records_of_rows(name, table.columns.keys(), connection.execute(sa.select(table)))


def read_entries(connection: sa.Connection, *, since: int = 0) -> tuple[Entry, ...]:
    """The journal past a number, in order."""
    query = sa.select(JOURNAL).where(JOURNAL.c.sequence > since).order_by(JOURNAL.c.sequence)
    return tuple(entry_of_row(row) for row in connection.execute(query).mappings())  # type: ignore[arg-type]


def write_contents(connection: sa.Connection, contents: Contents) -> None:
    """Fill the empty tables of a new file."""
    for name in TABLES:
        if contents.binder.table(name):
            insert_records(connection, name, contents.binder.table(name).values())
    if contents.entries:
        connection.execute(sa.insert(JOURNAL), [entry.row() for entry in contents.entries])
    connection.execute(sa.insert(SEAL), {"id": _SEAL_ID, "sum": _seal_of(contents)})


def _seal_of(contents: Contents) -> str:
    return seal_of(every_record(contents.binder), contents.entries)


def read_seal(connection: sa.Connection) -> str | None:
    """The seal that the file has; None where it has lost it."""
    found = connection.execute(sa.select(SEAL.c.sum)).scalar_one_or_none()
    return None if found is None else str(found)


def seal_holds(connection: sa.Connection, contents: Contents) -> bool:
    """Whether what was read is what was written."""
    return read_seal(connection) == _seal_of(contents)


def write_seal(connection: sa.Connection, seal: str | None = None) -> None:
    """Put a seal on the file; None: on all that it holds."""
    sealed = seal or _seal_of(read_contents(connection))
    connection.execute(sa.update(SEAL).values(sum=sealed))
