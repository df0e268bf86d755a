"""JSON as its standard (RFC 8259) has it, read so that a slip is named and not guessed at."""

from __future__ import annotations

import json
import re

from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _

_LONGEST_WHOLE_NUMBER = 30
"""Digits; a longer number fits nowhere in a binder, and reading it exactly takes time."""


class BrokenJsonError(BinderError):
    """Text that is no JSON; `line` and `column` count from 1."""

    def __init__(self, *, called: str, line: int, column: int, why: str) -> None:
        self.line, self.column = line, column
        place = _("line {line}, column {column}").format(line=line, column=column)
        super().__init__(f"{called}, {place}: {why}" if called else f"{place[:1].upper()}{place[1:]}: {why}")


class Doubled(dict[str, object]):
    """An object in which the key `doubled` stands more than once."""

    doubled: str = ""


def strict_json(content: str | bytes, *, called: str = "") -> object:
    """The value of a JSON text in UTF-8. An object with a key twice comes as `Doubled`. Raises BrokenJsonError."""
    text = _decoded(content, called) if isinstance(content, bytes) else content.removeprefix("\ufeff")
    try:
        return json.loads(text, object_pairs_hook=_object, parse_int=_whole_number)
    except json.JSONDecodeError as error:
        why = _("this is no JSON ({why}). Mend it there.").format(why=_slip(error.msg, text, error.pos))
        raise BrokenJsonError(called=called, line=error.lineno, column=error.colno, why=why) from None
    except RecursionError:
        raise BrokenJsonError(called=called, line=1, column=1, why=_too_deep()) from None


def _too_deep() -> str:
    return _("lists and objects stand deeper in one another than in any binder. Choose the right file.")


def _decoded(content: bytes, called: str) -> str:
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = content[: error.start].decode("utf-8-sig", errors="replace")
        line, column = before.count("\n") + 1, len(before) - before.rfind("\n")
        why = _("this is not UTF-8. Save the file as UTF-8.")
        raise BrokenJsonError(called=called, line=line, column=column, why=why) from None


def _slip(message: str, text: str, position: int) -> str:
    """The decoder's message in our words."""
    if position >= len(text.rstrip()):
        return _("the text ends too early")
    known = {
        "Expecting ',' delimiter": _("a comma is missing"),
        "Expecting ':' delimiter": _("a colon is missing"),
        "Expecting property name enclosed in double quotes": _("a key in double quotes is missing"),
        "Illegal trailing comma before end of object": _("a comma too many"),
        "Illegal trailing comma before end of array": _("a comma too many"),
        "Expecting value": _("a value is missing"),
        "Extra data": _("there is more after the end"),
        "Unterminated string starting at": _("a text is not closed"),
        "Invalid control character at": _("a text runs over the line's end"),
        "Invalid \\escape": _("a backslash too many"),
        "Invalid \\uXXXX escape": _("\\u takes four digits"),
    }
    return known.get(re.sub(r": ?$", "", message), message)


def _object(pairs: list[tuple[str, object]]) -> dict[str, object]:
    read = dict(pairs)
    if len(read) == len(pairs):
        return read
    keys = [key for key, _value in pairs]
    doubled = Doubled(read)
    doubled.doubled = next(key for key in keys if keys.count(key) > 1)
    return doubled


def _whole_number(digits: str) -> int | float:
    return int(digits) if len(digits) <= _LONGEST_WHOLE_NUMBER else float(digits)
