"""Records as rows of their tables, and back."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from datetime import date, time
from enum import StrEnum
from typing import TYPE_CHECKING, Any

from binder.kitchen.binder import RECORD_TYPES
from binder.kitchen.plain import field_value, plain_value
from binder.kitchen.record import Field, Record, fields_of, values_getter
from binder.kitchen.turns import in_turns

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

Value = str | int | float | None
Row = tuple[Value, ...]
"""The values of a record as SQL has them, in the order of the table's columns."""


def _word_list(words: object) -> str:
    return json.dumps(words, ensure_ascii=False)


_AS_SQL_HAS_IT: Mapping[type, Callable[[Any], Value]] = {
    bool: int,
    tuple: _word_list,
    date: date.isoformat,
    time: plain_value,  # type: ignore[dict-item]  # it makes text of a time
}

_RowPlan = tuple[Callable[[object], tuple[Any, ...]], tuple[tuple[int, Callable[[Any], Value]], ...]]
_plans: dict[type[Record], _RowPlan] = {}


def _plan(record_type: type[Record]) -> _RowPlan:
    """What gets the values of a type's records, and which of them, by place, SQL has in another form."""
    fields = fields_of(record_type)
    otherwise = ((place, _converter(field.kind)) for place, field in enumerate(fields))
    plan = values_getter([field.name for field in fields]), tuple((at, made) for at, made in otherwise if made)
    _plans[record_type] = plan
    return plan


def _converter(kind: type) -> Callable[[Any], Value] | None:
    return str if issubclass(kind, StrEnum) else _AS_SQL_HAS_IT.get(kind)


def row_of(record: Record) -> Row:
    """A record as SQL has it."""
    values_of, otherwise = _plans.get(type(record)) or _plan(type(record))
    if not otherwise:
        return values_of(record)
    row = list(values_of(record))
    for place, convert in otherwise:
        if row[place] is not None:
            row[place] = convert(row[place])
    return tuple(row)


def record_of_row(table: str, row: Mapping[str, object]) -> Record:
    """The record of a row. Raises UnfitValueError, or ValueError where a word list is not JSON."""
    names = tuple(row)
    (record,) = records_of_rows(table, names, [tuple(row[name] for name in names)])
    return record


def records_of_rows(table: str, names: Sequence[str], rows: Iterable[Sequence[object]]) -> Iterator[Record]:
    """The records of rows that have these columns. Raises as `record_of_row`, and TypeError where names are wrong."""
    record_type: Callable[..., Record] = RECORD_TYPES[table]
    otherwise = [(field.name, _reader(field)) for field in fields_of(RECORD_TYPES[table]) if field.kind in _READ]
    for row in in_turns(rows):
        values = dict(zip(names, row, strict=True))
        for name, read in otherwise:
            values[name] = read(values[name])
        yield record_type(**values)


_READ = (int, bool, tuple, date, time)


def _reader(field: Field) -> Callable[[object], object]:
    """What makes a field's value of a column's; what it is not it leaves to the record to refuse."""
    if field.kind is tuple:
        return lambda value: json.loads(value) if isinstance(value, str) else value
    if field.kind is bool:
        return lambda value: bool(value) if value in {0, 1} else value
    return lambda value: field_value(field, value)
