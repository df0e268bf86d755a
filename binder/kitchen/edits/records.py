"""Edits that work on any record: set a field, add, remove with what it owns, move among siblings."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any, TypeVar

from binder.kitchen.binder import TABLE_OF, Binder
from binder.kitchen.change import Change, changed
from binder.kitchen.integrity import references_of, references_to
from binder.kitchen.record import Record
from binder.kitchen.table import in_order

if TYPE_CHECKING:
    from collections.abc import Sequence

R = TypeVar("R", bound=Record)


def set_fields(label: str, record: Record, /, **values: object) -> Change:
    """Put values into fields of a record. Raises UnfitValueError where one does not fit."""
    return changed(label, before=[record], after=[with_values(record, **values)])


def with_values(record: R, **values: Any) -> R:  # noqa: ANN401 - the record's own fields check them
    """The record with other values in some of its fields. Raises UnfitValueError where one does not fit."""
    return replace(record, **values)


def owner_field(record_type: type[Record]) -> str | None:
    """The field that names a record's owner; None for records that stand by themselves."""
    return next((field for field, reference in references_of(record_type) if reference.owner), None)


def siblings(binder: Binder, record: Record) -> tuple[Any, ...]:
    """The records with the same owner, in order, `record` among them if it is in the binder."""
    field = owner_field(type(record))
    table = binder.table(TABLE_OF[type(record)])
    return table.where(field, getattr(record, field)) if field else tuple(table.values())


def owned_by(binder: Binder, record: Record) -> list[Record]:
    """All that goes when `record` goes, owners before what they own."""
    gathered: list[Record] = []
    for table, field, reference in references_to(TABLE_OF[type(record)]):
        if reference.owner or reference.goes_too:
            for part in binder.table(table).where(field, record.id):
                gathered += [part, *owned_by(binder, part)]
    return gathered


def insert(label: str, binder: Binder, record: Record, *, at: int | None = None) -> Change:
    """Add a record, among its siblings at position `at` (None: at the end)."""
    if not hasattr(record, "position"):
        return changed(label, after=[record])
    group = list(siblings(binder, record))
    place = len(group) if at is None else max(0, min(at, len(group)))
    return changed(label, before=group, after=_numbered([*group[:place], record, *group[place:]]))


def remove(label: str, binder: Binder, *records: Record) -> Change:
    """Take records out, with all they own; siblings close up."""
    gone = {(type(part), part.id): part for record in records for part in (record, *owned_by(binder, record))}
    before, after = list(gone.values()), []
    for owner_group in _sibling_groups(binder, records):
        left = [sibling for sibling in owner_group if (type(sibling), sibling.id) not in gone]
        before += left
        after += _numbered(left)
    return changed(label, before=before, after=after)


def _sibling_groups(binder: Binder, records: Sequence[Record]) -> list[list[Any]]:
    groups: dict[object, list[Any]] = {}
    for record in records:
        field = owner_field(type(record))
        if hasattr(record, "position") and field:
            groups[(type(record), getattr(record, field))] = list(siblings(binder, record))
    return list(groups.values())


def move(label: str, binder: Binder, record: Record, *, to: int) -> Change:
    """Put a record at another position among its siblings."""
    group = [sibling for sibling in siblings(binder, record) if sibling.id != record.id]
    place = max(0, min(to, len(group)))
    return changed(label, before=siblings(binder, record), after=_numbered([*group[:place], record, *group[place:]]))


def _numbered(group: Sequence[R]) -> list[R]:
    return [
        sibling if getattr(sibling, "position", number) == number else with_values(sibling, position=number)
        for number, sibling in enumerate(group)
    ]


def ordered(records: Sequence[R]) -> list[R]:
    """Records by position, then id."""
    return sorted(records, key=in_order)
