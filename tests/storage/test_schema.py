"""The tables follow from the records, and what a record refuses its table refuses too."""

from __future__ import annotations

import re
import sqlite3
from collections.abc import Iterator

import pytest
import sqlalchemy as sa
from sqlalchemy.exc import IntegrityError

from binder.kitchen.binder import RECORD_TYPES
from binder.kitchen.record import fields_of
from binder.kitchen.shapes import Reference
from binder.storage.connection import close, connect_in_memory, reading, writing
from binder.storage.migrations.draft import FIRST, drafted
from binder.storage.schema import METADATA, SCHEMA_VERSION, TABLES
from binder.storage.upgrade import Migrations, run_migrations

FOOD: dict[str, object] = {
    "id": "chickpeas",
    "name": "Chickpeas",
    "other_names": "[]",
    "section": "grains and pulses",
    "keeping": "cupboard",
    "temperature_control": 0,
    "allergens": "[]",
    "doneness": "",
    "trim_yield": 1.0,
    "yield_source": "",
    "staple": 0,
    "free": 0,
    "notes": "",
    "source": "",
}


@pytest.fixture
def connection() -> Iterator[sa.Connection]:
    made = connect_in_memory()
    with writing(made):
        METADATA.create_all(made)
    yield made
    close(made)


def statements(connection: sa.Connection) -> dict[str, str]:
    """What made each table and index, without what only lays it out."""
    with reading(connection):
        made = connection.exec_driver_sql("SELECT name, sql FROM sqlite_master WHERE sql IS NOT NULL")
        return {name: re.sub(r"\s+", "", sql) for name, sql in made}


def test_the_migrations_lead_to_the_tables_of_the_records(connection: sa.Connection) -> None:
    migrated = connect_in_memory()
    try:
        with writing(migrated):
            run_migrations(migrated, Migrations())
        assert statements(migrated) == statements(connection), (
            "The records have changed: write a migration, or, while nothing is published, "
            "run python -m binder.storage.migrations.draft and then ruff format"
        )
        with reading(migrated):
            assert migrated.exec_driver_sql("PRAGMA user_version").scalar_one() == SCHEMA_VERSION
            assert migrated.exec_driver_sql("SELECT version_num FROM alembic_version").scalars().all() == ["0001"]
    finally:
        close(migrated)


def test_the_draft_of_the_first_migration_says_what_it_says() -> None:
    text = FIRST.read_text(encoding="utf-8")
    assert re.sub(r"[\s,]+", "", drafted(text)).replace("'", '"') == re.sub(r"[\s,]+", "", text).replace("'", '"')


def test_every_field_is_a_column_and_every_reference_an_index() -> None:
    for name, record_type in RECORD_TYPES.items():
        fields = fields_of(record_type)
        assert [column.name for column in TABLES[name].columns] == [field.name for field in fields]
        indexed = {column.name for index in TABLES[name].indexes for column in index.columns}
        assert indexed == {field.name for field in fields if isinstance(field.shape, Reference)}


def test_a_food_that_fits_goes_in(connection: sa.Connection) -> None:
    with writing(connection):
        connection.execute(sa.insert(TABLES["foods"]), FOOD)
        assert connection.execute(sa.select(TABLES["foods"].c.trim_yield)).scalar_one() == 1.0


@pytest.mark.parametrize(
    "values",
    [
        {"name": ""},
        {"name": "x" * 301},
        {"name": None},
        {"section": "greens"},
        {"trim_yield": 0.0},
        {"trim_yield": 1.5},
        {"trim_yield": -1.0},
        {"trim_yield": float("nan")},
        {"trim_yield": float("inf")},
        {"trim_yield": "much"},
        {"density": 26.0},
        {"keeps_days": -1},
        {"staple": 2},
        {"staple": None},
    ],
)
def test_a_value_out_of_its_limits_does_not(connection: sa.Connection, values: dict[str, object]) -> None:
    row = FOOD | values
    columns, marks = ", ".join(row), ", ".join(f":{name}" for name in row)
    with pytest.raises(IntegrityError), writing(connection):
        connection.exec_driver_sql(f"INSERT INTO foods ({columns}) VALUES ({marks})", row)  # noqa: S608 - names of ours


def test_a_link_is_looked_at_when_the_transaction_ends(connection: sa.Connection) -> None:
    measure = {"id": "m", "food": "chickpeas", "unit": "cup", "preparation": "", "grams": 200.0, "source": ""}
    with writing(connection):
        connection.execute(sa.insert(TABLES["measures"]), measure)
        connection.execute(sa.insert(TABLES["foods"]), FOOD)
    with pytest.raises(IntegrityError), writing(connection):
        connection.execute(sa.delete(TABLES["foods"]))
    with reading(connection):
        assert connection.execute(sa.select(TABLES["foods"].c.id)).scalars().all() == ["chickpeas"]


def test_nothing_in_the_schema_needs_a_newer_sqlite_than_python_brings() -> None:
    assert sqlite3.sqlite_version_info >= (3, 31), "trusted_schema is from 3.31"
