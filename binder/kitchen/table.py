"""One table of a binder: an immutable mapping from id to record, with the groupings it has been asked for."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Generic, TypeVar, overload

from binder.kitchen.record import Record

R = TypeVar("R", bound=Record)
T = TypeVar("T")


class Table(Mapping[str, R], Generic[R]):
    """Records by id. `where` gives those of one owner in their order; each grouping is made once and kept."""

    __slots__ = ("_groups", "_records")

    def __init__(self, records: Iterable[R] = ()) -> None:
        self._records: dict[str, R] = {record.id: record for record in records}
        self._groups: dict[str, dict[object, tuple[R, ...]]] = {}

    def __getitem__(self, key: str) -> R:
        return self._records[key]

    def __iter__(self) -> Iterator[str]:
        return iter(self._records)

    def __len__(self) -> int:
        return len(self._records)

    def __contains__(self, key: object) -> bool:
        return key in self._records

    @overload
    def get(self, key: str, /) -> R | None: ...
    @overload
    def get(self, key: str, /, default: R | T) -> R | T: ...
    def get(self, key: str, /, default: R | T | None = None) -> R | T | None:
        """The record with an id, or `default`: asked for so often that Mapping's own way would be felt."""
        return self._records.get(key, default)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Table) and self._records == other._records

    def __hash__(self) -> int:
        return id(self)

    def with_changes(self, changes: Iterable[tuple[str, R | None]]) -> Table[R]:
        """A table with each record put in place, or taken out where it is None. Groupings known so far are kept up."""
        latest = dict(changes)
        changed: Table[R] = Table()
        changed._records = dict(self._records)
        for key, record in latest.items():
            if record is None:
                changed._records.pop(key, None)
            else:
                changed._records[key] = record
        if len(latest) <= len(self._records) // 4:
            before = [self._records[key] for key in latest if key in self._records]
            after = [record for record in latest.values() if record is not None]
            # Taken as a list first: another thread may ask this table for a grouping meanwhile.
            known = list(self._groups.items())
            changed._groups = {field: _regrouped(groups, field, before, after) for field, groups in known}
        return changed

    def where(self, field: str, value: object) -> tuple[R, ...]:
        """The records whose `field` is `value`, by position where they have one, then by id."""
        groups = self._groups.get(field)
        if groups is None:
            groups = self._groups[field] = _grouped(self._records.values(), field)
        return groups.get(value, ())


def _grouped(records: Iterable[R], field: str) -> dict[object, tuple[R, ...]]:
    gathered: dict[object, list[R]] = {}
    for record in records:
        gathered.setdefault(getattr(record, field), []).append(record)
    return {value: tuple(sorted(group, key=in_order)) for value, group in gathered.items()}


def _regrouped(
    groups: dict[object, tuple[R, ...]], field: str, before: Sequence[R], after: Sequence[R]
) -> dict[object, tuple[R, ...]]:
    """A grouping with some records as they were taken out and as they are put in; the other groups stay as they are."""
    regrouped = dict(groups)
    gone = {record.id for record in before}
    for value in {getattr(record, field) for record in (*before, *after)}:
        left = [record for record in groups.get(value, ()) if record.id not in gone]
        group = [*left, *(record for record in after if getattr(record, field) == value)]
        if group:
            regrouped[value] = tuple(sorted(group, key=in_order))
        else:
            regrouped.pop(value, None)
    return regrouped


def in_order(record: Record) -> tuple[int, str]:
    """The order of siblings: by position where they have one, then by id."""
    return (getattr(record, "position", 0), record.id)
