"""Records as plain values that JSON and a database know: text, numbers, yes or no, lists of text; and back."""

from __future__ import annotations

import re
from datetime import date, time
from enum import StrEnum
from typing import TYPE_CHECKING, TypeVar

from binder.kitchen.record import Record, fields_of

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from binder.kitchen.record import Field

R = TypeVar("R", bound=Record)

Plain = str | int | float | bool | list[str] | None
"""A value of a field as JSON has it."""

DATE_PATTERN = r"^[0-9]{4}-[0-9]{2}-[0-9]{2}$"
TIME_PATTERN = r"^[0-9]{2}:[0-9]{2}(:[0-9]{2}(\.[0-9]{6})?)?$"
"""A date and a time of day are written as ISO 8601 has them, the time without a zone."""

_DATE, _TIME = re.compile(DATE_PATTERN), re.compile(TIME_PATTERN)


def plain_value(value: object) -> Plain:
    """The value of a field as JSON has it: a whole number without a fraction part, a time with seconds only if any."""
    if isinstance(value, float):
        return int(value) if value.is_integer() else value
    if isinstance(value, StrEnum):
        return str(value)
    if isinstance(value, tuple):
        return list(value)
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, time):
        return value.isoformat() if value.second or value.microsecond else value.isoformat(timespec="minutes")
    return value  # type: ignore[return-value]  # a record holds nothing else


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
    return {field.name: plain_value(getattr(record, field.name)) for field in fields_of(type(record))}


def record_of(record_type: type[R], plain: Mapping[str, object]) -> R:
    """The record that `plain` describes. Raises UnfitValueError, or TypeError where the names are not the record's."""
    values = dict(plain)
    for field in fields_of(record_type):
        if field.name in values:
            values[field.name] = field_value(field, values[field.name])
    make: Callable[..., R] = record_type
    return make(**values)
