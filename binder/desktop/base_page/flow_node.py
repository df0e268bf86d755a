"""One form or dish in the picture of the flow: a bar with its words, that can be gone to, heard and pressed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QRectF, Qt, Signal
from PySide6.QtGui import QCursor, QFocusEvent, QKeyEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QWidget

from binder.desktop.base_page.flow_painting import FlowBrush
from binder.desktop.theme import tokens_for

if TYPE_CHECKING:
    from binder.desktop.base_page.flow_places import Box, PictureNode
    from binder.desktop.base_page.flow_words import NodeWords

_RING = 3
"""Pixels around the bar and its words for the ring that shows the keyboard."""


class FlowNode(QAbstractButton):
    """Paints its own bar and words over the bands. Arrow keys are left to the picture."""

    arrow_pressed = Signal(object)
    """A Qt.Key."""
    entered = Signal()
    """The keyboard has come here."""
    looked_at = Signal()
    """The keyboard or the mouse has come here, or has left."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._place: PictureNode | None = None
        self._words: NodeWords | None = None
        self._ink: Box | None = None
        self._offset = 0
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)

    @property
    def place(self) -> PictureNode | None:
        """The node and where it stands in the picture."""
        return self._place

    def show_node(self, place: PictureNode, words: NodeWords, ink: Box, offset: int) -> None:
        """Show a node at its place in a picture drawn `offset` pixels in; `ink` is what its words really take."""
        self._place, self._words, self._ink, self._offset = place, words, ink, offset
        self.setText(words.name)
        self.setAccessibleName(words.says)
        self.setToolTip(words.says)
        leads = place.node.place is not None
        self.setCursor(QCursor(Qt.CursorShape.PointingHandCursor if leads else Qt.CursorShape.ArrowCursor))
        bar = place.bar
        top, bottom = min(bar.top, ink.top), max(bar.bottom, ink.bottom)
        box = QRectF(bar.left, top, ink.right - bar.left, bottom - top).adjusted(-_RING, -_RING, _RING, _RING)
        self.setGeometry(box.translated(offset, offset).toAlignedRect())
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        if self._place is None or self._words is None or self._ink is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.save()
        painter.translate(self._offset - self.x(), self._offset - self.y())
        brush = FlowBrush(painter, tokens_for(self.palette()), self.font())
        bar, words = self._place.bar, self._place.words
        brush.bar(self._place.node, QRectF(bar.left, bar.top, bar.width, bar.height))
        brush.words(self._words, QRectF(words.left, words.top, words.width, words.height))
        painter.restore()
        if self.hasFocus() or self.underMouse():
            token = "accent" if self.hasFocus() else "line"
            painter.setPen(QPen(tokens_for(self.palette()).colour(token), 1.5 if self.hasFocus() else 1))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 1, -1, -1), 4, 4)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = Qt.Key(event.key())
        if key in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.click()
        elif key in {Qt.Key.Key_Left, Qt.Key.Key_Right, Qt.Key.Key_Up, Qt.Key.Key_Down}:
            self.arrow_pressed.emit(key)
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        self.entered.emit()
        super().focusInEvent(event)
        self.looked_at.emit()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self.looked_at.emit()

    def event(self, event: QEvent) -> bool:
        handled = super().event(event)
        if event.type() in {QEvent.Type.Enter, QEvent.Type.Leave}:
            self.update()
            self.looked_at.emit()
        return handled
