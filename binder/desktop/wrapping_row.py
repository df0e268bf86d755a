"""Widgets one after another, going on in the next line where one is full, like words."""

from __future__ import annotations

from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtWidgets import QLayout, QLayoutItem, QWidget


class WrappingRow(QLayout):
    """Each widget keeps its own size. `gap` is the space between them, in pixels."""

    def __init__(self, gap: int, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._gap = gap
        self._items: list[QLayoutItem] = []

    def addItem(self, item: QLayoutItem) -> None:
        self._items.append(item)

    def count(self) -> int:
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:
        return self._items.pop(index) if 0 <= index < len(self._items) else None

    def expandingDirections(self) -> Qt.Orientation:
        return Qt.Orientation(0)

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        return self._arrange(QRect(0, 0, width, 0), move=False)

    def setGeometry(self, rect: QRect) -> None:
        super().setGeometry(rect)
        self._arrange(rect, move=True)

    def sizeHint(self) -> QSize:
        return self.minimumSize()

    def minimumSize(self) -> QSize:
        widest = QSize()
        for item in self._items:
            widest = widest.expandedTo(item.minimumSize())
        return widest

    def _arrange(self, rect: QRect, *, move: bool) -> int:
        """Place the items line by line; gives the height that takes."""
        left, top, tall = rect.left(), rect.top(), 0
        for item in self._items:
            size = item.sizeHint()
            if left > rect.left() and left + size.width() > rect.right() + 1:
                left, top, tall = rect.left(), top + tall + self._gap, 0
            if move:
                item.setGeometry(QRect(QPoint(left, top), size))
            left += size.width() + self._gap
            tall = max(tall, size.height())
        return top + tall - rect.top()
