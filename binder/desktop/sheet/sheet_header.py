"""The heads of columns: small and quiet, standing over their text or over their numbers."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QRect, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter
from PySide6.QtWidgets import QHeaderView, QWidget

from binder.desktop.sheet.cell import Align, Column
from binder.desktop.sheet.cell_faces import padding
from binder.desktop.spacing import step
from binder.desktop.theme import tokens_for
from binder.desktop.typeface import small

if TYPE_CHECKING:
    from PySide6.QtGui import QFont

    from binder.desktop.sheet.sheet_model import SheetModel


def title_width(font: QFont, column: Column) -> int:
    """How wide a column must be for its head, in pixels, its padding in."""
    return round(QFontMetricsF(small(font)).horizontalAdvance(column.title)) + 2 * padding(font) + 2


class SheetHeader(QHeaderView):
    """Paints the titles of a table's columns."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)
        self.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.setHighlightSections(False)
        self.setSectionsClickable(False)

    def sizeHint(self) -> QSize:
        """Only its height counts: how wide Qt would have it takes a look at every title, a hundred times a page."""
        return QSize(0, step(self.font(), 7))

    def paintSection(self, painter: QPainter, rect: QRect, logicalIndex: int) -> None:
        if not rect.isValid():
            return
        tokens, column = tokens_for(self.palette()), cast("SheetModel", self.model()).columns[logicalIndex]
        box = QRectF(rect)
        painter.fillRect(QRectF(box.left(), box.bottom() - 1, box.width(), 1), tokens.colour("line"))
        room = padding(self.font())
        side = Qt.AlignmentFlag.AlignLeft if column.align is Align.LEFT else Qt.AlignmentFlag.AlignRight
        painter.setFont(small(self.font()))
        painter.setPen(tokens.colour("quiet"))
        inner = box.adjusted(room, 0, -room, -step(self.font(), 0.75))
        painter.drawText(inner, int(side | Qt.AlignmentFlag.AlignBottom), column.title)
