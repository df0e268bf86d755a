"""States as shapes: an open ring, a solid wedge, a dashed ring, a broken bar; colour comes second."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen, QPolygonF

from binder.desktop.sheet.cell import Mark

if TYPE_CHECKING:
    from collections.abc import Callable

    from binder.desktop.theme import Tokens


def draw_mark(painter: QPainter, box: QRectF, mark: Mark, tokens: Tokens) -> None:
    """Draw a mark in a square box."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    _DRAWINGS[mark](painter, box, tokens)
    painter.restore()


def _nothing(painter: QPainter, box: QRectF, tokens: Tokens) -> None:
    """No state, no shape."""


def _ring(painter: QPainter, box: QRectF, tokens: Tokens) -> None:
    painter.setPen(QPen(tokens.colour("accent"), box.width() * 0.16))
    painter.drawEllipse(_inset(box, 0.14))


def _dashed_ring(painter: QPainter, box: QRectF, tokens: Tokens) -> None:
    pen = QPen(tokens.colour("warning"), box.width() * 0.16)
    pen.setDashPattern([1.7, 1.4])
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    painter.setPen(pen)
    painter.drawEllipse(_inset(box, 0.14))


def _wedge(painter: QPainter, box: QRectF, tokens: Tokens) -> None:
    inner = _inset(box, 0.06)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(tokens.colour("stop"))
    painter.drawPolygon(QPolygonF([inner.bottomLeft(), inner.bottomRight(), inner.topRight()]))


def _broken_bar(painter: QPainter, box: QRectF, tokens: Tokens) -> None:
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(tokens.colour("stop"))
    bar = QRectF(box.left(), box.center().y() - box.height() * 0.17, box.width() * 0.54, box.height() * 0.34)
    painter.drawRect(bar)
    rest = bar.translated(box.width() * 0.72, 0)
    rest.setRight(box.right())
    painter.drawRect(rest)


def _upright(painter: QPainter, box: QRectF, tokens: Tokens) -> None:
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(tokens.colour("warning"))
    middle, half = box.center(), box.width() * 0.42
    around = [QPointF(0, -half), QPointF(half, 0), QPointF(0, half), QPointF(-half, 0)]
    painter.drawPolygon(QPolygonF([middle + corner for corner in around]))


def _dot(painter: QPainter, box: QRectF, tokens: Tokens) -> None:
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(tokens.colour("quiet"))
    painter.drawEllipse(_inset(box, 0.34))


def _inset(box: QRectF, share: float) -> QRectF:
    by = box.width() * share
    return box.adjusted(by, by, -by, -by)


_DRAWINGS: dict[Mark, Callable[[QPainter, QRectF, Tokens], None]] = {
    Mark.NONE: _nothing,
    Mark.WITHIN: _ring,
    Mark.OVER: _wedge,
    Mark.UNKNOWN: _dashed_ring,
    Mark.SHORT: _broken_bar,
    Mark.WARN: _upright,
    Mark.NOTE: _dot,
}
