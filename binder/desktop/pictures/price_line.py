"""What was asked for a pack over time: a step a price, since each held until the next; the last is marked."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter, QPen, QPolygonF

if TYPE_CHECKING:
    from collections.abc import Iterable

    from binder.desktop.theme import Tokens


_WHOLE = 0.2
"""The part of the highest price that the chart is high, at least: a rise by a quarter of the lowest."""


@dataclass(frozen=True)
class PriceLine:
    """Days and prices from the oldest to the newest; each day and price as a share (0 to 1) of the whole span."""

    points: tuple[tuple[float, float], ...]


def price_line(prices: Iterable[tuple[int, int]]) -> PriceLine:
    """The line of prices in minor units on days by their ordinal, the oldest first.

    Its foot is the lowest price, or lower: what rose by a quarter goes all the way up, what rose by less not as far.
    """
    known = list(prices)
    begin, span = known[0][0], known[-1][0] - known[0][0] or 1
    least, most = min(price for _day, price in known), max(price for _day, price in known)
    room = max(most - least, most * _WHOLE) or 1
    return PriceLine(tuple(((day - begin) / span, 1 - (most - price) / room) for day, price in known))


def draw_price_line(painter: QPainter, box: QRectF, line: PriceLine, tokens: Tokens) -> None:
    """Draw the steps and a dot for each price."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    dot = max(2.0, box.height() * 0.07)
    inner = box.adjusted(dot, 2 * dot, -2 * dot, -dot)
    spots = [QPointF(inner.left() + inner.width() * at, inner.bottom() - inner.height() * up) for at, up in line.points]
    steps = QPolygonF()
    for before, after in zip(spots, [*spots[1:], None], strict=True):
        steps.append(before)
        if after is not None:
            steps.append(QPointF(after.x(), before.y()))
    painter.setPen(QPen(tokens.colour("accent"), max(1.5, box.height() * 0.04)))
    painter.drawPolyline(steps)
    painter.setBrush(tokens.colour("raised"))
    for spot in spots[:-1]:
        painter.drawEllipse(spot, dot, dot)
    painter.setBrush(tokens.colour("accent"))
    painter.drawEllipse(spots[-1], dot * 1.4, dot * 1.4)
    painter.restore()
