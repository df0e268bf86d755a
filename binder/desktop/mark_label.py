"""A state's shape as a widget, to stand before a line of words."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from binder.desktop.pictures.state_mark import draw_mark
from binder.desktop.sheet.cell import Mark
from binder.desktop.spacing import space
from binder.desktop.theme import tokens_for


class MarkLabel(QWidget):
    """A state's shape, as tall as a line of text; the words beside it say the same."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.mark = Mark.NONE
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def show_mark(self, mark: Mark) -> None:
        """Show a shape; none takes no room."""
        self.mark = mark
        self.setVisible(mark is not Mark.NONE)
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(space(self, 4), space(self, 4.5))

    def paintEvent(self, event: QPaintEvent) -> None:
        side = space(self, 3)
        box = QRectF((self.width() - side) / 2, (self.height() - side) / 2, side, side)
        draw_mark(QPainter(self), box, self.mark, tokens_for(self.palette()))
