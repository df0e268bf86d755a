"""How to get from the rows that are shown to those that should be, touching as few as can be."""

from __future__ import annotations

from bisect import bisect_left
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence


@dataclass(frozen=True)
class Removed:
    """Rows `first` to `last` go."""

    first: int
    last: int


@dataclass(frozen=True)
class Moved:
    """The row at `source` goes to stand at `target`, counted once it has been lifted out."""

    source: int
    target: int


@dataclass(frozen=True)
class Inserted:
    """`count` new rows, from `start` on in the new order, come to stand from there on."""

    start: int
    count: int


Step = Removed | Moved | Inserted


def steps_between(old: Sequence[str], new: Sequence[str]) -> Iterator[Step]:
    """The steps from the keys `old` to the keys `new`, each on the result of the one before. Keys are unique."""
    if old == new:
        return
    wanted = set(new)
    yield from _removals(old, wanted)
    current = [key for key in old if key in wanted]
    kept = set(current)
    order = [key for key in new if key in kept]
    yield from _moves(current, order)
    yield from _insertions(new, kept)


def _removals(old: Sequence[str], wanted: set[str]) -> Iterator[Removed]:
    last: int | None = None
    for at in range(len(old) - 1, -1, -1):
        gone = old[at] not in wanted
        if gone and last is None:
            last = at
        if last is not None and (not gone or at == 0):
            yield Removed(at if gone else at + 1, last)
            last = None


def _moves(current: list[str], order: list[str]) -> Iterator[Moved]:
    """Leave the longest run that is in order where it is, and move the others each once."""
    stay = _longest_in_order(current, order)
    for place, key in enumerate(order):
        if key in stay:
            continue
        source = current.index(key)
        current.pop(source)
        target = current.index(order[place - 1]) + 1 if place else 0
        current.insert(target, key)
        if source != target:
            yield Moved(source, target)


def _longest_in_order(current: list[str], order: list[str]) -> set[str]:
    if current == order:
        return set(order)
    rank = {key: place for place, key in enumerate(order)}
    tails: list[int] = []
    holders: list[str] = []
    before: dict[str, str | None] = {}
    for key in current:
        at = bisect_left(tails, rank[key])
        before[key] = holders[at - 1] if at else None
        tails[at : at + 1] = [rank[key]]
        holders[at : at + 1] = [key]
    stay: set[str] = set()
    at_key = holders[-1] if holders else None
    while at_key is not None:
        stay.add(at_key)
        at_key = before[at_key]
    return stay


def _insertions(new: Sequence[str], kept: set[str]) -> Iterator[Inserted]:
    start: int | None = None
    for at, key in enumerate(new):
        if key not in kept and start is None:
            start = at
        if key in kept and start is not None:
            yield Inserted(start, at - start)
            start = None
    if start is not None:
        yield Inserted(start, len(new) - start)
