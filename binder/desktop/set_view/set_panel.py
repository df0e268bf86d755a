"""A part of the set's screen: a heading and two lines under it; pressed where there is something to say back."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QWidget

from binder.desktop.pictures.state_mark import draw_mark
from binder.desktop.set_view.panel_text import PanelLine, PanelText
from binder.desktop.sheet.cell import Mark
from binder.desktop.theme import tokens_for

if TYPE_CHECKING:
    from binder.desktop.set_view.set_type import SetType
    from binder.desktop.theme import Tokens

_LEFT = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)


class SetPanel(QAbstractButton):
    """Shows a PanelText of two lines at most."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.shown = PanelText("")
        self._heading = QFont()
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)

    def say(self, text: PanelText) -> None:
        """Show a text."""
        if text != self.shown:
            self.shown = text
            self.setAccessibleName(f"{text.heading}: " + "; ".join(line.text for line in text.lines))
            self.setToolTip("\n".join(line.text for line in text.lines))
            self.setEnabled(bool(text.hint))
            self.setFocusPolicy(Qt.FocusPolicy.StrongFocus if text.hint else Qt.FocusPolicy.NoFocus)
            self.update()

    def wear(self, fonts: SetType) -> None:
        """Take the fonts."""
        self.setFont(fonts.text)
        self._heading = fonts.heading
        self.updateGeometry()

    def sizeHint(self) -> QSize:
        text, heading = QFontMetricsF(self.font()).height(), QFontMetricsF(self._heading).height()
        return QSize(100, round(heading + 2 * text))

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens, painter = tokens_for(self.palette()), QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box = QRectF(self.rect()).adjusted(1, 1, -1, -1)
        if self.shown.hint:
            painter.setPen(QPen(tokens.colour("accent"), 3) if self.hasFocus() else QPen(tokens.colour("line"), 1))
            painter.setBrush(tokens.colour("tint" if self.isDown() or self.underMouse() else "raised"))
            painter.drawRoundedRect(box, 6, 6)
        tall, pad = QFontMetricsF(self._heading).height(), QFontMetricsF(self._heading).horizontalAdvance("0") * 0.6
        inner = box.adjusted(pad, 0, -pad, 0)
        painter.setFont(self._heading)
        painter.setPen(tokens.colour("quiet"))
        head = self.shown.heading + (f"  [{self.shown.hint}]" if self.shown.hint else "")
        head = QFontMetricsF(self._heading).elidedText(head, Qt.TextElideMode.ElideRight, inner.width())
        painter.drawText(QRectF(inner.left(), inner.top(), inner.width(), tall), _LEFT, head)
        line = QFontMetricsF(self.font()).height()
        for at, one in enumerate(self.shown.lines[:2]):
            row = QRectF(inner.left(), inner.top() + tall + at * line * 0.98, inner.width(), line)
            self._line(painter, tokens, row, one)

    def _line(self, painter: QPainter, tokens: Tokens, box: QRectF, one: PanelLine) -> None:
        metrics, left = QFontMetricsF(self.font()), box.left()
        if one.mark is not Mark.NONE:
            side = box.height() * 0.5
            draw_mark(painter, QRectF(left, box.center().y() - side / 2, side, side), one.mark, tokens)
            left += side * 1.4
        shown = metrics.elidedText(one.text, Qt.TextElideMode.ElideRight, box.right() - left)
        if one.solid:
            width = metrics.horizontalAdvance(shown)
            ground = QRectF(left, box.top() + box.height() * 0.06, width, box.height() * 0.88)
            painter.fillRect(ground.adjusted(-6, 0, 6, 0), tokens.colour("ink"))
        painter.setFont(self.font())
        painter.setPen(tokens.colour("raised" if one.solid else "ink"))
        painter.drawText(QRectF(left, box.top(), box.right() - left + 1, box.height()), _LEFT, shown)
