"""A box to tick: empty, ticked, or struck out for what cannot be."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen, QPolygonF

if TYPE_CHECKING:
    from binder.desktop.theme import Tokens


@dataclass(frozen=True)
class TickBox:
    """`ticked`: it is done; `struck`: it is settled, but not done."""

    ticked: bool = False
    struck: bool = False


def draw_tick_box(painter: QPainter, box: QRectF, tick: TickBox, tokens: Tokens) -> None:
    """Draw the box at the left, as high as it may be."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    side = min(box.height(), box.width()) * 0.92
    square = QRectF(box.left() + 1, box.center().y() - side / 2, side, side)
    painter.setPen(QPen(tokens.colour("accent" if tick.ticked else "edge"), max(1.2, side * 0.09)))
    painter.setBrush(tokens.colour("accent") if tick.ticked else Qt.BrushStyle.NoBrush)
    painter.drawRoundedRect(square, side * 0.18, side * 0.18)
    pen = QPen(tokens.colour("on_accent" if tick.ticked else "quiet"), max(1.5, side * 0.13))
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    painter.setPen(pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    if tick.ticked:
        painter.drawPolyline(QPolygonF([_at(square, 0.24, 0.52), _at(square, 0.43, 0.71), _at(square, 0.77, 0.31)]))
    elif tick.struck:
        painter.drawLine(_at(square, 0.25, 0.5), _at(square, 0.75, 0.5))
    painter.restore()


def _at(box: QRectF, x: float, y: float) -> QPointF:
    return QPointF(box.left() + box.width() * x, box.top() + box.height() * y)
