"""How far a long figure is, told to whoever waits for it. No result depends on it, so that results can be kept."""

from __future__ import annotations

from contextlib import contextmanager
from contextvars import ContextVar
from typing import TYPE_CHECKING

from binder.kitchen.turns import give_way

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence
    from typing import TypeVar

    T = TypeVar("T")

_listener: ContextVar[Callable[[float], object] | None] = ContextVar("how far", default=None)


@contextmanager
def telling(listener: Callable[[float], object]) -> Iterator[None]:
    """Have `listener` told how far figures are, from 0 to 1, while they are worked out here; it may raise to stop."""
    token = _listener.set(listener)
    try:
        yield
    finally:
        _listener.reset(token)


def told(things: Sequence[T]) -> Iterator[T]:
    """The things one after another, telling before each how many of them are done."""
    listener = _listener.get()
    for number, thing in enumerate(things):
        give_way()
        if listener is not None:
            listener(number / len(things))
        yield thing
