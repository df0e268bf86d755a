"""A change: what each touched record was and what it becomes. The only way from one binder to the next."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.kitchen.binder import TABLE_OF, Binder
from binder.kitchen.errors import BinderError
from binder.kitchen.integrity import require_whole
from binder.kitchen.turns import in_turns
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterable

    from binder.kitchen.record import Record


class ConflictError(BinderError):
    """A change made on a record that is no longer what the change was made on."""

    def __init__(self, *, label: str, found: Record | None, expected: Record | None) -> None:
        self.found, self.expected = found, expected
        shown = found or expected
        super().__init__(
            _(
                "“{label}” was not done: {record} has been changed meanwhile. Look at it again and repeat the edit."
            ).format(label=label, record=shown.called if shown else "?")
        )


@dataclass(frozen=True)
class Edit:
    """One record before and after; None where it is not there."""

    before: Record | None
    after: Record | None

    @property
    def table(self) -> str:
        """The table the record is kept in."""
        return TABLE_OF[type(self.after or self.before)]  # type: ignore[index]

    @property
    def id(self) -> str:
        """The id of the record."""
        return (self.after or self.before).id  # type: ignore[union-attr]

    def inverse(self) -> Edit:
        """The edit that takes this one back."""
        return Edit(before=self.after, after=self.before)


@dataclass(frozen=True)
class Change:
    """Edits done together or not at all; `label` is what the Edit menu shows: “Set price of tahini”."""

    label: str
    edits: tuple[Edit, ...]

    def inverse(self) -> Change:
        """The change that takes this one back."""
        return Change(self.label, tuple(edit.inverse() for edit in reversed(self.edits)))

    @property
    def empty(self) -> bool:
        """Whether nothing would be different."""
        return all(edit.before == edit.after for edit in self.edits)

    def touches(self, *tables: str) -> bool:
        """Whether a record of one of `tables` is touched."""
        return any(edit.table in tables for edit in self.edits)


def changed(label: str, *, before: Iterable[Record] = (), after: Iterable[Record] = ()) -> Change:
    """The change from some records to others, paired by table and id.

    A record that stands in both is changed; one in `before` alone is taken out, one in `after` alone is made.
    """
    old = {(type(record), record.id): record for record in before}
    new = {(type(record), record.id): record for record in after}
    keys = list(dict.fromkeys([*old, *new]))
    edits = (Edit(before=old.get(key), after=new.get(key)) for key in keys)
    return Change(label, tuple(edit for edit in edits if edit.before != edit.after))


def joined(label: str, changes: Iterable[Change]) -> Change:
    """Several changes, of different records, as one."""
    return Change(label, tuple(edit for change in changes for edit in change.edits))


def apply(binder: Binder, change: Change) -> Binder:
    """The next binder. Raises ConflictError, or an error of `integrity` where the result would not hang together."""
    pending: dict[str, dict[str, Record | None]] = {}
    for edit in in_turns(change.edits):
        table, key = edit.table, edit.id
        done = pending.setdefault(table, {})
        found = done[key] if key in done else binder.find(table, key)
        if found not in (edit.before, edit.after):
            raise ConflictError(label=change.label, found=found, expected=edit.before)
        done[key] = edit.after
    result = binder.with_tables({name: binder.table(name).with_changes(done.items()) for name, done in pending.items()})
    require_whole(result, change.edits)
    return result
