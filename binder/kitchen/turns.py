"""Who goes first: work beside a window lets the window's thread go on, where that has something to do.

Python runs one thread at a time. A repaint asks for its turn at every call into Qt, and waits for it at each; where the
work beside it stops for as long as it takes, all of it is there a moment later, and the work loses no more than that.
Where there is no window nothing is ever waited for.
"""

from __future__ import annotations

import threading
from itertools import islice
from typing import TYPE_CHECKING, TypeVar

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

T = TypeVar("T")

_SECONDS_AT_MOST = 0.2
"""So long work waits. Whoever has not ended a turn by then waits for something, and may wait for this very work."""

_A_TURN = 32
"""Records and rows that are handled in a turn, each of them in some microseconds."""


class _FirstInLine:
    """The thread that goes first, while it does."""

    def __init__(self) -> None:
        self.thread: int | None = None
        self.done = threading.Event()


_first = _FirstInLine()


def go_first() -> None:
    """The thread that calls it goes first from here on, until it says that it is done."""
    if _first.thread is None:
        _first.done.clear()
        _first.thread = threading.get_ident()


def be_done() -> None:
    """Others may go on."""
    _first.thread = None
    _first.done.set()


def give_way() -> None:
    """Wait where another thread goes first; asked again and again by what takes long."""
    if _first.thread is None or _first.thread == threading.get_ident():
        return
    if not _first.done.wait(_SECONDS_AT_MOST):
        be_done()


def in_turns(things: Iterable[T]) -> Iterator[T]:
    """The things one after another, a few of them at once; between these, who goes first is let go first."""
    left = iter(things)
    while some := list(islice(left, _A_TURN)):
        give_way()
        yield from some
