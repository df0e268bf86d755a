"""Draws the stacked bar of a portion's cost at the foot of a recipe."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QRectF, QSize, Qt
from PySide6.QtGui import QBrush, QColor, QFontMetricsF, QHelpEvent, QPainter, QPen
from PySide6.QtWidgets import QSizePolicy, QToolTip, QWidget

from binder.desktop.dishes_page.portion_bar import PortionBar, Segment
from binder.desktop.pictures.state_mark import draw_mark
from binder.desktop.sheet.cell import Mark
from binder.desktop.spacing import space
from binder.desktop.theme import tokens_for
from binder.desktop.typeface import sized, small

if TYPE_CHECKING:
    from PySide6.QtGui import QPaintEvent

_SHADES = (1.0, 0.72, 0.5, 0.34)
"""How much of the accent each next segment has; separators part those that are alike."""


class PortionBarWidget(QWidget):
    """A sentence, the bar, and the names of the segments that have room for theirs."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bar = PortionBar((), None, "")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_bar(self, bar: PortionBar) -> None:
        """Show a bar."""
        if bar != self._bar:
            self._bar = bar
            self.setAccessibleName("; ".join([bar.says, *(segment.says for segment in bar.segments)]))
            self.update()

    @property
    def says(self) -> str:
        """The sentence above the bar."""
        return self._bar.says

    def sizeHint(self) -> QSize:
        return QSize(space(self, 100), space(self, 17))

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens, painter = tokens_for(self.palette()), QPainter(self)
        painter.fillRect(QRectF(0, 0, self.width(), 1), tokens.colour("line"))
        self._sentence(painter)
        for segment, box, shade in self._boxes():
            painter.fillRect(box.adjusted(0, 0, -1, 0), self._colour(shade))
            self._name(painter, segment, box)
        self._cap(painter)

    def _track(self) -> QRectF:
        margin = space(self, 4)
        return QRectF(margin, space(self, 8), self.width() - 2 * margin, space(self, 3.5))

    def _boxes(self) -> list[tuple[Segment, QRectF, float]]:
        track, found = self._track(), []
        left = track.left()
        for number, segment in enumerate(self._bar.segments):
            width = track.width() * segment.width
            found.append((segment, QRectF(left, track.top(), width, track.height()), _SHADES[number % len(_SHADES)]))
            left += width
        return found

    def _colour(self, share: float) -> QColor:
        tokens = tokens_for(self.palette())
        accent, ground = tokens.colour("accent"), tokens.colour("raised")
        pairs = ((accent.red(), ground.red()), (accent.green(), ground.green()), (accent.blue(), ground.blue()))
        return QColor(*(round(one * share + other * (1 - share)) for one, other in pairs))

    def _sentence(self, painter: QPainter) -> None:
        tokens, left, side = tokens_for(self.palette()), space(self, 4), space(self, 2.5)
        box = QRectF(left, space(self, 2), self.width() - 2 * left, space(self, 5))
        if self._bar.mark is not Mark.NONE:
            draw_mark(painter, QRectF(left, box.center().y() - side / 2, side, side), self._bar.mark, tokens)
            box.setLeft(left + side + space(self, 1.5))
        font = sized(self.font(), 1.0, strong=True)
        painter.setFont(font)
        painter.setPen(tokens.colour("stop" if self._bar.mark is Mark.OVER else "ink"))
        text = QFontMetricsF(font).elidedText(self._bar.says, Qt.TextElideMode.ElideRight, box.width())
        painter.drawText(box, int(Qt.AlignmentFlag.AlignVCenter), text)

    def _name(self, painter: QPainter, segment: Segment, box: QRectF) -> None:
        font = small(self.font())
        metrics = QFontMetricsF(font)
        room = box.width() - space(self, 2)
        if room < metrics.horizontalAdvance("mmmm"):
            return
        painter.setFont(font)
        painter.setPen(tokens_for(self.palette()).colour("quiet"))
        text = metrics.elidedText(segment.name, Qt.TextElideMode.ElideRight, room)
        painter.drawText(QRectF(box.left(), box.bottom() + 1, room, metrics.height() + 2), 0, text)

    def _cap(self, painter: QPainter) -> None:
        if self._bar.cap is None:
            return
        tokens, track = tokens_for(self.palette()), self._track()
        x = track.left() + track.width() * self._bar.cap
        end = track.left() + track.width() * sum(segment.width for segment in self._bar.segments)
        if end > x + 1:
            over = QRectF(x, track.top(), end - x, track.height())
            painter.fillRect(over, QBrush(tokens.colour("stop"), Qt.BrushStyle.BDiagPattern))
        painter.setPen(QPen(tokens.colour("ink"), max(1.5, space(self, 0.5))))
        painter.drawLine(
            round(x), round(track.top() - space(self, 1)), round(x), round(track.bottom() + space(self, 1))
        )

    def event(self, event: QEvent) -> bool:
        if event.type() == QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            under = [segment.says for segment, box, _shade in self._boxes() if box.contains(event.pos())]
            QToolTip.showText(event.globalPos(), under[0] if under else self._bar.says, self)
            return True
        return super().event(event)
