"""The clock over the timeline: the days, full hours, how long a fold is, call and wrap and what is at a fixed time."""

from __future__ import annotations

import functools
from typing import TYPE_CHECKING

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPolygonF

from binder.desktop.day_page.axis import Axis, Dial, Stretch, Tick, ticks_of
from binder.desktop.spacing import space
from binder.desktop.typeface import sized, small
from binder.desktop.words.clock_room import widest_hour, widest_time
from binder.desktop.words.figure_text import minutes_text
from binder.figures.date_text import hour_text
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from PySide6.QtGui import QFont
    from PySide6.QtWidgets import QWidget

    from binder.desktop.day_page.day_picture import DayPicture
    from binder.desktop.theme import Tokens
    from binder.kitchen.binder import Binder

_LEFT = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
_HOUR = 60


class TimelineHead:
    """Lays out and paints the head of a timeline; sizes follow the widget's font."""

    def __init__(self, widget: QWidget) -> None:
        self._widget = widget
        self._picture: DayPicture | None = None
        self._axis = Axis(())
        self.ticks: tuple[Tick, ...] = ()

    def lay_out(self, picture: DayPicture | None, axis: Axis) -> None:
        """Place the marks of the clock."""
        self._picture, self._axis = picture, axis
        self.ticks = ticks_of(axis, picture.wall, self._dial(picture.binder)) if picture is not None else ()

    def _dial(self, binder: Binder) -> Dial:
        metrics, air = QFontMetricsF(self._font), space(self._widget, 3)
        hours, minutes = widest_hour(binder, metrics), widest_time(binder, metrics)
        return Dial(functools.partial(hour_text, binder), hours + air, max(hours, minutes) + air)

    @property
    def _font(self) -> QFont:
        return small(self._widget.font())

    @property
    def _line(self) -> float:
        return QFontMetricsF(self._font).height()

    @property
    def height(self) -> int:
        """Its height: days, clock, and what is at a fixed time."""
        return round(3 * self._line + 1.5 * space(self._widget))

    def paint(self, painter: QPainter, tokens: Tokens, *, label_width: int, across: int) -> None:
        """Paint it over what has scrolled under it."""
        picture = self._picture
        if picture is None:
            return
        width = float(self._widget.width())
        painter.fillRect(QRectF(0, 0, width, self.height), tokens.colour("raised"))
        painter.setPen(tokens.colour("line"))
        painter.drawLine(QLineF(0, self.height - 0.5, width, self.height - 0.5))
        painter.save()
        painter.setClipRect(QRectF(label_width, 0, width, self.height))
        painter.translate(label_width - across, 0)
        self._paint_days(painter, tokens, picture, float(across))
        self._paint_clock(painter, tokens, float(across))
        self._paint_marks(painter, tokens, picture)
        if picture.now is not None:
            self._paint_now(painter, tokens, picture, picture.now)
        painter.restore()

    def _paint_days(self, painter: QPainter, tokens: Tokens, picture: DayPicture, across: float) -> None:
        """Each day once, at its first stretch, kept in sight while any of the day is."""
        font = sized(self._font, 1.0, strong=True)
        painter.setFont(font)
        painter.setPen(tokens.colour("ink"))
        open_ones = [one for one in self._axis.stretches if not one.span.folded]
        for at, stretch in enumerate(open_ones):
            day = picture.wall(stretch.span.start).date()
            if at and picture.wall(open_ones[at - 1].span.start).date() == day:
                continue
            same = [one for one in open_ones if picture.wall(one.span.start).date() == day]
            left, right = max(stretch.left, across), same[-1].right
            text = QFontMetricsF(font).elidedText(picture.day_name(day), Qt.TextElideMode.ElideRight, right - left)
            painter.drawText(QRectF(left + 2, 0, max(0.0, right - left), self._line), _LEFT, text)

    def _paint_clock(self, painter: QPainter, tokens: Tokens, across: float) -> None:
        painter.setFont(self._font)
        top = self._line + space(self._widget, 0.5)
        for stretch in self._axis.stretches:
            if stretch.span.folded:
                self._paint_fold(painter, tokens, stretch, top)
        painter.setPen(tokens.colour("quiet"))
        line, foot, width = self._line, self.height, self._widget.width()
        for tick in self.ticks_in(across - width / 8, across + width):
            painter.drawLine(QLineF(tick.x, top, tick.x, foot))
            painter.drawText(QRectF(tick.x + 3, top, width, line), _LEFT, tick.text)

    def ticks_in(self, left: float, right: float) -> list[Tick]:
        """The marks of the clock between two places."""
        return [tick for tick in self.ticks if left <= tick.x <= right]

    def _paint_fold(self, painter: QPainter, tokens: Tokens, stretch: Stretch, top: float) -> None:
        """A fold says how long it is."""
        box = QRectF(stretch.left, 0, stretch.right - stretch.left, self.height - 1)
        painter.fillRect(box, tokens.colour("ground"))
        minutes = stretch.span.end - stretch.span.start
        text = _("{hours} h").format(hours=round(minutes / _HOUR)) if minutes >= 2 * _HOUR else minutes_text(minutes)
        shown = QFontMetricsF(self._font).elidedText(text, Qt.TextElideMode.ElideRight, box.width())
        painter.setPen(tokens.colour("quiet"))
        painter.drawText(QRectF(box.left(), top, box.width(), self._line), int(Qt.AlignmentFlag.AlignCenter), shown)

    def _paint_marks(self, painter: QPainter, tokens: Tokens, picture: DayPicture) -> None:
        """Call, wrap, lunch: each cut where the next begins."""
        top = 2 * self._line + space(self._widget, 0.5)
        places = [self._axis.x(mark.minute) for mark in picture.marks]
        ends = [*places[1:], self._axis.width + self._widget.width()]
        metrics, gap = QFontMetricsF(self._font), space(self._widget, 1)
        for mark, left, end in zip(picture.marks, places, ends, strict=True):
            painter.setPen(tokens.colour("ink"))
            painter.drawLine(QLineF(left, top, left, self.height))
            text = metrics.elidedText(mark.text, Qt.TextElideMode.ElideRight, max(0.0, end - left - 2 * gap))
            painter.drawText(QRectF(left + gap, top, self._widget.width(), self._line), _LEFT, text)

    def _paint_now(self, painter: QPainter, tokens: Tokens, picture: DayPicture, now: int) -> None:
        """A wedge at the minute it is, with the time."""
        x, side = self._axis.x(now), float(space(self._widget, 1.5))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(tokens.colour("ink"))
        foot = float(self.height)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.drawPolygon(
            QPolygonF([QPointF(x - side, foot - side), QPointF(x + side, foot - side), QPointF(x, foot)])
        )
        font = sized(self._font, 1.0, strong=True)
        text = _("now {time}").format(time=picture.clock(now))
        width = QFontMetricsF(font).horizontalAdvance(text)
        box = QRectF(x - width - side * 1.5, foot - self._line - 1, width, self._line)
        painter.fillRect(box.adjusted(-2, 0, 2, 0), tokens.colour("raised"))
        painter.setFont(font)
        painter.setPen(tokens.colour("ink"))
        painter.drawText(box, _LEFT, text)
