"""States as a shape and a word: a shape survives a photocopier, and a word needs no legend."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.figures.base import BaseVerdict
from binder.figures.checks import Severity
from binder.figures.cost import Verdict
from binder.kitchen.wording import _
from binder.paper.arrangement import Beside
from binder.paper.block import Block, text
from binder.paper.run import LEADING, RISE, Style

if TYPE_CHECKING:
    from binder.paper.pen import Pen

_MARK, _AFTER_MARK = 0.8, 0.32
"""The room for a shape and the white after it, as parts of the type size."""

SIDE = 0.72
"""Width and height of a shape as parts of the type size: a little more than a capital."""


class Shape(StrEnum):
    """The shapes, named for what is drawn."""

    RING = "ring"
    WEDGE = "wedge"
    DASHED_RING = "dashed ring"
    BROKEN_BAR = "broken bar"
    OPEN_TRIANGLE = "open triangle"
    DOT = "dot"
    DASH = "dash"
    TICK_BOX = "tick box"
    TICKED = "ticked box"
    SQUARE = "square"


@dataclass
class Mark:
    """A shape as tall as a line of type of `size` points, as wide as it is given."""

    shape: Shape
    size: float

    def height(self, width: float) -> float:  # noqa: ARG002
        """One line of that type."""
        return self.size * LEADING

    def rise(self, width: float) -> float:  # noqa: ARG002
        """The baseline of that line: the shape stands on it."""
        return self.size * RISE

    def parted(self, width: float, room: float) -> tuple[Block | None, Block | None]:  # noqa: ARG002
        """Not: it goes over whole."""
        return None, self

    def draw(self, pen: Pen, x: float, top: float, width: float) -> None:  # noqa: ARG002
        """At the left of its place, level with the capitals of the line."""
        side = self.size * SIDE
        _DRAWN[self.shape](pen, x, top - self.size * (RISE - 0.68), side)


def _ring(pen: Pen, x: float, top: float, side: float) -> None:
    weight = side * 0.13
    pen.ring(x + side / 2, top - side / 2, (side - weight) / 2, weight=weight)


def _dashed_ring(pen: Pen, x: float, top: float, side: float) -> None:
    weight = side * 0.13
    pen.ring(x + side / 2, top - side / 2, (side - weight) / 2, weight=weight, dashes=(side * 0.22, side * 0.18))


def _wedge(pen: Pen, x: float, top: float, side: float) -> None:
    pen.wedge(((x, top - side), (x + side, top - side), (x + side, top)), solid=True)


def _open_triangle(pen: Pen, x: float, top: float, side: float) -> None:
    corners = ((x + side * 0.06, top - side * 0.94), (x + side * 0.94, top - side * 0.94), (x + side / 2, top))
    pen.wedge(corners, solid=False, weight=side * 0.12)


def _broken_bar(pen: Pen, x: float, top: float, side: float) -> None:
    pen.bar(x, top - side * 0.3, side * 0.38, side * 0.4)
    pen.bar(x + side * 0.62, top - side * 0.3, side * 0.38, side * 0.4)


def _dot(pen: Pen, x: float, top: float, side: float) -> None:
    pen.bar(x + side * 0.32, top - side * 0.32, side * 0.36, side * 0.36)


def _dash(pen: Pen, x: float, top: float, side: float) -> None:
    pen.bar(x + side * 0.1, top - side * 0.44, side * 0.8, side * 0.12)


def _tick_box(pen: Pen, x: float, top: float, side: float) -> None:
    pen.box(x + 0.4, top - 0.4, side - 0.8, side - 0.8, weight=0.8)


def _ticked(pen: Pen, x: float, top: float, side: float) -> None:
    _tick_box(pen, x, top, side)
    corners = ((0.18, 0.52), (0.42, 0.8), (0.88, 0.14), (0.42, 0.62))
    pen.wedge([(x + side * across, top - side * down) for across, down in corners], solid=True)


def _square(pen: Pen, x: float, top: float, side: float) -> None:
    pen.bar(x, top, side, side)


_DRAWN = {
    Shape.RING: _ring,
    Shape.WEDGE: _wedge,
    Shape.DASHED_RING: _dashed_ring,
    Shape.BROKEN_BAR: _broken_bar,
    Shape.OPEN_TRIANGLE: _open_triangle,
    Shape.DOT: _dot,
    Shape.DASH: _dash,
    Shape.TICK_BOX: _tick_box,
    Shape.TICKED: _ticked,
    Shape.SQUARE: _square,
}


def marked(shape: Shape, words: Block, style: Style) -> Beside:
    """A block with a shape before it."""
    return Beside(((Mark(shape, style.size), style.size * _MARK), (words, None)), gap=style.size * _AFTER_MARK)


def marked_width(style: Style) -> float:
    """Points that the shape and the white after it take."""
    return style.size * (_MARK + _AFTER_MARK) + 0.1


def state(shape: Shape, word: str, style: Style) -> Beside:
    """A shape and its word."""
    return marked(shape, text(word, style), style)


def cap_state(verdict: Verdict) -> tuple[Shape, str]:
    """How a dish stands to its cap."""
    return {
        Verdict.WITHIN: (Shape.RING, _("within")),
        Verdict.OVER: (Shape.WEDGE, _("over")),
        Verdict.NO_CAP: (Shape.DASH, _("no cap")),
        Verdict.UNKNOWN: (Shape.DASHED_RING, _("not known")),
    }[verdict]


def base_state(verdict: BaseVerdict) -> tuple[Shape, str]:
    """Whether the base ingredient goes round."""
    return {
        BaseVerdict.ENOUGH: (Shape.RING, _("enough")),
        BaseVerdict.SHORT: (Shape.BROKEN_BAR, _("short")),
        BaseVerdict.UNKNOWN: (Shape.DASHED_RING, _("not known")),
    }[verdict]


def severity_state(severity: Severity) -> tuple[Shape, str]:
    """How much a check matters."""
    return {
        Severity.STOP: (Shape.WEDGE, _("stop")),
        Severity.WARN: (Shape.OPEN_TRIANGLE, _("warn")),
        Severity.NOTE: (Shape.DOT, _("note")),
    }[severity]
