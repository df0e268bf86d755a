"""Records as rows of their tables, and back."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

from binder.kitchen.binder import RECORD_TYPES
from binder.kitchen.plain import plain_record, record_of
from binder.kitchen.record import Record, fields_of

if TYPE_CHECKING:
    from collections.abc import Mapping

Row = dict[str, str | int | float | None]


def row_of(record: Record) -> Row:
    """A record as SQL has it."""
    return {name: _column_value(value) for name, value in plain_record(record).items()}


def _column_value(value: Any) -> str | int | float | None:  # noqa: ANN401 - narrowed here
    if isinstance(value, bool):
        return int(value)
    if isinstance(value, list):
        return json.dumps(value, ensure_ascii=False)
    column_value: str | int | float | None = value
    return column_value


def record_of_row(table: str, row: Mapping[str, object]) -> Record:
    """The record of a row. Raises UnfitValueError, or ValueError where a word list is not JSON."""
    record_type = RECORD_TYPES[table]
    plain = dict(row)
    for field in fields_of(record_type):
        value = plain[field.name]
        if field.kind is tuple and isinstance(value, str):
            plain[field.name] = json.loads(value)
        elif field.kind is bool and value in {0, 1}:
            plain[field.name] = bool(value)
    return record_of(record_type, plain)
