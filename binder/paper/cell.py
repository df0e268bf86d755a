"""Cells of tables: words, figures aligned on their decimal mark, bars, boxes to tick."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.paper.arrangement import Beside
from binder.paper.block import Block, Text
from binder.paper.mark import SIDE, Mark, Shape
from binder.paper.pen import HAIRLINE
from binder.paper.run import LEADING, RISE, Run
from binder.paper.word import width_of_runs

if TYPE_CHECKING:
    from binder.paper.pen import Pen
    from binder.paper.run import Style

_AFTER_SHAPE = 0.32
"""White between a shape and its word, as a part of the type size."""


@dataclass(frozen=True)
class Column:
    """A column: its label, whether it holds figures (right-aligned) or bars, and its share of the room for words.

    `head` columns stand on the first line of a narrow row; the others follow as `label value`. Figures align on
    `decimal_mark` where there is one. A `strong` label is looked for, as the number of a dish. Figures take at `most`
    that part of the table's width.
    """

    label: str
    figure: bool = False
    bar: bool = False
    share: float = 1.0
    head: bool = False
    decimal_mark: str = ""
    strong: bool = False
    most: float = 0.28


@dataclass(frozen=True)
class Bar:
    """A bar: how much of its column is filled (0 to 1), and where the notch of a limit stands, if there is one."""

    part: float
    notch: float | None = None


@dataclass(frozen=True)
class Cell:
    """What stands in a column: runs of text, a shape before them for a state or a tick, or a bar of that `size`."""

    runs: tuple[Run, ...] = ()
    shape: Shape | None = None
    size: float = 10.0
    bar: Bar | None = None

    @property
    def words(self) -> str:
        """Its text."""
        return "".join(run.text for run in self.runs)


def cell(words: str, style: Style) -> Cell:
    """A cell of one style."""
    return Cell((Run(words, style),) if words else (), size=style.size)


@dataclass
class Figure:
    """A figure at the right of its column, `after` points from its edge, so that decimal marks stand in line."""

    words: Text
    after: float = 0.0

    def _width(self, width: float) -> float:
        """What is left of the width for the figure: all of it where the figure needs it."""
        return width - self.after if self.words.natural_width() + self.after <= width else width

    def height(self, width: float) -> float:
        """Its lines."""
        return self.words.height(self._width(width))

    def rise(self, width: float) -> float:
        """As text has it."""
        return self.words.rise(self._width(width))

    def parted(self, width: float, room: float) -> tuple[Block | None, Block | None]:
        """As text is."""
        return self.words.parted(width, room)

    def draw(self, pen: Pen, x: float, top: float, width: float) -> None:
        """Against the right."""
        self.words.draw(pen, x, top, self._width(width))


@dataclass
class BarBlock:
    """A bar as tall as capitals of `size` points, as long as its part of the width."""

    bar: Bar
    size: float

    def height(self, width: float) -> float:  # noqa: ARG002
        """One line."""
        return self.size * LEADING

    def rise(self, width: float) -> float:  # noqa: ARG002
        """It stands on the baseline."""
        return self.size * RISE

    def parted(self, width: float, room: float) -> tuple[Block | None, Block | None]:  # noqa: ARG002
        """Not: it goes over whole."""
        return None, self

    def draw(self, pen: Pen, x: float, top: float, width: float) -> None:
        """An outline of the whole, the part filled, the notch standing out above and below."""
        tall = self.size * 0.5
        upper = top - self.size * (RISE - 0.58)
        pen.bar(x, upper, max(HAIRLINE, width * min(1.0, self.bar.part)), tall, grey=0.35)
        pen.rule(x, upper - tall, x + width, upper - tall)
        if self.bar.notch is not None:
            at = x + width * min(1.0, self.bar.notch)
            pen.rule(at, upper + 2, at, upper - tall - 2, weight=1.4)


def cell_block(found: Cell) -> Block | None:
    """A cell as a block; None for an empty one."""
    if found.bar is not None:
        return BarBlock(found.bar, found.size)
    words = Text(found.runs) if found.runs else None
    if found.shape is None:
        return words
    mark = (Mark(found.shape, found.size), found.size * SIDE)
    return Beside((mark, (words, None)), gap=found.size * _AFTER_SHAPE) if words else Beside((mark,))


def cell_width(found: Cell, after: float) -> float:
    """Points that a cell takes with its lines unbroken, and with `after` points of white after its figure."""
    return natural_width(found) + (after if found.runs else 0.0)


def natural_width(found: Cell) -> float:
    """Points that a cell takes where no line of it is broken but where it says so."""
    widest, here = 0.0, 0.0
    for run in found.runs:
        first, *others = run.text.split("\n")
        here += width_of_runs((Run(first, run.style),)) if first else 0.0
        for line in others:
            widest, here = max(widest, here), width_of_runs((Run(line, run.style),)) if line else 0.0
    shape = found.size * (SIDE + (_AFTER_SHAPE if found.runs else 0.0)) if found.shape else 0.0
    return max(widest, here) + shape


_NUMBER = re.compile(r"\d(?:[\d.,'\u00a0\u202f ’]*\d)?")


def tail_of(found: Cell, column: Column) -> float:
    """Points from the decimal mark of a figure to its end; 0 for a cell without a number."""
    number = _NUMBER.search(found.words)
    if not column.decimal_mark or number is None:
        return 0.0
    whole = number.group().partition(column.decimal_mark)[0]
    at, tail = number.start() + len(whole), 0.0
    for run in found.runs:
        tail += width_of_runs((Run(run.text[max(0, at) :], run.style),)) if at < len(run.text) else 0.0
        at -= len(run.text)
    return tail
