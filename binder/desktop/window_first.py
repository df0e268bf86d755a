"""The window goes first: while it shows something new, work beside it waits.

Python runs one thread at a time, and a repaint gives its turn away at each of its hundreds of calls into Qt. Beside a
worker the same page took up to ten times as long to paint (measured); with the worker waiting it takes as long as ever,
and the worker loses that time only.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, QTimer

from binder.kitchen.turns import be_done, go_first

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget


class WindowFirst(QObject):
    """A turn of the window's thread lasts until nothing more is waiting for it: layout and painting come after news."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._end = QTimer(self)
        self._end.setSingleShot(True)
        self._end.setInterval(0)
        self._end.timeout.connect(be_done)

    def watch(self, window: QWidget) -> None:
        """Let a window be repainted in one turn."""
        window.installEventFilter(self)

    def take_turn(self) -> None:
        """Something new is to be shown."""
        go_first()
        self._end.start()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() == QEvent.Type.UpdateRequest:
            self.take_turn()
        return False

    def stop(self) -> None:
        """There is no window any more that would go first."""
        self._end.stop()
        be_done()
