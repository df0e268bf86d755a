"""A line of large type, cut with an ellipsis where it does not fit."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from binder.desktop.theme import tokens_for


class SetLine(QWidget):
    """Shows one text in one font; `tone` is the token of its colour."""

    def __init__(self, parent: QWidget | None = None, *, tone: str = "ink") -> None:
        super().__init__(parent)
        self.tone = tone
        self._text = ""
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)

    @property
    def text(self) -> str:
        """What it says."""
        return self._text

    def say(self, text: str) -> None:
        """Show a text."""
        if text != self._text:
            self._text = text
            self.setAccessibleName(text)
            self.setToolTip(text)
            self.update()

    def wear(self, font: QFont) -> None:
        """Take a font."""
        self.setFont(font)
        self.updateGeometry()

    def sizeHint(self) -> QSize:
        metrics = QFontMetricsF(self.font())
        return QSize(round(metrics.horizontalAdvance(self._text)), round(metrics.height() * 0.98))

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setPen(tokens_for(self.palette()).colour(self.tone))
        painter.setFont(self.font())
        shown = QFontMetricsF(self.font()).elidedText(self._text, Qt.TextElideMode.ElideRight, self.width())
        painter.drawText(QRectF(self.rect()), int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter), shown)
