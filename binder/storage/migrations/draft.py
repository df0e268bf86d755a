"""Writes the first migration anew from the record types: `python -m binder.storage.migrations.draft`.

Only while no file of the first schema is out in the world. From then on a change of the records gets a migration of its
own, `versions/0002_....py`, written by hand, and `SCHEMA_VERSION` goes up by one; a test holds the migrations to the
records.
"""

from __future__ import annotations

import json
import re
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING

from binder.kitchen.binder import RECORD_TYPES
from binder.kitchen.record import Field, fields_of
from binder.kitchen.shapes import Number, Reference, Text
from binder.kitchen.whole_file import write_whole

if TYPE_CHECKING:
    from collections.abc import Iterator

FIRST = Path(__file__).parent / "versions" / "0001_first.py"
_WIDTH = 120 - 4
"""Columns that the configuration of ruff allows, less the indent within the function."""
_BEGINNING = "def _make_records() -> None:\n"


def drafted(text: str) -> str:
    """The text of the first migration with the tables of records as they are now."""
    before, _old = text.split(_BEGINNING)
    return before + _BEGINNING + "".join(f"    {line}\n" for name in RECORD_TYPES for line in _table(name))


def _table(name: str) -> Iterator[str]:
    yield "_make("
    yield f'    "{name}",'
    for field in fields_of(RECORD_TYPES[name]):
        yield from _laid_out(f"    {_part(field)},")
    yield ")"


def _laid_out(line: str) -> Iterator[str]:
    """A line as ruff formats it: broken at its commas where it is too long."""
    if len(line) <= _WIDTH:
        yield line
        return
    made, _bracket, arguments = line.removesuffix("),").partition("(")
    margin = " " * (len(line) - len(line.lstrip()))
    yield f"{made}("
    yield from (f"{margin}    {argument}," for argument in re.split(r", (?![^\"]*\"(?:, |$))", arguments))
    yield f"{margin}),"


def _part(field: Field) -> str:  # noqa: PLR0911 - one return a kind of column
    name, shape, optional = field.name, field.shape, ", optional=True" if field.optional else ""
    if name == "id":
        return "_key()"
    if isinstance(shape, Reference):
        return f'_link("{name}", "{shape.table}"{optional})'
    if isinstance(shape, Number):
        least, most = field.kind(shape.least), field.kind(shape.most)
        make = "_real" if field.kind is float else "_whole"
        return f'{make}("{name}", "{">" if shape.open_below else ">="} {least}", "<= {most}"{optional})'
    if isinstance(shape, Text):
        return f'_text("{name}", {shape.least}, {shape.most}{optional})'
    if field.kind is bool:
        return f'_yes_or_no("{name}"{optional})'
    if issubclass(field.kind, StrEnum):
        return f'_one_of("{name}", {", ".join(json.dumps(choice) for choice in field.kind)}{optional})'
    return f'_plain("{name}"{optional})'


if __name__ == "__main__":
    write_whole(FIRST, drafted(FIRST.read_text(encoding="utf-8")).encode())
