"""The builds of a dish as small pans: an outline is the hero, the others are filled to the stage they reach."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QLineF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPen

if TYPE_CHECKING:
    from binder.desktop.theme import Tokens


@dataclass(frozen=True)
class Pan:
    """One build: `filled` from 0 (an outline) to 1, `small` for one that is not for the camera."""

    filled: float
    small: bool = False


@dataclass(frozen=True)
class Pans:
    """The builds of a dish, in order."""

    pans: tuple[Pan, ...]


def draw_pans(painter: QPainter, box: QRectF, pans: Pans, tokens: Tokens) -> None:
    """Draw the pans side by side from the left, smaller where there are many."""
    if not pans.pans:
        return
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    height = box.height()
    pitch = min(height * 1.75, box.width() / len(pans.pans))
    width = pitch * 0.86
    for place, pan in enumerate(pans.pans):
        tall = min(height, width * 0.62) * (0.72 if pan.small else 1.0)
        wide = width * (0.72 if pan.small else 1.0)
        pot = QRectF(box.left() + place * pitch + 1, box.center().y() + height * 0.36 - tall, wide, tall)
        _draw_pan(painter, pot, pan, tokens)
    painter.restore()


def _draw_pan(painter: QPainter, pot: QRectF, pan: Pan, tokens: Tokens) -> None:
    bowl = QRectF(pot.left(), pot.top(), pot.width() * 0.68, pot.height())
    path = QPainterPath()
    path.moveTo(bowl.topLeft())
    path.cubicTo(
        bowl.left(), bowl.bottom(), bowl.left(), bowl.bottom(), bowl.left() + bowl.width() * 0.2, bowl.bottom()
    )
    path.lineTo(bowl.right() - bowl.width() * 0.2, bowl.bottom())
    path.cubicTo(bowl.right(), bowl.bottom(), bowl.right(), bowl.bottom(), bowl.right(), bowl.top())
    path.closeSubpath()
    if pan.filled > 0:
        painter.save()
        painter.setClipPath(path)
        level = bowl.bottom() - bowl.height() * pan.filled
        painter.fillRect(QRectF(bowl.left(), level, bowl.width(), bowl.bottom() - level), tokens.colour("accent"))
        painter.restore()
    pen = QPen(tokens.colour("ink"), max(1.2, bowl.height() * 0.1))
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    painter.setPen(pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPath(path)
    rim = bowl.top() + bowl.height() * 0.08
    painter.drawLine(QLineF(bowl.right(), rim, pot.right(), rim - bowl.height() * 0.1))
