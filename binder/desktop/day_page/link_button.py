"""A sentence that leads somewhere: small, underlined, pressed like a button."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QWidget

from binder.desktop.spacing import space
from binder.desktop.theme import tokens_for


class LinkButton(QAbstractButton):
    """One line of text, cut with an ellipsis where it is wider than its parent."""

    def __init__(self, title: str, leads_to: object, parent: QWidget) -> None:
        super().__init__(parent)
        self.leads_to = leads_to
        self.setText(title)
        self.setToolTip(title)
        self.setAccessibleName(title)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        parent = self.parentWidget()
        most = parent.width() - space(self, 4) if parent is not None and parent.width() > space(self, 20) else 1 << 14
        width = round(QFontMetricsF(self.font()).horizontalAdvance(self.text())) + space(self, 2)
        return QSize(min(width, most), max(24, space(self, 6)))

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens, painter = tokens_for(self.palette()), QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box = QRectF(self.rect()).adjusted(space(self, 1), 0, -space(self, 1), 0)
        font = self.font()
        font.setUnderline(self.underMouse() or self.hasFocus())
        painter.setFont(font)
        painter.setPen(tokens.colour("accent"))
        text = QFontMetricsF(font).elidedText(self.text(), Qt.TextElideMode.ElideRight, box.width() + 1)
        painter.drawText(box, int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter), text)
        if self.hasFocus():
            painter.setPen(QPen(tokens.colour("accent"), 1))
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5), 4, 4)
