"""What a file adds up to: moved by each change, and the same as if all of it were added up anew."""

from __future__ import annotations

import json
from dataclasses import replace
from hashlib import blake2b

from hypothesis import given
from hypothesis import strategies as st

from binder.kitchen.binder import every_record
from binder.kitchen.change import apply
from binder.storage.journal import Entry, Kind
from binder.storage.record_text import texts_of
from binder.storage.seal import moved_seal, seal_of
from tests.storage.samples import SCRIBE, new_food
from tests.strategies import binders, changes


@given(st.data())
def test_a_change_moves_the_seal_to_that_of_what_is_there_then(data: st.DataObject) -> None:
    binder = data.draw(binders(most=1))
    change = data.draw(changes(binder))
    entry = SCRIBE.entry(change, kind=Kind.EDIT, of=None, made_on=0)
    moved = moved_seal(seal_of(every_record(binder), ()), texts_of(change.edits), entry)
    assert moved == seal_of(every_record(apply(binder, change)), [entry])


def hash_at_once(entry: Entry) -> str:
    """The hash of an entry as the first files have it, worked out here in one go."""
    text = "journal" + json.dumps(entry.row(), sort_keys=True)
    return f"{int.from_bytes(blake2b(text.encode(), digest_size=16).digest()):032x}"


@given(st.text(max_size=60), st.integers(1, 5000), st.text(max_size=20))
def test_a_large_entry_hashed_in_pieces_has_the_hash_of_the_whole(text: str, times: int, author: str) -> None:
    kept = SCRIBE.entry(new_food("salt"), kind=Kind.EDIT, of=None, made_on=0)
    entry = replace(kept, edits=text * times, author=author + '"edits": ""')
    assert seal_of((), [entry]) == hash_at_once(entry)
