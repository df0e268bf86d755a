"""A dish's cost as a bar, its cap as a notch across it; what is over the cap is hatched as well as coloured."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QBrush, QPainter, QPen

if TYPE_CHECKING:
    from binder.desktop.theme import Tokens


@dataclass(frozen=True)
class CostBar:
    """Cost and cap as shares (0 to 1) of the longest bar that is shown; None where not known."""

    cost: float | None
    cap: float | None


def draw_cost_bar(painter: QPainter, box: QRectF, bar: CostBar, tokens: Tokens) -> None:
    """Draw the bar, its notch and, where the cost is not known, an empty dashed track."""
    painter.save()
    thick = min(box.height() * 0.5, box.height())
    track = QRectF(box.left(), box.center().y() - thick / 2, box.width(), thick)
    if bar.cost is None:
        pen = QPen(tokens.colour("warning"), 1)
        pen.setStyle(Qt.PenStyle.DashLine)
        painter.setPen(pen)
        painter.drawRect(track.adjusted(0, 0, -1, -1))
    else:
        _draw_known(painter, track, bar, tokens)
    if bar.cap is not None:
        _draw_notch(painter, box, track.left() + track.width() * bar.cap, tokens)
    painter.restore()


def _draw_known(painter: QPainter, track: QRectF, bar: CostBar, tokens: Tokens) -> None:
    cost, cap = bar.cost or 0.0, bar.cap
    painter.fillRect(track, tokens.colour("faint"))
    within = min(cost, cap) if cap is not None else cost
    painter.fillRect(QRectF(track.left(), track.top(), track.width() * within, track.height()), tokens.colour("accent"))
    if cap is not None and cost > cap:
        over = QRectF(
            track.left() + track.width() * cap, track.top(), max(3.0, track.width() * (cost - cap)), track.height()
        )
        painter.fillRect(over, tokens.colour("stop"))
        painter.fillRect(over, QBrush(tokens.colour("raised"), Qt.BrushStyle.BDiagPattern))


def _draw_notch(painter: QPainter, box: QRectF, x: float, tokens: Tokens) -> None:
    painter.setPen(QPen(tokens.colour("ink"), max(1.5, box.height() * 0.09)))
    at = min(max(x, box.left() + 1), box.right() - 1)
    painter.drawLine(round(at), round(box.top()), round(at), round(box.bottom()))
