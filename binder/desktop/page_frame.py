"""The sheet of paper that pages lie on, of one piece with the divider chosen."""

from __future__ import annotations

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QStackedWidget, QVBoxLayout, QWidget

from binder.desktop.message_strip import MessageStrip
from binder.desktop.theme import tokens_for


class PageFrame(QWidget):
    """Holds the message strip and under it the page shown."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.strip = MessageStrip(self)
        self.stack = QStackedWidget(self)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 1, 1, 0)
        layout.setSpacing(0)
        layout.addWidget(self.strip)
        layout.addWidget(self.stack, 1)

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens, painter = tokens_for(self.palette()), QPainter(self)
        box = QRectF(self.rect())
        painter.fillRect(box, tokens.colour("raised"))
        painter.fillRect(QRectF(0, 0, box.width(), 1), tokens.colour("line"))
        painter.fillRect(QRectF(box.right() - 1, 0, 1, box.height()), tokens.colour("line"))
