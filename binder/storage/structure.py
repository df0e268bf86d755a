"""Whether the tables of a file are the ones this version makes: no column fewer, no trigger or view more."""

from __future__ import annotations

import functools
from typing import TYPE_CHECKING

from binder.storage.connection import close, connect_in_memory, reading, writing
from binder.storage.schema import METADATA

if TYPE_CHECKING:
    import sqlalchemy as sa

Structure = frozenset[tuple[object, ...]]

_THINGS = "SELECT 'thing', tbl_name, name, type FROM sqlite_master WHERE name NOT LIKE 'sqlite!_%' ESCAPE '!'"
_COLUMNS = """
    SELECT 'column', m.name, c.name, c.type, c."notnull", c.pk, c.hidden
    FROM sqlite_master m JOIN pragma_table_xinfo(m.name) c WHERE m.type = 'table'
"""
_LINKS = """
    SELECT 'link', m.name, f."from", f."table", f."to", f.on_update, f.on_delete
    FROM sqlite_master m JOIN pragma_foreign_key_list(m.name) f WHERE m.type = 'table'
"""
_INDEXES = """
    SELECT 'index', m.tbl_name, m.name, i.name
    FROM sqlite_master m JOIN pragma_index_info(m.name) i WHERE m.type = 'index'
"""


def structure_of(connection: sa.Connection) -> Structure:
    """The tables, columns, links and indexes of a file, and whatever else is in it; within a transaction.

    Names and types, not the text of the statements that made them: that differs with the version of SQLAlchemy.
    """
    queries = (_THINGS, _COLUMNS, _LINKS, _INDEXES)
    return frozenset(tuple(row) for query in queries for row in connection.exec_driver_sql(query))


@functools.cache
def expected_structure() -> Structure:
    """The structure of a file that this version makes."""
    connection = connect_in_memory()
    try:
        with writing(connection):
            METADATA.create_all(connection)
        with reading(connection):
            return structure_of(connection)
    finally:
        close(connection)


def strange_things(found: Structure) -> list[str]:
    """What is in a file and should not be, or is not and should: tables by name, triggers and views by their own."""
    differing = found ^ expected_structure()
    return sorted({str(fact[2] if fact[0] == "thing" else fact[1]) for fact in differing})
