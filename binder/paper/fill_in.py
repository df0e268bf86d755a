"""A line to be filled in by hand: its label, and a rule to write on."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.paper.block import Text, text
from binder.paper.pen import HAIRLINE
from binder.paper.run import LEADING

if TYPE_CHECKING:
    from binder.paper.block import Block
    from binder.paper.pen import Pen
    from binder.paper.run import Style

_LEAST_RULE = 150.0
"""Points of a rule that a hand can write on; where less is left beside the label it runs below it."""

_TALL = 1.35
"""A hand writes larger than the type: the room of a line as a part of what type has."""


@dataclass
class FillIn:
    """A label and a rule, which is `least` points long at least."""

    label: str
    style: Style
    least: float = _LEAST_RULE

    def _set(self) -> Text:
        return text(self.label, self.style)

    def _beside(self, width: float) -> bool:
        return self._set().natural_width() + self.least <= width

    def height(self, width: float) -> float:
        """One line, or the label's and one more."""
        line = self.style.size * LEADING * _TALL
        return line if self._beside(width) else self._set().height(width) + line

    def rise(self, width: float) -> float:
        """That of its label."""
        return self._set().rise(width)

    def parted(self, width: float, room: float) -> tuple[Block | None, Block | None]:  # noqa: ARG002
        """Not: it goes over whole."""
        return None, self

    def draw(self, pen: Pen, x: float, top: float, width: float) -> None:
        """The label at the left, the rule after it to the right edge."""
        words, bottom = self._set(), top - self.height(width) + 2
        if self._beside(width):
            natural = words.natural_width()
            words.draw(pen, x, top - self.style.size * LEADING * (_TALL - 1), natural + 1)
            pen.rule(x + natural + 6, bottom, x + width, bottom, weight=HAIRLINE)
        else:
            words.draw(pen, x, top, width)
            pen.rule(x, bottom, x + width, bottom, weight=HAIRLINE)
