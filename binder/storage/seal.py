"""What a binder file adds up to. SQLite's own check does not see a digit flipped in a price; this does.

Each record and each journal entry has a hash, and the seal is their sum modulo 2**128: it does not depend on the order
of rows, and a change moves it by what it takes out and puts in, without reading the rest. It guards against damage, not
against malice: whoever can write the file can write a seal.
"""

from __future__ import annotations

import json
from hashlib import blake2b
from typing import TYPE_CHECKING

from binder.kitchen.binder import TABLE_OF
from binder.kitchen.turns import in_turns
from binder.storage.record_text import text_of

if TYPE_CHECKING:
    from collections.abc import Iterable

    from binder.kitchen.record import Record
    from binder.storage.journal import Entry
    from binder.storage.record_text import EditText

_BYTES = 16
_MODULUS = 2 ** (8 * _BYTES)


def seal_of(records: Iterable[Record], entries: Iterable[Entry]) -> str:
    """The seal of these records and journal entries."""
    total = sum(_record_hash(TABLE_OF[type(record)], text_of(record)) for record in in_turns(records))
    return _written(total + sum(_entry_hash(entry) for entry in entries))


def moved_seal(seal: str, edits: Iterable[EditText], entry: Entry) -> str:
    """The seal after a change, of which these are the edits, and its journal entry."""
    total = int(seal, 16) + _entry_hash(entry)
    for table, before, after in in_turns(edits):
        if before is not None:
            total -= _record_hash(table, before)
        if after is not None:
            total += _record_hash(table, after)
    return _written(total)


def _written(total: int) -> str:
    return f"{total % _MODULUS:0{2 * _BYTES}x}"


def _record_hash(table: str, text: str) -> int:
    return int.from_bytes(blake2b((table + text).encode(), digest_size=_BYTES).digest())


_PIECE = 100_000
"""Characters of a large change that are hashed at once, so that other threads run in between."""

_NO_EDITS = '"edits": ""'


def _entry_hash(entry: Entry) -> int:
    """The hash of "journal" and the row as JSON with its names sorted, whose edits are written piece by piece."""
    before, _found, after = json.dumps({**entry.row(), "edits": ""}, sort_keys=True).partition(_NO_EDITS)
    edits = (json.dumps(entry.edits[at : at + _PIECE])[1:-1] for at in range(0, len(entry.edits), _PIECE))
    return _hash(["journal", before, _NO_EDITS[:-1], *edits, '"', after])


def _hash(pieces: Iterable[str]) -> int:
    digest = blake2b(digest_size=_BYTES)
    for piece in pieces:
        digest.update(piece.encode())
    return int.from_bytes(digest.digest())
