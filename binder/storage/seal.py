"""What a binder file adds up to. SQLite's own check does not see a digit flipped in a price; this does.

Each record and each journal entry has a hash, and the seal is their sum modulo 2**128: it does not depend on the order
of rows, and a change moves it by what it takes out and puts in, without reading the rest. It guards against damage, not
against malice: whoever can write the file can write a seal.
"""

from __future__ import annotations

import hashlib
import json
from typing import TYPE_CHECKING

from binder.kitchen.binder import TABLE_OF
from binder.kitchen.plain import plain_record

if TYPE_CHECKING:
    from collections.abc import Iterable

    from binder.kitchen.change import Change
    from binder.kitchen.record import Record
    from binder.storage.journal import Entry

_BYTES = 16
_MODULUS = 2 ** (8 * _BYTES)


def seal_of(records: Iterable[Record], entries: Iterable[Entry]) -> str:
    """The seal of these records and journal entries."""
    total = sum(_record_hash(record) for record in records) + sum(_entry_hash(entry) for entry in entries)
    return _written(total)


def moved_seal(seal: str, change: Change, entry: Entry) -> str:
    """The seal after a change and its journal entry."""
    taken = sum(_record_hash(edit.before) for edit in change.edits if edit.before)
    put = sum(_record_hash(edit.after) for edit in change.edits if edit.after)
    return _written(int(seal, 16) - taken + put + _entry_hash(entry))


def _written(total: int) -> str:
    return f"{total % _MODULUS:0{2 * _BYTES}x}"


def _record_hash(record: Record) -> int:
    return _hash([TABLE_OF[type(record)], plain_record(record)])


def _entry_hash(entry: Entry) -> int:
    return _hash(["journal", entry.row()])


def _hash(value: object) -> int:
    text = json.dumps(value, sort_keys=True)
    return int.from_bytes(hashlib.blake2b(text.encode(), digest_size=_BYTES).digest())
