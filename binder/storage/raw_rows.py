"""Rows of a damaged file, as many as SQLite can still reach: from the front, from the back, then one by one between."""

from __future__ import annotations

import sqlite3
from contextlib import closing, suppress
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from binder.storage.file_header import HEADER_BYTES, MAGIC

if TYPE_CHECKING:
    from pathlib import Path

    import sqlalchemy as sa

RawRow = dict[str, object]

_MOST_PROBES = 200_000


@dataclass
class RawTable:
    """What was found of a table; `whole` says that SQLite met no fault in it."""

    rows: dict[int, RawRow] = field(default_factory=dict)
    whole: bool = True


def mended_header(content: bytes) -> bytes:
    """A file's bytes, those of the header put right that are the same in every binder (sqlite.org/fileformat2.html)."""
    mended = bytearray(content)
    if len(mended) < HEADER_BYTES:
        return content
    mended[0:16] = MAGIC
    if int.from_bytes(mended[16:18]) not in {1, *(2**power for power in range(9, 16))}:
        mended[16:18] = (4096).to_bytes(2)
    mended[18:24] = bytes((1, 1, 0, 64, 32, 32))
    mended[44:48] = (4).to_bytes(4)
    mended[56:60] = (1).to_bytes(4)
    return bytes(mended)


def raw_tables(path: Path, tables: dict[str, sa.Table]) -> dict[str, RawTable]:
    """All rows that can be read of some tables of a file that may be in any state; nothing is raised for the others."""
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.text_factory = lambda text: text.decode("utf-8", "replace")
        for pragma in ("trusted_schema = OFF", "writable_schema = ON", "mmap_size = 0", "foreign_keys = OFF"):
            with suppress(sqlite3.Error):
                connection.execute(f"PRAGMA {pragma}").close()
        return {name: _raw_table(connection, table) for name, table in tables.items()}


def _raw_table(connection: sqlite3.Connection, table: sa.Table) -> RawTable:
    found = RawTable()
    found.whole = _gather(connection, table, "ORDER BY rowid", found)
    if found.whole:
        return found
    last = max(found.rows, default=0)
    _gather(connection, table, "ORDER BY rowid DESC", found)
    first_from_back = min((number for number in found.rows if number > last), default=last)
    for number in range(last + 1, min(first_from_back, last + _MOST_PROBES)):
        _gather(connection, table, f"WHERE rowid = {number}", found)
    return found


def _gather(connection: sqlite3.Connection, table: sa.Table, which: str, found: RawTable) -> bool:
    """Take in rows until the end or the first fault; whether the end was reached.

    Columns go by their place: the name of one may be damaged, and SQLite takes an unknown quoted name for a text.
    """
    names = [column.name for column in table.columns]
    try:
        for rowid, *values in connection.execute(f'SELECT rowid, * FROM "{table.name}" {which}'):  # noqa: S608 - ours
            found.rows[rowid] = dict(zip(names, values, strict=True))
    except (sqlite3.Error, ValueError):  # ValueError: not as many columns as there should be
        return False
    return True
