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
from binder.kitchen.plain import plain_record, record_of
from binder.kitchen.shapes import tidy
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Mapping

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
            return Change(self.label, tuple(_edit(plain) for plain in json.loads(self.edits)))
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


def _edit(plain: Mapping[str, Any]) -> Edit:
    record_type = RECORD_TYPES[plain["table"]]
    before, after = (record_of(record_type, plain[side]) if plain[side] else None for side in ("before", "after"))
    return Edit(before=before, after=after)


def _plain_edit(edit: Edit) -> dict[str, object]:
    return {"table": edit.table, "before": _plain_side(edit.before), "after": _plain_side(edit.after)}


def _plain_side(record: Record | None) -> dict[str, Any] | None:
    return plain_record(record) if record else None


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

    def entry(self, change: Change, *, kind: Kind, of: int | None, made_on: int) -> Entry:
        """The journal's entry of a change."""
        at = self.now().astimezone(UTC)
        return Entry(
            sequence=made_on + 1,
            kind=kind,
            of=of,
            label=tidy(change.label),
            edits=json.dumps([_plain_edit(edit) for edit in change.edits], ensure_ascii=False, separators=(",", ":")),
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
