"""How bars, bands and words of the flow are drawn. Shape says what colour says: left over is hatched, short broken."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QFontMetricsF, QPainter, QPainterPath, QPen, QPolygonF

from binder.desktop.pictures.state_mark import draw_mark
from binder.desktop.sheet.cell import Mark
from binder.desktop.typeface import sized, small
from binder.figures.flow import NodeKind

if TYPE_CHECKING:
    from collections.abc import Sequence

    from PySide6.QtGui import QFont

    from binder.desktop.base_page.flow_places import Box
    from binder.desktop.base_page.flow_words import NodeWords
    from binder.desktop.theme import Tokens
    from binder.figures.flow import Node
    from binder.figures.flow_layout import PlacedBand

BAND_SHARE = 0.16
"""How much of the accent a band has; words lie on it."""

LIT_SHARE = 0.34

_THIN = 2.5
"""Pixels; a band thinner than this is drawn as a line."""

_THREAD_SHARE = 0.42

_CLEARING = 0.8

_LEAST_TO_BREAK = 3.0
"""A bar is drawn broken where it is so many times as high as wide."""


def mixed(one: QColor, other: QColor, share: float) -> QColor:
    """A colour with `share` of one and the rest of the other."""
    pairs = ((one.red(), other.red()), (one.green(), other.green()), (one.blue(), other.blue()))
    return QColor(*(round(a * share + b * (1 - share)) for a, b in pairs))


def thickness(pieces: Sequence[PlacedBand]) -> float:
    """How thick a band is where it is thickest."""
    return max(max(piece.left_height, piece.right_height) for piece in pieces)


@dataclass(frozen=True)
class FlowBrush:
    """What the flow is painted with."""

    painter: QPainter
    tokens: Tokens
    font: QFont

    def band(self, pieces: Sequence[PlacedBand], *, lit: bool = False) -> None:
        """A band from its first piece to its last, that leaves and arrives level; what is left over is hatched.

        A `lit` one is of the node that is looked at.
        """
        left_over = pieces[0].band.target == NodeKind.LEFT
        thick = thickness(pieces)
        if thick < _THIN:
            self._thread(pieces, max(1.6 if lit else 1.0, thick), left_over=left_over, lit=lit)
            return
        path = _band_path(pieces)
        if left_over:
            self.painter.fillPath(path, self.tokens.colour("line" if lit else "faint"))
            self.painter.fillPath(path, QBrush(self.tokens.colour("edge"), Qt.BrushStyle.BDiagPattern))
        else:
            self.painter.fillPath(path, self._tinted(LIT_SHARE if lit else BAND_SHARE))
        for edge in _band_edges(pieces):
            self.painter.strokePath(edge, QPen(self.tokens.colour("raised"), 1))

    def _thread(self, pieces: Sequence[PlacedBand], thick: float, *, left_over: bool, lit: bool) -> None:
        """A band too thin to be filled is a line, dashed for what is left over."""
        colour = self.tokens.colour("edge") if left_over else self._tinted(1.0 if lit else _THREAD_SHARE)
        pen = QPen(colour, thick)
        if left_over:
            pen.setDashPattern([3.0, 2.0])
        middles = [
            (piece.left_top + piece.left_height / 2, piece.right_top + piece.right_height / 2) for piece in pieces
        ]
        self.painter.strokePath(_curve(pieces, middles), pen)

    def _tinted(self, share: float) -> QColor:
        return mixed(self.tokens.colour("accent"), self.tokens.colour("raised"), share)

    def bar(self, node: Node, box: QRectF) -> None:
        """A node's bar."""
        if node.short:
            self._broken(box)
        elif node.kind is NodeKind.LEFT:
            self.painter.fillRect(box, self.tokens.colour("faint"))
            self.painter.fillRect(box, QBrush(self.tokens.colour("edge"), Qt.BrushStyle.BDiagPattern))
            self.painter.setPen(QPen(self.tokens.colour("edge"), 1))
            self.painter.drawRect(box.adjusted(0, 0, -1, -1))
        else:
            self.painter.fillRect(box, self.tokens.colour("ink" if node.kind is NodeKind.DISH else "accent"))

    def _broken(self, box: QRectF) -> None:
        """A bar torn across its middle."""
        self.painter.fillRect(box, self.tokens.colour("stop"))
        if box.height() < _LEAST_TO_BREAK * box.width():
            return
        middle, half = box.center().y(), box.width() / 2
        corners = (
            (box.left() - 1, half),
            (box.right() + 1, -half * 0.2),
            (box.right() + 1, -half),
            (box.left() - 1, half * 0.2),
        )
        tear = QPolygonF([QPointF(x, middle + y) for x, y in corners])
        self.painter.setPen(Qt.PenStyle.NoPen)
        self.painter.setBrush(self.tokens.colour("raised"))
        self.painter.drawPolygon(tear)

    def words(self, words: NodeWords, box: QRectF) -> None:
        """Name and weight of a node, and under them what is short of it."""
        lesser, strong = small(self.font), sized(small(self.font), 1.0, strong=True)
        line = box.height() / words.lines
        rows = [(words.name, lesser, "ink"), (words.amount, strong, "ink")]
        for place, (text, font, token) in enumerate(rows):
            self._line(QRectF(box.left(), box.top() + place * line, box.width(), line), text, font, token)
        if words.short:
            side = line * 0.6
            row = QRectF(box.left(), box.top() + 2 * line, box.width(), line)
            mark = QRectF(row.left(), row.center().y() - side / 2, side, side)
            draw_mark(self.painter, mark, Mark.SHORT, self.tokens)
            self._line(row.adjusted(side * 1.4, 0, 0, 0), words.short, strong, "stop")

    def number(self, text: str, box: Box) -> None:
        """The weight on a band."""
        self._line(QRectF(box.left, box.top, box.width + 1, box.height), text, small(self.font), "quiet")

    def _line(self, box: QRectF, text: str, font: QFont, token: str) -> None:
        metrics = QFontMetricsF(font)
        shown = metrics.elidedText(text, Qt.TextElideMode.ElideRight, box.width())
        foot = box.center().y() + (metrics.ascent() - metrics.descent()) / 2
        self._clear_around(QPointF(box.left(), foot), font, shown)
        self.painter.setFont(font)
        self.painter.setPen(self.tokens.colour(token))
        self.painter.drawText(QPointF(box.left(), foot), shown)

    def _clear_around(self, start: QPointF, font: QFont, text: str) -> None:
        """Take the lines that pass behind words some way back from the letters."""
        letters = QPainterPath()
        letters.addText(start, font, text)
        ground = self.tokens.colour("raised")
        ground.setAlphaF(_CLEARING)
        pen = QPen(ground, QFontMetricsF(font).height() * 0.22)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        self.painter.strokePath(letters, pen)


def _curve(pieces: Sequence[PlacedBand], ends: Sequence[tuple[float, float]]) -> QPainterPath:
    """A line through all pieces, level at the ends of each; `ends` are its heights where each begins and ends."""
    path = QPainterPath(QPointF(pieces[0].left, ends[0][0]))
    for piece, (start, end) in zip(pieces, ends, strict=True):
        bend = (piece.left + piece.right) / 2
        path.cubicTo(bend, start, bend, end, piece.right, end)
    return path


def _band_edges(pieces: Sequence[PlacedBand]) -> tuple[QPainterPath, QPainterPath]:
    upper = [(piece.left_top, piece.right_top) for piece in pieces]
    lower = [(piece.left_top + piece.left_height, piece.right_top + piece.right_height) for piece in pieces]
    return _curve(pieces, upper), _curve(pieces, lower)


def _band_path(pieces: Sequence[PlacedBand]) -> QPainterPath:
    upper, lower = _band_edges(pieces)
    path = QPainterPath(upper)
    path.connectPath(lower.toReversed())
    path.closeSubpath()
    return path
