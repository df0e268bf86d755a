"""JSON laid out for people: two spaces a level, and whatever holds no object stands on one line where it fits."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence

WIDTH = 120
"""Columns of a line, unless one value alone is longer."""


def laid_out(value: object) -> str:
    """The text of a JSON value, without a line feed at its end. The same value always gives the same text."""
    return _text(value, level=0, taken=0)


def _text(value: object, *, level: int, taken: int) -> str:
    """`taken` is how many columns of the line the key before the value fills."""
    flat = None if _holds_objects(value) else json.dumps(value, ensure_ascii=False, allow_nan=False)
    if flat is not None and (2 * level + taken + len(flat) < WIDTH or not _can_break(value)):
        return flat
    margin = "  " * (level + 1)
    if isinstance(value, Mapping):
        keys = ((json.dumps(key, ensure_ascii=False), part) for key, part in value.items())
        lines = [f"{margin}{key}: {_text(part, level=level + 1, taken=len(key) + 2)}" for key, part in keys]
        return "{\n" + ",\n".join(lines) + "\n" + "  " * level + "}"
    lines = [margin + _text(part, level=level + 1, taken=0) for part in value]  # type: ignore[attr-defined]
    return "[\n" + ",\n".join(lines) + "\n" + "  " * level + "]"


def _holds_objects(value: object) -> bool:
    """Whether an object or a list has an object somewhere below it."""
    parts = value.values() if isinstance(value, Mapping) else value if _is_list(value) else ()
    return any(isinstance(part, Mapping) or (_is_list(part) and _holds_objects(part)) for part in parts)  # type: ignore[attr-defined]


def _can_break(value: object) -> bool:
    return bool(value) and (isinstance(value, Mapping) or _is_list(value))


def _is_list(value: object) -> bool:
    return isinstance(value, Sequence) and not isinstance(value, str)
