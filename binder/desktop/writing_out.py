"""A whole binder written to another file: at once, or where it is a large one, beside the window."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.kitchen.binder import RECORD_TYPES

if TYPE_CHECKING:
    from collections.abc import Callable

    from binder.desktop.desk import Desk
    from binder.kitchen.binder import Binder

_LARGE = 10_000
"""Records that take longer to write than anyone fails to notice."""


def has_many_records(binder: Binder) -> bool:
    """Whether a binder is one to write beside the window."""
    return sum(len(binder.table(name)) for name in RECORD_TYPES) > _LARGE


def write_out(desk: Desk, write: Callable[[], object], done: Callable[[], object]) -> None:
    """Have a binder written, and `done` called once it is. Raises what `write` does, or later says it.

    While a large one is written nothing in it is changed.
    """
    if not has_many_records(desk.binder):
        write()
        done()
        return

    def ended(trouble: str) -> None:
        desk.say(trouble)
        if not trouble:
            done()

    desk.bridge.write_beside(write, desk.tasks, ended)
