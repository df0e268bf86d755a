"""A whole binder as one JSON document, and back. The same binder always gives the same bytes.

Owned records nest in their owner, in a list named for their table, in order; so their owner and their position need not
be said, nor an id that is the owner's and the place in the list (`harissa/2`). Fields that have their default are left
out. `resources/binder.schema.json` describes the format for other programs; reading checks by the records' own rules,
which say in one sentence what is wrong and are faster than a schema.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.exchange.json_layout import laid_out
from binder.exchange.json_reading import FORMAT, VERSION, binder_of_document
from binder.exchange.json_strict import strict_json
from binder.exchange.nesting import OWNER_FIELDS, PARTS, SETTINGS, TOP_LISTS, implied_id
from binder.kitchen.binder import TABLE_OF
from binder.kitchen.plain import plain_value
from binder.kitchen.record import fields_of
from binder.kitchen.whole_file import read_whole, write_whole

if TYPE_CHECKING:
    from collections.abc import Mapping
    from pathlib import Path

    from binder.kitchen.binder import Binder
    from binder.kitchen.record import Record


def to_json(binder: Binder) -> str:
    """The binder's JSON document."""
    return laid_out(document_of(binder)) + "\n"


def from_json(content: str | bytes, *, called: str = "") -> Binder:
    """The binder that a JSON document holds; `called` is the file's name for the sentence that says what is wrong.

    Raises BrokenJsonError where it is no JSON, UnfitDocumentError where it is no binder, NewerDocumentError, and the
    errors of `integrity` where its records do not hang together.
    """
    return binder_of_document(strict_json(content, called=called), called=called)


def read_json(path: Path) -> Binder:
    """The binder in a JSON file. Raises UnreadableFileError, or as `from_json`."""
    return from_json(read_whole(path), called=path.name)


def write_json(binder: Binder, path: Path, *, replace: bool = True) -> None:
    """Write a binder as a JSON file, whole or not at all. Raises UnwritableFileError or FileInTheWayError."""
    write_whole(path, to_json(binder).encode(), replace=replace)


def document_of(binder: Binder) -> dict[str, object]:
    """The binder as the objects and lists of its JSON document."""
    document: dict[str, object] = {"format": FORMAT, "version": VERSION}
    document[SETTINGS] = _nested(binder, binder.settings, {"id": binder.settings.id})
    for table in TOP_LISTS:
        records = binder.table(table)
        document[table] = [_nested(binder, records[key], {}) for key in sorted(records)]
    return document


def _nested(binder: Binder, record: Record, implied: Mapping[str, object]) -> dict[str, object]:
    """A record with what it owns, without what is implied or has its default."""
    written: dict[str, object] = {}
    for field in fields_of(type(record)):
        value = getattr(record, field.name)
        if value != implied.get(field.name, field.default):
            written[field.name] = plain_value(value)
    for table, owner_field in PARTS[TABLE_OF[type(record)]]:
        owned = binder.table(table).where(owner_field, record.id)
        if owned:
            written[table] = [
                _nested(binder, part, _implied(table, record.id, index)) for index, part in enumerate(owned)
            ]
    return written


def _implied(table: str, owner: str, index: int) -> dict[str, object]:
    """What the place of an owned record in its list says about it."""
    return {"id": implied_id(owner, index), str(OWNER_FIELDS[table]): owner, "position": index}
