"""The journal: every change in the order it was made. Undo, redo and history follow from it and from nothing else."""

from __future__ import annotations

import getpass
import json
from dataclasses import dataclass, field
from datetime import UTC, datetime
from enum import StrEnum
from typing import TYPE_CHECKING, Any

from binder.kitchen.binder import RECORD_TYPES
from binder.kitchen.change import Change, Edit
from binder.kitchen.errors import BinderError
from binder.kitchen.plain import record_of
from binder.kitchen.shapes import tidy
from binder.kitchen.turns import in_turns
from binder.kitchen.wording import _
from binder.storage.record_text import EditText, names_in_text, texts_of

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Mapping, Sequence

    from binder.kitchen.record import Record


class Kind(StrEnum):
    """Whether an entry is an edit of its own, or takes one back, or does it again."""

    EDIT = "edit"
    UNDO = "undo"
    REDO = "redo"


class ForgottenChangeError(BinderError):
    """A change whose journal entry this version cannot read."""

    def __init__(self, label: str) -> None:
        super().__init__(
            _("“{label}” cannot be taken back: it was made by another version of the program.").format(label=label)
        )


@dataclass(frozen=True)
class Entry:
    """One change as the journal keeps it. `of` is the number of the edit that an undo or a redo is of; `at` is UTC."""

    sequence: int
    kind: Kind
    of: int | None
    label: str
    edits: str
    at: datetime
    author: str

    @property
    def made_on(self) -> int:
        """The number of the change it was made on; 0 for the binder as it was created."""
        return self.sequence - 1

    def change(self) -> Change:
        """The change itself. Raises ForgottenChangeError."""
        try:
            return Change(self.label, tuple(in_turns(_edits(self.edits))))
        except (BinderError, KeyError, TypeError, ValueError) as error:
            raise ForgottenChangeError(self.label) from error

    def row(self) -> dict[str, str | int | None]:
        """The entry as a row of its table."""
        return {
            "sequence": self.sequence,
            "kind": str(self.kind),
            "of": self.of,
            "made_on": self.made_on,
            "label": self.label,
            "edits": self.edits,
            "at": self.at.isoformat(timespec="milliseconds"),
            "author": self.author,
        }


def entry_of_row(row: Mapping[str, Any]) -> Entry:
    """The entry of a row. Raises ValueError where the row is none."""
    return Entry(
        sequence=row["sequence"],
        kind=Kind(row["kind"]),
        of=row["of"],
        label=row["label"],
        edits=row["edits"],
        at=datetime.fromisoformat(row["at"]),
        author=row["author"],
    )


def _written(edits: Sequence[EditText]) -> str:
    """Edits as JSON: the names of fields once a table, then for each edit its table and the values before and after."""
    names = {table: names_in_text(RECORD_TYPES[table]) for table in dict.fromkeys(edit.table for edit in edits)}
    listed = ",".join(f'["{edit.table}",{edit.before or "null"},{edit.after or "null"}]' for edit in in_turns(edits))
    return f"{_FIELDS}{json.dumps(names, separators=(',', ':'))}{_EDITS}{listed}{_END}"


_FIELDS, _EDITS, _END = '{"fields":', ',"edits":[', "]}"

_value_at = json.JSONDecoder().raw_decode


def _edits(text: str) -> Iterable[Edit]:
    """The edits one by one: all of a large change at once, and no other thread would run for half a second."""
    fields, at = _value_at(text, _past(text, 0, _FIELDS))
    at = _past(text, at, _EDITS)
    while not text.startswith(_END, at):
        (table, before, after), at = _value_at(text, at)
        yield Edit(before=_record(table, fields[table], before), after=_record(table, fields[table], after))
        at += text.startswith(",", at)
    if at + len(_END) != len(text):
        raise ValueError(text[at:])


def _past(text: str, at: int, mark: str) -> int:
    """The place after a mark. Raises ValueError where it is not there."""
    if not text.startswith(mark, at):
        raise ValueError(mark)
    return at + len(mark)


def _record(table: str, names: Sequence[str], values: Sequence[object] | None) -> Record | None:
    return None if values is None else record_of(RECORD_TYPES[table], dict(zip(names, values, strict=True)))


def utc_now() -> datetime:
    """The time by the computer's clock, in UTC."""
    return datetime.now(UTC)


def this_user() -> str:
    """The name of the computer's user; empty where it has none."""
    try:
        return getpass.getuser()
    except (ImportError, KeyError, OSError):  # each of them is one system's way to say so
        return ""


@dataclass(frozen=True)
class Scribe:
    """Who writes the journal, and by which clock. Entries are ordered by their numbers, never by the clock."""

    author: str = field(default_factory=this_user)
    now: Callable[[], datetime] = utc_now

    def entry(
        self, change: Change, *, kind: Kind, of: int | None, made_on: int, texts: Sequence[EditText] | None = None
    ) -> Entry:
        """The journal's entry of a change, whose edits may be there as `texts` already."""
        at = self.now().astimezone(UTC)
        return Entry(
            sequence=made_on + 1,
            kind=kind,
            of=of,
            label=tidy(change.label),
            edits=_written(texts_of(change.edits) if texts is None else texts),
            at=at.replace(microsecond=at.microsecond // 1000 * 1000),
            author=tidy(self.author),
        )


class UndoOrder:
    """Which change undo takes back next and which redo does again, by number.

    An edit goes onto the pile to undo and clears the one to redo; an undo moves its edit to the pile to redo, and a
    redo moves it back.
    """

    def __init__(self, entries: Iterable[Entry] = ()) -> None:
        self._undo: list[int] = []
        self._redo: list[int] = []
        for entry in entries:
            self.follow(entry)

    def follow(self, entry: Entry) -> None:
        """Take in the next entry of the journal."""
        if entry.kind is Kind.EDIT or entry.of is None:
            self._undo.append(entry.sequence)
            self._redo.clear()
            return
        source, goal = (self._undo, self._redo) if entry.kind is Kind.UNDO else (self._redo, self._undo)
        if entry.of in source:
            source.remove(entry.of)
        goal.append(entry.of)

    @property
    def next_undo(self) -> int | None:
        """The number of the change that undo would take back."""
        return self._undo[-1] if self._undo else None

    @property
    def next_redo(self) -> int | None:
        """The number of the change that redo would do again."""
        return self._redo[-1] if self._redo else None
