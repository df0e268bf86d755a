"""The tables of a binder file, made from the record types: one declaration of a field serves the record and its column.

Texts, dates (ISO 8601), choices and word lists (JSON) are TEXT; numbers REAL or INTEGER; yes and no are 1 and 0. Every
limit of a field is a CHECK, every reference a foreign key that is looked at when a transaction ends.
"""

from __future__ import annotations

from enum import StrEnum
from typing import TYPE_CHECKING, Any

import sqlalchemy as sa

from binder.kitchen.binder import RECORD_TYPES
from binder.kitchen.record import Field, fields_of
from binder.kitchen.shapes import Number, Reference, Text

if TYPE_CHECKING:
    from sqlalchemy.sql.type_api import TypeEngine

APPLICATION_ID = 0x42494E44
"""“BIND”, at byte 68 of the file, by which a binder is told from other SQLite files (sqlite.org/fileformat2.html)."""

SCHEMA_VERSION = 1
"""The number of the newest migration; a file has it as its `user_version`, at byte 60."""

METADATA = sa.MetaData()

_REAL: TypeEngine[Any] = sa.Double().with_variant(sa.REAL(), "sqlite")
_INTEGER: TypeEngine[Any] = sa.BigInteger().with_variant(sa.Integer(), "sqlite")


def _type_of(field: Field) -> TypeEngine[Any]:
    types: dict[type, TypeEngine[Any]] = {float: _REAL, int: _INTEGER, bool: sa.Integer()}
    return types.get(field.kind, sa.Text())


def _check(field: Field, column: sa.Column[object]) -> sa.ColumnElement[bool] | None:
    """What a field's shape says of its column; None where it says nothing that SQL can look at."""
    shape = field.shape
    if isinstance(shape, Number):
        least, most = field.kind(shape.least), field.kind(shape.most)
        above = column > least if shape.open_below else column >= least
        return sa.and_(above, column <= most)
    if isinstance(shape, Text):
        return sa.func.length(column).between(shape.least, shape.most)
    if field.kind is bool:
        return column.in_([0, 1])
    if issubclass(field.kind, StrEnum):
        return column.in_([str(choice) for choice in field.kind])
    return None


def _table(name: str, fields: tuple[Field, ...]) -> sa.Table:
    columns: dict[str, sa.Column[object]] = {
        field.name: sa.Column(
            field.name, _type_of(field), primary_key=field.name == "id", nullable=field.optional and field.name != "id"
        )
        for field in fields
    }
    table = sa.Table(name, METADATA, *columns.values())
    for field in fields:
        _constrain(table, field, columns[field.name])
    return table


def _constrain(table: sa.Table, field: Field, column: sa.Column[object]) -> None:
    check = _check(field, column)
    if check is not None:
        table.append_constraint(sa.CheckConstraint(check, name=f"ck_{table.name}_{field.name}"))
    if isinstance(field.shape, Reference):
        table.append_constraint(
            sa.ForeignKeyConstraint(
                [field.name],
                [f"{field.shape.table}.id"],
                name=f"fk_{table.name}_{field.name}",
                deferrable=True,
                initially="DEFERRED",
            )
        )
        sa.Index(f"ix_{table.name}_{field.name}", column)


TABLES = {name: _table(name, fields_of(record_type)) for name, record_type in RECORD_TYPES.items()}
"""The tables of records, by the names they have in a binder."""

JOURNAL = sa.Table(
    "journal",
    METADATA,
    sa.Column("sequence", _INTEGER, primary_key=True, autoincrement=False),
    sa.Column("kind", sa.Text(), nullable=False),
    sa.Column("of", _INTEGER),
    sa.Column("made_on", _INTEGER, nullable=False),
    sa.Column("label", sa.Text(), nullable=False),
    sa.Column("edits", sa.Text(), nullable=False),
    sa.Column("at", sa.Text(), nullable=False),
    sa.Column("author", sa.Text(), nullable=False),
    sa.CheckConstraint("kind IN ('edit', 'undo', 'redo')", name="ck_journal_kind"),
    sa.CheckConstraint("sequence = made_on + 1", name="ck_journal_made_on"),
)
"""Every change ever made, with the number of the change it was made on."""

SEAL = sa.Table(
    "seal",
    METADATA,
    sa.Column("id", sa.Text(), primary_key=True, nullable=False),
    sa.Column("sum", sa.Text(), nullable=False),
    sa.CheckConstraint("id = 'binder'", name="ck_seal_id"),
)
"""What all records and journal entries add up to: see `storage.seal`."""

REVISION = sa.Table(
    "alembic_version",
    METADATA,
    sa.Column("version_num", sa.String(32), nullable=False),
    sa.PrimaryKeyConstraint("version_num", name="alembic_version_pkc"),
)
"""Alembic's own note of the newest migration, in the form Alembic gives it."""


def revision_of(version: int) -> str:
    """The name of the migration that leads to a schema version: `0001`."""
    return f"{version:04d}"
