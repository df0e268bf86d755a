"""A heading: a label above the body in size, which grows with it and gives way where there is no room."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QApplication, QLabel, QWidget

from binder.desktop.spacing import characters
from binder.desktop.typeface import heading


class HeadingLabel(QLabel):
    """One line of text at heading `level`, cut with an ellipsis where it is too long."""

    def __init__(self, text: str, level: int, parent: QWidget | None = None) -> None:
        super().__init__(text, parent)
        self._level = level
        self._size()

    def _size(self) -> None:
        self.setFont(heading(QApplication.font(), self._level))

    def minimumSizeHint(self) -> QSize:
        whole = super().minimumSizeHint()
        return QSize(min(whole.width(), characters(self.font(), 12)), whole.height())

    def event(self, event: QEvent) -> bool:
        if event.type() == QEvent.Type.ApplicationFontChange:
            self._size()
        return super().event(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setPen(self.palette().color(QPalette.ColorRole.WindowText))
        box = self.contentsRect()
        text = self.fontMetrics().elidedText(self.text(), Qt.TextElideMode.ElideRight, box.width())
        painter.drawText(box, int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter), text)
