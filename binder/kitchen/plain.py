"""Records as plain values that JSON and a database know: text, numbers, yes or no, lists of text; and back."""

from __future__ import annotations

import functools
import re
from datetime import date, time
from enum import StrEnum
from typing import TYPE_CHECKING, TypeVar

from binder.kitchen.record import Record, fields_of

if TYPE_CHECKING:
    from collections.abc import Mapping

    from binder.kitchen.record import Field

R = TypeVar("R", bound=Record)

Plain = str | int | float | bool | list[str] | None
"""A value of a field as JSON has it."""

DATE_PATTERN = r"^[0-9]{4}-[0-9]{2}-[0-9]{2}$"
TIME_PATTERN = r"^[0-9]{2}:[0-9]{2}(:[0-9]{2}(\.[0-9]{6})?)?$"
"""A date and a time of day are written as ISO 8601 has them, the time without a zone."""

_DATE, _TIME = re.compile(DATE_PATTERN), re.compile(TIME_PATTERN)


def plain_value(value: object) -> Plain:
    """The value of a field as JSON has it. A whole number has no fraction part; a time has seconds only where it needs them."""
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


def _parsed(parse: object, plain: str) -> object:
    try:
        return parse(plain)  # type: ignore[operator]
    except ValueError:
        return plain


@functools.cache
def _fields(record_type: type[Record]) -> Mapping[str, Field]:
    return {field.name: field for field in fields_of(record_type)}


def plain_record(record: Record) -> dict[str, Plain]:
    """All fields of a record, by name, in the order they are declared."""
    return {name: plain_value(getattr(record, name)) for name in _fields(type(record))}


def record_of(record_type: type[R], plain: Mapping[str, object]) -> R:
    """The record that `plain` describes. Raises UnfitValueError, or TypeError where the names are not the record's."""
    fields = _fields(record_type)
    return record_type(
        **{name: field_value(fields[name], value) if name in fields else value for name, value in plain.items()}
    )  # type: ignore[arg-type]
