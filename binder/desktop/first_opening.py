"""What the window opens first. The frame is on screen at once; storage is loaded and the binder read right after."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer

from binder.desktop.task_runner import Outcome, Task
from binder.kitchen.binder import Binder
from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from pathlib import Path

    from binder.desktop.main_window import MainWindow
    from binder.desktop.shelf import Shelf

_OPENING = "opening"
_AFTER_FIRST_PAINT = 20
"""Milliseconds from showing the window to loading what reads binders."""


def open_first(window: MainWindow, shelf: Shelf, path: Path | None) -> None:
    """Open the binder asked for, else the one opened last, else the first sample, else an empty one."""
    if path is not None and window.open_path(path):
        return
    recent = window.desk.settings.recent[:1] if path is None else []
    for candidate in (*recent, *shelf.samples()[:1]):
        try:
            window.files.open_path(candidate)
        except (BinderError, OSError):
            continue
        return
    window.files.take(shelf.unkept(Binder()))


class FirstOpening(QObject):
    """Opens the first binder once the frame of the window has been painted."""

    def __init__(self, window: MainWindow, shelf: Shelf, path: Path | None) -> None:
        super().__init__(window)
        self._window, self._shelf, self._path = window, shelf, path
        window.head.say(_("Opening {file}").format(file=path.stem) if path else _("Opening"))
        window.desk.tasks.finished.connect(self._open)
        QTimer.singleShot(_AFTER_FIRST_PAINT, self._prepare)

    def _prepare(self) -> None:
        shelf = self._shelf

        def load(_task: Task) -> None:
            shelf.prepare()

        self._window.desk.tasks.run(_OPENING, load)

    def _open(self, outcome: object) -> None:
        if not isinstance(outcome, Outcome) or outcome.subject != _OPENING:
            return
        if outcome.error is not None:
            raise outcome.error
        open_first(self._window, self._shelf, self._path)
        self._window.focus_page()
        self.deleteLater()
