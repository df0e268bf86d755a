"""What the window opens first. The frame is on screen at once; storage is loaded and the binder read beside it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer

from binder.desktop.opening import Opened, closed_if_stopped, first_opened
from binder.desktop.task_runner import Outcome, Task
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from pathlib import Path

    from binder.desktop.main_window import MainWindow
    from binder.desktop.shelf import Shelf

_OPENING = "opening"
_AFTER_FIRST_PAINT = 20
"""Milliseconds from showing the window to loading what reads binders."""


def open_first(window: MainWindow, shelf: Shelf, path: Path | None) -> None:
    """Open what is opened first, at once."""
    window.files.show_opened(first_opened(shelf, path, window.desk.settings.recent))


class FirstOpening(QObject):
    """Opens the first binder once the frame of the window has been painted."""

    def __init__(self, window: MainWindow, shelf: Shelf, path: Path | None) -> None:
        super().__init__(window)
        self._window, self._shelf, self._path = window, shelf, path
        window.head.say(_("Opening {file}").format(file=path.stem) if path else _("Opening"))
        window.desk.tasks.finished.connect(self._open)
        QTimer.singleShot(_AFTER_FIRST_PAINT, self._prepare)

    def _prepare(self) -> None:
        shelf, path, recent = self._shelf, self._path, self._window.desk.settings.recent

        def load(task: Task) -> Opened:
            shelf.prepare()
            found = first_opened(shelf, path, recent)
            closed_if_stopped(task, found)
            return found

        self._window.desk.tasks.run(_OPENING, load)

    def _open(self, outcome: object) -> None:
        if not isinstance(outcome, Outcome) or outcome.subject != _OPENING:
            return
        if outcome.error is not None:
            raise outcome.error
        self._window.files.show_opened(outcome.result)
        self._window.focus_page()
        self.deleteLater()
