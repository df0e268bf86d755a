"""The base of every record: frozen, validated where it is made, described by its own type hints."""

from __future__ import annotations

import types
from collections.abc import Callable, Sequence
from dataclasses import MISSING, dataclass
from dataclasses import fields as dataclass_fields
from datetime import date, time
from enum import StrEnum
from operator import attrgetter
from typing import Annotated, Any, Union, get_args, get_origin, get_type_hints

from binder.kitchen.errors import BinderError
from binder.kitchen.kept_form import Glance, glance_for
from binder.kitchen.shapes import Key, Number, Reference, Text, Words, tidy
from binder.kitchen.wording import _


class UnfitValueError(BinderError):
    """A value that a field of a record cannot hold."""

    def __init__(self, *, record: str, field: str, value: object, rule: str) -> None:
        self.record, self.field, self.value, self.rule = record, field, value, rule
        shown = repr(value) if len(repr(value)) <= 60 else repr(value)[:57] + "..."  # noqa: PLR2004
        super().__init__(
            _("{record}: {field} cannot be {value}; it takes {rule}.").format(
                record=record, field=field.replace("_", " "), value=shown, rule=rule
            )
        )


@dataclass(frozen=True)
class Field:
    """One field of a record type: its name, Python type, whether it may be None, and its shape."""

    name: str
    kind: type
    optional: bool
    shape: Text | Number | Words | Reference | None
    default: object

    @property
    def required(self) -> bool:
        """Whether a record cannot be made without it."""
        return self.default is MISSING

    def rule(self) -> str:
        """What the field takes, in words."""
        return _or_nothing(_rule(self.kind, self.shape), optional=self.optional)


def _or_nothing(rule: str, *, optional: bool) -> str:
    return _("{rule}, or nothing").format(rule=rule) if optional else rule


def _rule(kind: type, shape: object) -> str:  # noqa: PLR0911 - one sentence a shape
    if isinstance(shape, Reference):
        return _("the id of one of the {table}").format(table=shape.table)
    if isinstance(shape, Number):
        template = (
            _("a number above {least:,.15g} up to {most:,.15g}")
            if shape.open_below
            else _("a number from {least:,.15g} to {most:,.15g}")
        )
        return template.format(least=shape.least, most=shape.most)
    if isinstance(shape, Text):
        if shape.least:
            return _("{least} to {most} characters").format(least=shape.least, most=shape.most)
        return _("at most {most} characters").format(most=shape.most)
    if isinstance(shape, Words):
        return _("at most {most} short words").format(most=shape.most)
    if issubclass(kind, StrEnum):
        return _("one of {choices}").format(choices=", ".join(kind))
    return {bool: _("yes or no"), date: _("a date"), time: _("a time of day")}.get(kind, kind.__name__)


def _described(name: str, hint: Any, default: object) -> Field:  # noqa: ANN401 - a type hint is anything
    shape, kind, optional = None, hint, False
    for _layer in range(4):
        origin = get_origin(kind)
        if origin is Annotated:
            kind, *shapes = get_args(kind)
            shape = shape or shapes[-1]  # the shape said last is the nearest to the field
        elif origin in (Union, types.UnionType):
            optional = True
            (kind,) = [part for part in get_args(kind) if part is not type(None)]
        elif origin is tuple:
            kind = tuple
    return Field(name, kind, optional, shape, default)


_fields: dict[type[Record], dict[str, Field]] = {}


def _fields_by_name(record_type: type[Record]) -> dict[str, Field]:
    known = _fields.get(record_type)
    if known is None:
        hints = get_type_hints(record_type, include_extras=True)
        described = (
            _described(field.name, hints[field.name], field.default) for field in dataclass_fields(record_type)
        )
        known = _fields[record_type] = {field.name: field for field in described}
    return known


def fields_of(record_type: type[Record]) -> tuple[Field, ...]:
    """The fields of a record type in the order they are declared, `id` first."""
    return tuple(_fields_by_name(record_type).values())


def field_of(record_type: type[Record], name: str) -> Field:
    """The field called `name`; KeyError where the record has none."""
    return _fields_by_name(record_type)[name]


def kept_value(field: Field, value: object) -> object:
    """`value` in the form the field keeps, or NotImplemented where it does not fit."""
    if value is None:
        return None if field.optional else NotImplemented
    if field.kind is float and type(value) is int:
        value = float(value) if abs(value) < 10**15 else float("inf")
    if field.kind is tuple and isinstance(value, list):
        value = tuple(value)
    if type(value) is not field.kind:
        return _chosen(field.kind, value)
    return _shaped(field.shape, value)


def _chosen(kind: type, value: object) -> object:
    if issubclass(kind, StrEnum) and isinstance(value, str) and value in list(kind):
        return kind(value)
    return NotImplemented


def _shaped(shape: object, value: Any) -> object:  # noqa: ANN401 - its type has just been checked
    if type(value) is str:
        value = tidy(value)
    elif type(value) is tuple:
        if not all(isinstance(word, str) for word in value):
            return NotImplemented
        value = tuple(tidy(word) for word in value)
    elif type(value) is float:
        value = value + 0.0  # -0.0 and 0.0 are one number here
    if shape is None or isinstance(shape, Reference):
        # A time of day is the shoot's own; its zone stands beside it.
        zoned = getattr(value, "tzinfo", None) is not None
        return NotImplemented if value == "" or zoned else value
    return value if shape.fits(value) else NotImplemented  # type: ignore[attr-defined]


_Look = tuple[Callable[[object], tuple[object, ...]], tuple[tuple[str, object, Glance], ...]]
"""How the values of a record are got all at once, and for each field its name, its default and the glance at it."""

_NO_VALUE = object()
"""What no record has."""

_looks: dict[type[Record], _Look] = {}


def _look_at(record_type: type[Record]) -> _Look:
    """How a type's records are looked over, worked out once. A default needs no look, as it fits."""
    fields = fields_of(record_type)
    glances = tuple((field.name, _fitting_default(field), glance_for(field.kind, field.shape)) for field in fields)
    look = _looks[record_type] = (values_getter([field.name for field in fields]), glances)
    return look


def _fitting_default(field: Field) -> object:
    return field.default if kept_value(field, field.default) is field.default else _NO_VALUE


def values_getter(names: Sequence[str]) -> Callable[[object], tuple[object, ...]]:
    """What gets the values of some fields of a record, all at once."""
    if len(names) == 1:  # attrgetter then gives no tuple
        return lambda record: (getattr(record, names[0]),)
    return attrgetter(*names)


@dataclass(frozen=True, kw_only=True)
class Record:
    """A row of a binder's table. Made only from values that fit; raises UnfitValueError otherwise."""

    id: Key

    def __post_init__(self) -> None:
        values_of, glances = _looks.get(type(self)) or _look_at(type(self))
        for (name, default, is_kept), value in zip(glances, values_of(self), strict=True):
            if value is not default and not is_kept(value):
                self._keep(field_of(type(self), name), value)

    def _keep(self, field: Field, value: object) -> None:
        kept = kept_value(field, value)
        if kept is NotImplemented:
            raise UnfitValueError(record=self.called, field=field.name, value=value, rule=field.rule())
        if kept is not value:
            object.__setattr__(self, field.name, kept)

    @property
    def called(self) -> str:
        """What a sentence calls this record: its kind and its name, or else its id."""
        shown = str(getattr(self, "name", "") or self.id)
        return f"{type(self).__name__.lower()} “{shown[:80]}”"
