"""How the timeline is drawn. Shape says what tone says: hands are solid, waits hatched, what stays fit an open tail."""

from __future__ import annotations

import functools
from contextlib import contextmanager
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QFontMetricsF, QPainter, QPen, QPolygonF

from binder.desktop.typeface import sized, small

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from PySide6.QtGui import QFont

    from binder.desktop.day_page.axis import Axis, Tick
    from binder.desktop.day_page.timeline_places import (
        Extent,
        PlacedDish,
        PlacedHeading,
        PlacedLane,
        PlacedLevel,
        PlacedPiece,
    )
    from binder.desktop.theme import Tokens

_LEFT = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
_LOW = 0.55
"""Height of what is not filmed against what is: the camera's bars are tall."""

_FAR = 100_000.0


@dataclass(frozen=True)
class Look:
    """How a piece is to look: the one chosen, one under the mouse, or one among the rest."""

    chosen: bool = False
    under_mouse: bool = False


@dataclass(frozen=True)
class TimelineBrush:
    """What the timeline is painted with; sizes in pixels."""

    painter: QPainter
    tokens: Tokens
    font: QFont
    line: float
    bar: float
    air: float
    seen: Extent = (0.0, _FAR)

    @functools.cached_property
    def _small(self) -> QFont:
        return small(self.font)

    @functools.cached_property
    def _strong(self) -> QFont:
        return sized(small(self.font), 1.0, strong=True)

    @functools.cached_property
    def _heading(self) -> QFont:
        return sized(self.font, 1.0, strong=True)

    @functools.cached_property
    def _colours(self) -> dict[str, QColor]:
        return {}

    def _colour(self, token: str) -> QColor:
        """A token as Qt takes it; each is made once."""
        if token not in self._colours:
            self._colours[token] = self.tokens.colour(token)
        return self._colours[token]

    def _seen(self, extent: Extent) -> Extent | None:
        """The part of an extent that can be seen; nothing is drawn far outside."""
        left, right = max(extent[0], self.seen[0]), min(extent[1], self.seen[1])
        return (left, right) if right > left else None

    # What lies behind

    def folds(self, axis: Axis, height: float) -> None:
        """Stretches folded away: a ground of their own, from top to bottom."""
        for stretch in axis.stretches:
            if stretch.span.folded:
                box = QRectF(stretch.left, 0, stretch.right - stretch.left, height)
                self.painter.fillRect(box, self._colour("ground"))
                pen = QPen(self._colour("line"), 1)
                self.painter.setPen(pen)
                for x in (stretch.left, stretch.right):
                    self.painter.drawLine(QLineF(x, 0, x, height))

    def stop_of_work(self, extent: Extent, height: float) -> None:
        """Lunch: nobody works."""
        self.painter.fillRect(QRectF(extent[0], 0, extent[1] - extent[0], height), self._colour("faint"))

    def ticks(self, ticks: Sequence[Tick], height: float) -> None:
        """Thin lines down from the marks of the clock."""
        self.painter.setPen(QPen(self._colour("faint"), 1))
        for tick in ticks:
            self.painter.drawLine(QLineF(tick.x, 0, tick.x, height))

    def dish_column(self, dish: PlacedDish, height: float) -> None:
        """While a dish is on camera, all the way down: what is done meanwhile lies on it."""
        left, right = dish.extent
        self.painter.fillRect(QRectF(left, dish.top, right - left, height - dish.top), self._colour("tint"))

    # Rows

    def dish(self, dish: PlacedDish) -> None:
        """A dish's name on the camera's row, on a line from its first to its last take."""
        left, right = dish.extent
        self.painter.fillRect(QRectF(left, dish.top - self.air / 2, right - left, 2), self._colour("accent"))
        box = QRectF(left, dish.top, _FAR, self.line)
        self._words(box, dish.text, self._strong, "ink")

    def level(self, level: PlacedLevel) -> None:
        """What an oven is at: a line with an upright at each end, its words on it."""
        left, right = level.extent
        y = level.top + self.line - 1
        self.painter.setPen(QPen(self._colour("warning"), 1.5))
        self.painter.drawLine(QLineF(left, y, right, y))
        self.painter.drawLine(QLineF(left, y - self.line * 0.4, left, y))
        self.painter.drawLine(QLineF(right, y - self.line * 0.4, right, y))
        self._words(QRectF(left + self.air / 2, level.top, _FAR, self.line), level.text, self._small, "warning")

    def lane_title(self, lane: PlacedLane, width: float) -> None:
        """Who, or what, at the left of its lane."""
        box = QRectF(self.air * 2, lane.top + self.line * 0.35, width - self.air * 3, self.line + self.bar)
        self._cut(box, lane.title, self.font, "ink")

    def heading(self, heading: PlacedHeading, width: float) -> None:
        """The heading of several lanes."""
        box = QRectF(self.air * 2, heading.top, width - self.air * 3, self.line)
        self._cut(box, heading.text, self._heading, "ink")

    # Pieces

    def piece(self, one: PlacedPiece, look: Look) -> None:
        """A piece with its caption."""
        height = self.bar if one.piece.bar.filmed else self.bar * _LOW
        low, foot = self.bar * _LOW, one.top + self.line + self.bar
        fit, wait, hands = (None if part is None else self._seen(part) for part in (one.fit, one.wait, one.hands))
        if fit is not None:
            self._tail(fit, foot - low, low)
        if wait is not None:
            self._hatched(wait, foot - low, low)
        if hands is not None:
            self._solid(one, hands, foot - height, height)
        if look.under_mouse or look.chosen:
            self._ring(one, look)
        self._caption(one, look)

    def _solid(self, one: PlacedPiece, extent: Extent, top: float, height: float) -> None:
        """Hands; what has begun is hollow."""
        colour = self._colour("accent" if one.piece.bar.filmed else "quiet")
        box = QRectF(extent[0], top, max(1.0, extent[1] - extent[0] - 0.5), height)
        if one.piece.bar.done:
            self.painter.fillRect(box, self._colour("raised"))
            self.painter.setPen(QPen(colour, 1.5))
            self.painter.drawRect(box.adjusted(0.75, 0.75, -0.75, -0.75))
        else:
            self.painter.fillRect(box, colour)

    def _hatched(self, extent: Extent, top: float, height: float) -> None:
        box = QRectF(extent[0], top, extent[1] - extent[0], height)
        self.painter.fillRect(box, self._colour("raised"))
        self.painter.fillRect(box, QBrush(self._colour("edge"), Qt.BrushStyle.BDiagPattern))
        self.painter.setPen(QPen(self._colour("edge"), 1))
        self.painter.drawRect(box.adjusted(0.5, 0.5, -0.5, -0.5))

    def _tail(self, extent: Extent, top: float, height: float) -> None:
        """Open at its end: how long the result stays fit."""
        pen = QPen(self._colour("edge"), 1)
        pen.setDashPattern([4.0, 3.0])
        self.painter.setPen(pen)
        for y in (top + 0.5, top + height - 0.5):
            self.painter.drawLine(QLineF(extent[0], y, extent[1], y))

    def _ring(self, one: PlacedPiece, look: Look) -> None:
        box = QRectF(one.left - 3, one.top + self.line - 2, max(6.0, one.right - one.left + 6), self.bar + 5)
        self.painter.setPen(QPen(self._colour("accent" if look.chosen else "edge"), 2 if look.chosen else 1))
        self.painter.setBrush(Qt.BrushStyle.NoBrush)
        with self._smooth():
            self.painter.drawRoundedRect(box, 3, 3)

    def _caption(self, one: PlacedPiece, look: Look) -> None:
        left = one.left
        if one.piece.bar.pinned:
            self._pin(QPointF(left, one.top + self.line), done=one.piece.bar.done)
            left += self.bar
        font = self._strong if look.chosen else self._small
        token = "ink" if one.piece.bar.filmed or look.chosen else "quiet"
        self._words(QRectF(left, one.top, _FAR, self.line), one.caption, font, token)

    def _pin(self, foot: QPointF, *, done: bool) -> None:
        """A pin stuck into the beginning; where it has begun, a tick."""
        ink = self._colour("ink")
        size = self.bar * 0.5
        if done:
            self.painter.setPen(QPen(ink, 1.6))
            corner = foot + QPointF(size * 0.5, -size * 0.3)
            with self._smooth():
                self.painter.drawPolyline(
                    QPolygonF([corner + QPointF(-size * 0.5, -size * 0.4), corner, corner + QPointF(size * 0.8, -size)])
                )
            return
        head = foot + QPointF(size * 0.5, -self.line * 0.55)
        self.painter.setPen(QPen(ink, 1.4))
        self.painter.drawLine(QLineF(foot + QPointF(size * 0.5, 0), head))
        self.painter.setPen(Qt.PenStyle.NoPen)
        self.painter.setBrush(ink)
        with self._smooth():
            self.painter.drawEllipse(head, size * 0.45, size * 0.45)

    @contextmanager
    def _smooth(self) -> Iterator[None]:
        """Round shapes are drawn smoothly; straight ones are crisp, and quick, without."""
        self.painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
        yield
        self.painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)

    def thread(self, start: PlacedPiece, end: PlacedPiece) -> None:
        """From what an activity waits for to where it begins."""
        y = self.line + self.bar / 2
        first, last = QPointF(start.right, start.top + y), QPointF(end.left, end.top + y)
        bend = max(first.x() + self.air, last.x() - self.air)
        self.painter.setPen(QPen(self._colour("accent"), 1.2))
        self.painter.drawPolyline(QPolygonF([first, QPointF(bend, first.y()), QPointF(bend, last.y()), last]))

    def ghost(self, one: PlacedPiece, by: float, text: str) -> None:
        """A piece while it is dragged, with the time it would begin at."""
        box = QRectF(one.left + by, one.top + self.line - 2, max(6.0, one.right - one.left), self.bar + 4)
        colour = QColor(self._colour("accent"))
        self.painter.setPen(QPen(colour, 2, Qt.PenStyle.DashLine))
        self.painter.setBrush(Qt.BrushStyle.NoBrush)
        self.painter.drawRect(box)
        font = self._strong
        width = QFontMetricsF(font).horizontalAdvance(text) + self.air * 2
        label = QRectF(box.left(), one.top - 2, width, self.line)
        self.painter.fillRect(label, colour)
        self.painter.setFont(font)
        self.painter.setPen(self._colour("on_accent"))
        self.painter.drawText(label, int(Qt.AlignmentFlag.AlignCenter), text)

    # Words

    def _words(self, box: QRectF, text: str, font: QFont, token: str) -> None:
        if text:
            self.painter.setFont(font)
            self.painter.setPen(self._colour(token))
            self.painter.drawText(box, _LEFT, text)

    def _cut(self, box: QRectF, text: str, font: QFont, token: str) -> None:
        shown = QFontMetricsF(font).elidedText(text, Qt.TextElideMode.ElideRight, box.width())
        self._words(box, shown, font, token)
