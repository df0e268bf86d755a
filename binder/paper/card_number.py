"""Numbers that are looked for: a step's in its box, a dish's very large in the band."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from binder.paper.block import Text, text
from binder.paper.pen import HAIRLINE
from binder.paper.run import RISE, Style

if TYPE_CHECKING:
    from binder.paper.block import Block
    from binder.paper.pen import Pen

_BELOW = 3.0
_PAD = 3.5
"""Points of white below a box that heads a column, and within it."""

_BOX = 1.3
"""The box's side as a multiple of the type size."""

_TAB_PAD = 0.12
"""Black round a number on a tab, as a part of its size."""

_FIGURE_HEIGHT = 0.66
"""Figures are as high as capitals in Source Sans."""


@dataclass
class StepNumber:
    """A step's number in a box, beside its containers and beside its words; `to_end` draws a hairline after it.

    A `solid` box is black and its number white.
    """

    number: str
    style: Style
    to_end: bool = False
    solid: bool = False

    def _set(self) -> Text:
        return text(self.number, self.style)

    def box_width(self) -> float:
        """Points of the box."""
        return max(self.style.size * _BOX, self._set().natural_width() + 2 * _PAD)

    def height(self, width: float) -> float:  # noqa: ARG002
        """The box and a little white."""
        return self.style.size * _BOX + (_BELOW if self.to_end else 0)

    def rise(self, width: float) -> float:  # noqa: ARG002
        """The baseline of the number in the box."""
        return self.style.size * (RISE + 0.04)

    def parted(self, width: float, room: float) -> tuple[Block | None, Block | None]:  # noqa: ARG002
        """Not: it goes over whole."""
        return None, self

    def draw(self, pen: Pen, x: float, top: float, width: float) -> None:
        """The box at the left, the hairline level with its middle."""
        side, tall, words = self.box_width(), self.style.size * _BOX, self._set()
        if self.solid:
            pen.bar(x, top, side, tall)
            words = text(self.number, replace(self.style, white=True))
        else:
            pen.box(x + 0.5, top - 0.5, side - 1, tall - 1, weight=1.0)
        words.draw(pen, x + (side - words.natural_width()) / 2, top - self.style.size * 0.04, side)
        if self.to_end:
            pen.rule(x + side, top - tall / 2, x + width, top - tall / 2, weight=HAIRLINE)


@dataclass
class Numeral:
    """A number set very large, without the white above and below that running text needs.

    A `solid` one is white on a black tab.
    """

    number: str
    style: Style
    solid: bool = False

    def width(self) -> float:
        """Points from side to side."""
        natural = text(self.number, self.style).natural_width()
        return natural + 2 * self._pad() if self.number else 0.0

    def _pad(self) -> float:
        """Points of black round a number on a tab."""
        return self.style.size * _TAB_PAD if self.solid and self.number else 0.0

    def height(self, width: float) -> float:  # noqa: ARG002
        """Its figures and a little white below."""
        return self.style.size * _FIGURE_HEIGHT + 2 * self._pad() + 2

    def rise(self, width: float) -> float:  # noqa: ARG002
        """None: the number stands by itself, not on the line beside it."""
        return 0.0

    def parted(self, width: float, room: float) -> tuple[Block | None, Block | None]:  # noqa: ARG002
        """Not: it goes over whole."""
        return None, self

    def draw(self, pen: Pen, x: float, top: float, width: float) -> None:  # noqa: ARG002
        """The top of its figures, or of the tab, at `top`."""
        pad = self._pad()
        if pad:
            pen.bar(x, top, self.width(), self.height(0) - 2)
        set_in = replace(self.style, white=True) if pad else self.style
        lowered = top - pad + self.style.size * (RISE - _FIGURE_HEIGHT)
        text(self.number, set_in).draw(pen, x + pad, lowered, self.width() + 1)
