"""The JSON Schema (draft 2020-12) of a binder's document, made from the record types that also check it on reading.

`resources/binder.schema.json` is its text: `python -m binder.exchange.json_schema` writes it anew. A schema cannot say
that an id is taken twice, that a reference leads nowhere or that a recipe contains itself; reading says so.
"""

from __future__ import annotations

import inspect
from datetime import date, time
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.exchange.json_layout import laid_out
from binder.exchange.json_reading import FORMAT, VERSION
from binder.exchange.nesting import OWNER_FIELDS, PARTS, SETTINGS, TOP_LISTS
from binder.kitchen.binder import RECORD_TYPES
from binder.kitchen.paths import resources_folder
from binder.kitchen.plain import DATE_PATTERN, TIME_PATTERN, plain_value
from binder.kitchen.record import Field, Record, fields_of
from binder.kitchen.shapes import Number, Reference, Text, Words
from binder.kitchen.whole_file import write_whole

if TYPE_CHECKING:
    from pathlib import Path

Schema = dict[str, object]

_LONGEST_ID = 200


def schema_text() -> str:
    """The schema as `resources/binder.schema.json` holds it."""
    return laid_out(document_schema()) + "\n"


def schema_path() -> Path:
    """Where the program ships the schema."""
    return resources_folder() / "binder.schema.json"


def document_schema() -> Schema:
    """The schema of a whole document."""
    properties: Schema = {
        "format": {"const": FORMAT},
        "version": {"const": VERSION},
        SETTINGS: {"$ref": f"#/$defs/{SETTINGS}"},
    }
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Binder document",
        "description": _ABOUT,
        "type": "object",
        "properties": properties | {table: _list_of(table) for table in TOP_LISTS},
        "required": ["format", "version", SETTINGS],
        "additionalProperties": False,
        "$defs": {table: _record_schema(table) for table in RECORD_TYPES},
    }


_ABOUT = (
    "A whole binder. Records that others own stand in their owner, in order. A field that is left out has its default. "
    "Weights are grams, volumes millilitres, times minutes, money whole minor units of the currency (cents)."
)


def _list_of(table: str) -> Schema:
    return {"type": "array", "items": {"$ref": f"#/$defs/{table}"}}


def _record_schema(table: str) -> Schema:
    record_type, owner_field = RECORD_TYPES[table], OWNER_FIELDS[table]
    left_out = {owner_field, "id" if table == SETTINGS else None}
    fields = [field for field in fields_of(record_type) if field.name not in left_out]
    properties = {field.name: _field_schema(field, owned=owner_field is not None) for field in fields}
    return {
        "description": _about(record_type),
        "type": "object",
        "properties": properties | {part: _list_of(part) for part, _owner_field in PARTS[table]},
        "required": [field.name for field in fields if field.required and not (owner_field and field.name == "id")],
        "additionalProperties": False,
    }


def _about(record_type: type[Record]) -> str:
    return " ".join(inspect.cleandoc(record_type.__doc__ or "").replace("`", "").split())


def _field_schema(field: Field, *, owned: bool) -> Schema:
    schema = _value_schema(field)
    if field.optional:
        schema = _or_null(schema)
    if field.name == "id" and owned:
        return schema | {"description": "Left out: the owner's id, a stroke and the place in the list from 1."}
    if field.name == "position" and owned:
        return schema | {"description": "Left out: the place in the list from 0."}
    told_by_schema = "enum" in schema or field.kind is bool
    described: Schema = {} if told_by_schema else {"description": field.rule()[:1].upper() + field.rule()[1:] + "."}
    default = {} if field.required else {"default": plain_value(field.default)}
    return schema | described | default


def _or_null(schema: Schema) -> Schema:
    choices = schema.get("enum")
    if isinstance(choices, list):
        return {"enum": [*choices, None]}
    return schema | {"type": [schema["type"], "null"]}


def _value_schema(field: Field) -> Schema:
    shape = field.shape
    if isinstance(shape, Reference):
        return {"type": "string", "minLength": 1, "maxLength": _LONGEST_ID}
    if isinstance(shape, Number):
        least = "exclusiveMinimum" if shape.open_below else "minimum"
        kind = "integer" if field.kind is int else "number"
        return {"type": kind, least: plain_value(float(shape.least)), "maximum": plain_value(float(shape.most))}
    if isinstance(shape, Text):
        return {"type": "string", "maxLength": shape.most} | ({"minLength": shape.least} if shape.least else {})
    if isinstance(shape, Words):
        word = {"type": "string", "minLength": 1, "maxLength": shape.most_each}
        return {"type": "array", "items": word, "maxItems": shape.most}
    return _plain_schema(field.kind)


def _plain_schema(kind: type) -> Schema:
    if issubclass(kind, StrEnum):
        return {"enum": [str(choice) for choice in kind]}
    patterns = {date: DATE_PATTERN, time: TIME_PATTERN}
    return {"type": "string", "pattern": patterns[kind]} if kind in patterns else {"type": "boolean"}


if __name__ == "__main__":
    write_whole(schema_path(), schema_text().encode())
