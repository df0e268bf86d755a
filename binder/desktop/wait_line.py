"""One line for work that takes a while: what is done, how far it is, and a way to stop it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QProgressBar, QPushButton, QWidget

from binder.desktop.spacing import characters, space
from binder.desktop.task_runner import Progress
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.task_runner import TaskRunner

_PARTS = 100
_MILLISECONDS = 400


class WaitLine(QWidget):
    """Follows the work on one subject of the task runner; hidden while there is nothing to wait for."""

    stopped = Signal()
    """Someone wants to wait no longer."""

    def __init__(self, tasks: TaskRunner, subject: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._subject = subject
        self.says = QLabel(self)
        self.says.setProperty("quiet", True)
        self.bar = QProgressBar(self)
        self.bar.setRange(0, _PARTS)
        self.bar.setTextVisible(False)
        self.bar.setFixedSize(characters(self.font(), 30), space(self, 2))
        self.stop = QPushButton(_("&Stop"), self)
        self.stop.clicked.connect(self.stopped)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(space(self, 2))
        layout.addWidget(self.says)
        layout.addWidget(self.bar)
        layout.addWidget(self.stop)
        layout.addStretch(1)
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.timeout.connect(self.show)
        tasks.progressed.connect(self._follow)
        self.end()

    def begin(self, says: str, *, stops: bool = True) -> None:
        """Show what is waited for; what never `stops` half way does not say how far it is either."""
        self._say(says, stops=stops)
        self.show()

    def _say(self, says: str, *, stops: bool) -> None:
        self.stop.setVisible(stops)
        self.bar.setRange(0, _PARTS if stops else 0)
        self.says.setText(says)
        self.bar.setAccessibleName(says)
        self.bar.setValue(0)

    def begin_soon(self, says: str) -> None:
        """Show what is waited for once it is worth it; what comes at once is never seen to be waited for."""
        self._say(says, stops=True)
        self.hide()
        self._soon.start(_MILLISECONDS)

    def end(self) -> None:
        """Nothing is waited for any more."""
        self._soon.stop()
        self.hide()

    def _follow(self, progress: object) -> None:
        if isinstance(progress, Progress) and progress.subject == self._subject:
            self.bar.setValue(round(progress.share * _PARTS))
