"""What a page is made of: blocks that know their height, can be parted where a page ends, and draw themselves."""

from __future__ import annotations

import functools
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Protocol

from binder.paper.line import lines_of
from binder.paper.run import RISE, Run, SetLine, Style, Word
from binder.paper.word import width_of_runs, words_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.paper.pen import Pen


class Block(Protocol):
    """Anything that stands in a column. Lengths are points."""

    def height(self, width: float) -> float:
        """How tall it is at a width."""
        ...

    def rise(self, width: float) -> float:
        """From its top to its first baseline; 0 for what has none."""
        ...

    def parted(self, width: float, room: float) -> tuple[Block | None, Block | None]:
        """What of it fits in `room`, and what is left; None for nothing. Only asked where it does not fit whole."""
        ...

    def draw(self, pen: Pen, x: float, top: float, width: float) -> None:
        """Draw it, its top left corner at (x, top)."""
        ...


ROUNDING = 1e-6
"""Points that a sum of heights may be off by."""


@dataclass
class Lines:
    """Lines already broken."""

    lines: tuple[SetLine, ...]
    to_right: bool = False
    _height: float | None = field(default=None, repr=False, compare=False)

    def height(self, width: float) -> float:  # noqa: ARG002 - they are broken already
        """The sum of the lines."""
        if self._height is None:
            self._height = sum([line.height for line in self.lines])
        return self._height

    def rise(self, width: float) -> float:  # noqa: ARG002
        """That of the first line."""
        return self.lines[0].size * RISE if self.lines else 0.0

    def parted(self, width: float, room: float) -> tuple[Block | None, Block | None]:  # noqa: ARG002
        """Between lines, and so that no single line stands alone, neither at the end of a page nor at the next."""
        count = _lines_within(self.lines, room)
        if count and len(self.lines) - count == 1:
            count -= 1
        if count == 1:
            count = 0
        return _some(self.lines[:count], self.to_right), _some(self.lines[count:], self.to_right)

    def draw(self, pen: Pen, x: float, top: float, width: float) -> None:
        """Line by line downward."""
        pen.begin_content()
        for line in self.lines:
            pen.text(line, x + width - line.width if self.to_right else x, top)
            top -= line.height
        pen.end()


def _some(lines: tuple[SetLine, ...], to_right: bool) -> Lines | None:  # noqa: FBT001
    return Lines(lines, to_right) if lines else None


def _lines_within(lines: Sequence[SetLine], room: float) -> int:
    used = 0.0
    for count, line in enumerate(lines):
        used += line.height
        if used > room + ROUNDING:
            return count
    return len(lines)


@functools.lru_cache(maxsize=16384)
def _lines_of(runs: tuple[Run, ...], width: float) -> tuple[SetLine, ...]:
    """The lines of a text at a width, kept: the same words stand in many places."""
    return lines_of(words_of(runs), width)


@dataclass
class Text:
    """Running text in one or more styles, broken to the width it is given."""

    runs: tuple[Run, ...]
    to_right: bool = False
    _broken: dict[float, Lines] = field(default_factory=dict, repr=False, compare=False)

    def lines(self, width: float) -> Lines:
        """Its lines at a width."""
        if width not in self._broken:
            self._broken[width] = Lines(_lines_of(self.runs, width), self.to_right)
        return self._broken[width]

    def natural_width(self) -> float:
        """Points it takes on one line."""
        return width_of_runs(self.runs)

    def height(self, width: float) -> float:
        """The sum of its lines."""
        return self.lines(width).height(width)

    def rise(self, width: float) -> float:
        """That of its first line."""
        return self.lines(width).rise(width)

    def parted(self, width: float, room: float) -> tuple[Block | None, Block | None]:
        """As its lines are."""
        return self.lines(width).parted(width, room)

    def draw(self, pen: Pen, x: float, top: float, width: float) -> None:
        """As its lines are."""
        self.lines(width).draw(pen, x, top, width)

    def shortened(self, width: float, lines: int) -> Lines:
        """At most so many lines of it, the last ending in … where there is more."""
        broken = self.lines(width).lines
        if len(broken) <= lines:
            return self.lines(width)
        style = self.runs[-1].style
        dots = words_of([Run("…", style)])[0]
        last = [Word((piece,), piece.width) for piece in broken[lines - 1].pieces]
        kept = lines_of(last, width - dots.width)[:1]
        ended = SetLine((*kept[0].pieces, *dots.pieces), kept[0].width + dots.width, broken[lines - 1].size)
        return Lines((*broken[: lines - 1], ended), self.to_right)


def text(words: str, style: Style, *, to_right: bool = False) -> Text:
    """A text in one style."""
    return Text((Run(words, style),), to_right)
