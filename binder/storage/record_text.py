"""A record as journal and seal have it: its values as one JSON list, in the order of the fields' names.

By name, so that it is the same however the fields of a record type are arranged.
"""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, NamedTuple

from binder.kitchen.plain import plain_value
from binder.kitchen.record import Record, fields_of, values_getter
from binder.kitchen.turns import in_turns

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from binder.kitchen.change import Edit

_write = json.JSONEncoder(
    ensure_ascii=False, check_circular=False, allow_nan=False, separators=(",", ":"), default=plain_value
).encode


class EditText(NamedTuple):
    """What an edit touched, as text; None where the record is not there."""

    table: str
    before: str | None
    after: str | None


_names: dict[type[Record], tuple[str, ...]] = {}
_values: dict[type[Record], Callable[[object], tuple[object, ...]]] = {}


def names_in_text(record_type: type[Record]) -> tuple[str, ...]:
    """The fields of a record type in the order in which its texts have them."""
    if record_type not in _names:
        _names[record_type] = tuple(sorted(field.name for field in fields_of(record_type)))
    return _names[record_type]


def text_of(record: Record) -> str:
    """The record's values: `["bag","2026-03-01",349]`."""
    values_of = _values.get(type(record))
    if values_of is None:
        values_of = _values[type(record)] = values_getter(names_in_text(type(record)))
    return _write(values_of(record))


def texts_of(edits: Iterable[Edit]) -> tuple[EditText, ...]:
    """Edits as text."""
    return tuple(EditText(edit.table, _side(edit.before), _side(edit.after)) for edit in in_turns(edits))


def _side(record: Record | None) -> str | None:
    return None if record is None else text_of(record)
