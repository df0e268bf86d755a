"""Records as plain values that JSON and a database know: text, numbers, yes or no, lists of text; and back."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from datetime import date, time
from enum import StrEnum
from typing import TYPE_CHECKING, Any, TypeVar

from binder.kitchen.record import Record, fields_of, values_getter

if TYPE_CHECKING:
    from binder.kitchen.record import Field

R = TypeVar("R", bound=Record)

Plain = str | int | float | bool | list[str] | None
"""A value of a field as JSON has it."""

DATE_PATTERN = r"^[0-9]{4}-[0-9]{2}-[0-9]{2}$"
TIME_PATTERN = r"^[0-9]{2}:[0-9]{2}(:[0-9]{2}(\.[0-9]{6})?)?$"
"""A date and a time of day are written as ISO 8601 has them, the time without a zone."""

_DATE, _TIME = re.compile(DATE_PATTERN), re.compile(TIME_PATTERN)


def _plain_number(value: float) -> float:
    return int(value) if value.is_integer() else value


def _plain_time(value: time) -> str:
    return value.isoformat() if value.second or value.microsecond else value.isoformat(timespec="minutes")


_AS_JSON_HAS_IT: Mapping[type, Callable[[Any], Plain]] = {
    float: _plain_number,
    tuple: list,
    date: date.isoformat,
    time: _plain_time,
}


def plain_value(value: object) -> Plain:
    """The value of a field as JSON has it: a whole number without a fraction part, a time with seconds only if any."""
    convert = _AS_JSON_HAS_IT.get(type(value))
    if convert:
        return convert(value)
    return str(value) if isinstance(value, StrEnum) else value  # type: ignore[return-value]  # a record holds no other


def field_value(field: Field, plain: object) -> object:
    """What `plain` is as a value of `field`; `plain` itself where it is none, for the record to refuse."""
    if field.kind is int and isinstance(plain, float) and plain.is_integer():
        return int(plain)
    if field.kind is date and isinstance(plain, str) and _DATE.match(plain):
        return _parsed(date.fromisoformat, plain)
    if field.kind is time and isinstance(plain, str) and _TIME.match(plain):
        return _parsed(time.fromisoformat, plain)
    return plain


def _parsed(parse: Callable[[str], object], plain: str) -> object:
    try:
        return parse(plain)
    except ValueError:
        return plain


def plain_record(record: Record) -> dict[str, Plain]:
    """All fields of a record, by name, in the order they are declared."""
    names, values_of = _fields_at_once(type(record))
    return {name: plain_value(value) for name, value in zip(names, values_of(record), strict=True)}


_FieldsAtOnce = tuple[tuple[str, ...], Callable[[object], tuple[object, ...]]]
_known: dict[type[Record], _FieldsAtOnce] = {}


def _fields_at_once(record_type: type[Record]) -> _FieldsAtOnce:
    """The names of a type's fields, and what gets their values."""
    if record_type not in _known:
        names = tuple(field.name for field in fields_of(record_type))
        _known[record_type] = names, values_getter(names)
    return _known[record_type]


def record_of(record_type: type[R], plain: Mapping[str, object]) -> R:
    """The record that `plain` describes. Raises UnfitValueError, or TypeError where the names are not the record's."""
    values = dict(plain)
    for field in _otherwise_written(record_type):
        if field.name in values:
            values[field.name] = field_value(field, values[field.name])
    make: Callable[..., R] = record_type
    return make(**values)


_otherwise: dict[type[Record], tuple[Field, ...]] = {}


def _otherwise_written(record_type: type[Record]) -> tuple[Field, ...]:
    """The fields whose plain value may be another than the record's."""
    if record_type not in _otherwise:
        kinds = (int, date, time)
        _otherwise[record_type] = tuple(field for field in fields_of(record_type) if field.kind in kinds)
    return _otherwise[record_type]
