"""Stands in while the first binder is being opened: empty, and not to be edited."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.kitchen.binder import Binder
from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from binder.kitchen.change import Change
    from binder.storage.document import Origin


class NotOpenYetError(BinderError):
    """An edit before there is a binder to edit."""

    def __init__(self) -> None:
        super().__init__(_("The binder is still being opened. Wait a moment."))


class NoDocument:
    """Answers as an open document does, with nothing in it."""

    binder = Binder()
    path: Path | None = None
    read_only = False
    undo_label: str | None = None
    redo_label: str | None = None
    undo_size = 0
    redo_size = 0

    def make(self, change: Change) -> Change:
        """Nothing can be edited yet."""
        raise NotOpenYetError

    def undo(self) -> Change | None:
        """Nothing has been done."""
        return None

    def redo(self) -> Change | None:
        """Nothing has been undone."""
        return None

    def listen(self, listener: Callable[[Change, Origin], None]) -> None:
        """There is nothing to hear."""

    def catch_up(self) -> bool:
        """No one else is here."""
        return False

    def save_copy_as(self, path: Path) -> None:
        """There is nothing to copy yet."""
        raise NotOpenYetError

    def move_to(self, path: Path) -> None:
        """There is nothing to move yet."""
        raise NotOpenYetError

    def go_back_to_opened(self) -> Change:
        """Nothing has been opened yet."""
        raise NotOpenYetError

    def close(self) -> None:
        """There is no file to let go of."""
