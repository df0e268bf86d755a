"""Looks now and then whether others have changed the file, and takes in what they changed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer

if TYPE_CHECKING:
    from binder.desktop.document_bridge import DocumentBridge

_MILLISECONDS = 1500


class NewsWatch(QObject):
    """Asks while the document can be asked; a file that has gone is said once, not every second."""

    def __init__(self, bridge: DocumentBridge, parent: QObject) -> None:
        super().__init__(parent)
        self._bridge = bridge
        self._timer = QTimer(self)
        self._timer.setInterval(_MILLISECONDS)
        self._timer.timeout.connect(self.look)
        bridge.opened.connect(self._follow)
        self._follow()

    def look(self) -> None:
        """Take in what others have changed."""
        if not self._bridge.catch_up():
            self._timer.stop()

    def stop(self) -> None:
        """Look no more."""
        self._timer.stop()

    def _follow(self) -> None:
        if self._bridge.document.path is not None:
            self._timer.start()
        else:
            self._timer.stop()
