"""Something done at the n-th statement that is sent to any database: an error raised, or the process ended."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager

from sqlalchemy import Engine, event


class Count:
    """How many statements were sent."""

    def __init__(self) -> None:
        self.sent = 0


@contextmanager
def at_statement(number: int, action: Callable[[], None]) -> Iterator[Count]:
    """Do `action` before statement `number`, counted from 1."""
    count = Count()

    def look(*_arguments: object) -> None:
        count.sent += 1
        if count.sent == number:
            action()

    event.listen(Engine, "before_cursor_execute", look)
    try:
        yield count
    finally:
        event.remove(Engine, "before_cursor_execute", look)
