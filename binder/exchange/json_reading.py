"""From the objects and lists of a JSON document to a binder. What does not fit is named by its place, in words."""

from __future__ import annotations

import difflib
import json
from datetime import date, time
from typing import TYPE_CHECKING

from binder.exchange.json_strict import Doubled
from binder.exchange.nesting import OWNER_FIELDS, PARTS, SETTINGS, TOP_LISTS, implied_id
from binder.kitchen.binder import RECORD_TYPES, TABLE_OF, Binder, binder_of
from binder.kitchen.errors import BinderError
from binder.kitchen.integrity import UnclearLineError, references_of, require_all_whole
from binder.kitchen.plain import record_of
from binder.kitchen.record import Field, Record, UnfitValueError, field_of, fields_of
from binder.kitchen.settings import SETTINGS_ID
from binder.kitchen.shapes import tidy
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

FORMAT = "binder"
VERSION = 1
"""What a document says it is."""

_HEAD = ("format", "version")

Where = tuple[str, ...]
"""The way to a value from the top of the document, in words."""


class UnfitDocumentError(BinderError):
    """A JSON document that is not a binder's; `where` leads to what is wrong."""

    def __init__(self, where: Where, says: str) -> None:
        self.where = where
        super().__init__(f"{' › '.join(where)}: {says}" if where else says)


class NewerDocumentError(BinderError):
    """A document that a newer version of the program wrote."""

    def __init__(self, *, called: str, version: int) -> None:
        self.version = version
        document = called or _("This document")
        super().__init__(
            _("{document} has version {version}, and this program reads up to {known}. Update the program.").format(
                document=document, version=version, known=VERSION
            )
        )


def binder_of_document(document: object, *, called: str = "") -> Binder:
    """The binder in a document that `strict_json` has read.

    Raises UnfitDocumentError, NewerDocumentError, or the errors of `integrity`.
    """
    top: Where = (called,) if called else ()
    read = _require_object(document, top)
    _require_our_format(read, top, called)
    _require_known(read, top, {*_HEAD, SETTINGS, *TOP_LISTS})
    reader = _Reader()
    if SETTINGS not in read:
        raise UnfitDocumentError(top, _("“{key}” is missing. Add it.").format(key=SETTINGS))
    reader.read(SETTINGS, read[SETTINGS], (*top, SETTINGS), {"id": SETTINGS_ID})
    for table in TOP_LISTS:
        for index, part in enumerate(_require_list(read.get(table, []), (*top, table))):
            reader.read(table, part, (*top, table, _number(index, part)), {})
    return reader.binder()


def _require_our_format(document: Mapping[str, object], top: Where, called: str) -> None:
    if document.get("format") != FORMAT:
        raise UnfitDocumentError(
            top, _("this is not a binder: it takes “format”: “binder” at the top. Choose another file.")
        )
    version = document.get("version")
    if isinstance(version, bool) or not isinstance(version, int | float) or version != version or version < 1:  # noqa: PLR0124
        wanted = _("it cannot be {value}; it takes {version}.").format(value=_shown(version), version=VERSION)
        raise UnfitDocumentError((*top, "version"), wanted)
    if version != VERSION:
        raise NewerDocumentError(called=called, version=int(min(version, 10**9)))


class _Reader:
    """Gathers records, each with the place it came from."""

    def __init__(self) -> None:
        self._places: dict[tuple[str, str], Where] = {}
        self._records: list[Record] = []

    def read(self, table: str, value: object, where: Where, implied: Mapping[str, object]) -> None:
        """Read a record and what nests in it."""
        plain = _require_object(value, where)
        record = _record(table, plain, where, implied)
        self._keep(table, record, where)
        for part_table, owner_field in PARTS[table]:
            parts = _require_list(plain.get(part_table, []), (*where, part_table))
            for index, part in enumerate(parts):
                known = {"id": implied_id(record.id, index), owner_field: record.id, "position": index}
                self.read(part_table, part, (*where, part_table, _number(index, part)), known)

    def _keep(self, table: str, record: Record, where: Where) -> None:
        other = self._places.setdefault((table, record.id), where)
        if other is not where:
            says = _("the id “{id}” is taken already, at {other}. Give it another.")
            raise UnfitDocumentError((*where, "id"), says.format(id=record.id, other=" › ".join(other)))
        self._records.append(record)

    def binder(self) -> Binder:
        """The binder of what was read. Raises UnfitDocumentError, or the errors of `integrity`."""
        binder = binder_of(self._records)
        for record in self._records:
            self._require_references(binder, record)
        try:
            require_all_whole(binder)
        except UnclearLineError as error:
            raise UnfitDocumentError(self._place(error.line), error.why) from error
        return binder

    def _require_references(self, binder: Binder, record: Record) -> None:
        for field, reference in references_of(type(record)):
            target = getattr(record, field)
            if target is not None and target not in binder.table(reference.table):
                says = _("no {table} have the id “{target}”{nearest}. Correct it, or add the record.").format(
                    table=reference.table,
                    target=_short(target),
                    nearest=_nearest(target, binder.table(reference.table)),
                )
                raise UnfitDocumentError((*self._place(record), field), says)

    def _place(self, record: Record) -> Where:
        return self._places[(TABLE_OF[type(record)], record.id)]


def _record(table: str, plain: Mapping[str, object], where: Where, implied: Mapping[str, object]) -> Record:
    record_type = RECORD_TYPES[table]
    fields = [field for field in fields_of(record_type) if field.name != OWNER_FIELDS[table]]
    if table == SETTINGS:
        fields = [field for field in fields if field.name != "id"]
    _require_known(plain, where, {*(field.name for field in fields), *(part for part, _field in PARTS[table])})
    for field in fields:
        if field.required and field.name not in plain and field.name not in implied:
            says = _("“{field}” is missing; it takes {rule}.").format(field=field.name, rule=_rule(field))
            raise UnfitDocumentError(where, says)
    names = {field.name for field in fields_of(record_type)}
    known = {name: value for name, value in implied.items() if name in names}
    given = {field.name: plain[field.name] for field in fields if field.name in plain}
    try:
        return record_of(record_type, known | given)
    except UnfitValueError as error:
        field = field_of(record_type, error.field)
        says = _("it cannot be {value}; it takes {rule}.").format(
            value=_shown(plain.get(field.name, error.value)), rule=_rule(field)
        )
        raise UnfitDocumentError((*where, field.name), says) from error


def _rule(field: Field) -> str:
    """What a field takes, with an example where a text must be written in one way."""
    examples = {date: "2026-03-14", time: "07:30"}
    if field.kind not in examples:
        return field.rule()
    return _("{rule}, as in “{example}”").format(rule=field.rule(), example=examples[field.kind])


def _require_object(value: object, where: Where) -> dict[str, object]:
    if isinstance(value, Doubled):
        raise UnfitDocumentError(
            where, _("the key “{key}” stands there twice. Take one out.").format(key=_short(value.doubled))
        )
    if not isinstance(value, dict):
        raise UnfitDocumentError(
            where, _("it cannot be {value}; it takes an object in {{ }}.").format(value=_shown(value))
        )
    return value


def _require_list(value: object, where: Where) -> Sequence[object]:
    if not isinstance(value, list):
        raise UnfitDocumentError(where, _("it cannot be {value}; it takes a list in [ ].").format(value=_shown(value)))
    return value


def _require_known(plain: Mapping[str, object], where: Where, known: set[str]) -> None:
    for key in plain:
        if key not in known:
            says = _("“{key}” is not known here{nearest}. Correct it, or take it out.")
            raise UnfitDocumentError(where, says.format(key=_short(key), nearest=_nearest(key, known)))


def _nearest(word: str, known: Iterable[str]) -> str:
    """The known word most like one that is not, as the middle of a sentence; nothing where none is like it."""
    found = difflib.get_close_matches(word, sorted(known), n=1)
    return _("; the nearest is “{word}”").format(word=_short(found[0])) if found else ""


def _number(index: int, part: object) -> str:
    """A place in a list as people count, with the name of what stands there."""
    name = part.get("name") if isinstance(part, dict) else None
    return f"{index + 1} “{_short(name)}”" if isinstance(name, str) and name else str(index + 1)


def _shown(value: object) -> str:
    """A value as the document has it; one that holds others only by its kind, so that the sentence stays short."""
    if isinstance(value, dict):
        return _("an object")
    if isinstance(value, list) and any(isinstance(part, dict | list) for part in value):
        return _("a list of lists or objects")
    return _short(json.dumps(value, ensure_ascii=False, default=str))


def _short(text: str) -> str:
    plain = " ".join(tidy(text).split())
    return plain if len(plain) <= 50 else plain[:47] + "..."  # noqa: PLR2004 - so much of it tells which it is
