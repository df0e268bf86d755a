"""The strip where one sentence is said: what was not done, and how to mend it. It never stands in the way."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QToolButton, QWidget

from binder.desktop.spacing import space
from binder.desktop.theme import tokens_for
from binder.kitchen.wording import _


class MessageStrip(QFrame):
    """Hidden until something is to be said; goes when it is read and closed, or when the next edit is done."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._label = QLabel(self)
        self._label.setWordWrap(True)
        self._label.setTextFormat(Qt.TextFormat.PlainText)
        self._label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        close = QToolButton(self)
        close.setText("×")
        close.setAccessibleName(_("Close the message"))
        close.setToolTip(_("Close the message"))
        close.clicked.connect(self.hide)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(space(self, 4), space(self, 1), space(self, 2), space(self, 1))
        layout.addWidget(self._label, 1)
        layout.addWidget(close, 0, Qt.AlignmentFlag.AlignTop)
        self.hide()

    @property
    def says(self) -> str:
        """The sentence shown; empty where none is."""
        return "" if self.isHidden() else self._label.text()

    def say(self, sentence: str) -> None:
        """Show a sentence."""
        self._label.setText(sentence)
        self.setVisible(bool(sentence))
        if sentence:
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, sentence))

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens = tokens_for(self.palette())
        painter = QPainter(self)
        painter.fillRect(self.rect(), tokens.colour("raised"))
        painter.fillRect(0, 0, space(self, 1), self.height(), tokens.colour("warning"))
        painter.fillRect(0, self.height() - 1, self.width(), 1, tokens.colour("line"))
