"""Once a binder is open: what the other pages are made of is read beside the window, so that none is slow to show.

Measured on two cores with the chickpea sample: the first look at the cards took 460 ms of the window's thread, most of
it for reading modules; looking for garbage among all that is there took 90 to 320 ms each time.
"""

from __future__ import annotations

import gc
from importlib import import_module
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from binder.desktop.task_runner import Outcome, Task

if TYPE_CHECKING:
    from collections.abc import Callable

    from binder.desktop.file_doings import FileDoings
    from binder.desktop.task_runner import TaskRunner

_SUBJECT = "getting ready: "

MODULES = tuple(
    f"binder.desktop.{name}"
    for name in (
        "dishes_page.page",
        "base_page.page",
        "larder_page.page",
        "buying_page.page",
        "mise_page.page",
        "day_page.page",
        "cards_page.page",
        "money_page.page",
        "set_view.set_window",
        "action_finder",
        "printing",
        "price_import.price_window",
    )
)
"""What is read, one after another, so that figures of the window need not wait for all of it."""


class GettingReady(QObject):
    """Reads modules after the first opening; what there is then is looked through for garbage no more."""

    def __init__(self, files: FileDoings, tasks: TaskRunner, parent: QObject) -> None:
        super().__init__(parent)
        self._files, self._tasks = files, tasks
        self._left = list(MODULES)
        files.opened.connect(self._begin)
        tasks.finished.connect(self._go_on)

    def _begin(self) -> None:
        self._files.opened.disconnect(self._begin)
        self._next()

    def _next(self) -> None:
        if self._left:
            name = self._left.pop(0)
            self._tasks.run(_SUBJECT + name, _reading(name), soon=True)
        else:
            set_aside()
            self.deleteLater()

    def _go_on(self, outcome: object) -> None:
        if isinstance(outcome, Outcome) and outcome.subject.startswith(_SUBJECT):
            if outcome.error is not None:
                raise outcome.error
            self._next()


def _reading(name: str) -> Callable[[Task], None]:
    def read(_task: Task) -> None:
        import_module(name)

    return read


def set_aside() -> None:
    """What is there stays until the program ends: rounds of the garbage collector pass it by from here on."""
    gc.freeze()
