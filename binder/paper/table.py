"""Tables that fit the paper: in columns where there is room, on a narrow card the same cells as lines of text."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.paper.arrangement import Beside, Rule, Space, Stack, Tagged, stacked
from binder.paper.block import Block, Text, text
from binder.paper.cell import Figure, cell_block, cell_width, tail_of
from binder.paper.mark import SIDE, Mark
from binder.paper.pen import HAIRLINE
from binder.paper.ruling import Row, Ruling
from binder.paper.run import Run
from binder.paper.script import UNBROKEN_SPACE
from binder.paper.structure import CELL, HEAD_CELL, HEAD_ROW, ROW, SUBHEADING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.paper.cell import Column
    from binder.paper.list_type import ListType


_LONGEST_NUMBER = 3
"""Signs of a number that stays with the word after it, where cells are set as running text."""

_LEAST_BESIDE = 4.5
"""Words beside the figures of a narrow row are at least so many times the type size wide, or all is running text."""


@dataclass
class Table:
    """Rows of cells, its `name` in the place of the first label of words."""

    ruling: Ruling
    rows: Sequence[Row]
    name: str = ""

    def head(self, width: float, *, going_on: str = "") -> Block | None:
        """The name and the labels for a width in points; `going_on` instead of the name on the next pages."""
        name = text(going_on or self.name, self.ruling.style.section)
        widths = self.ruling.widths(width)
        if widths is None:
            return Stack((Tagged(name, SUBHEADING), Rule(1.0, above=1))) if self.name else None
        labels: list[Block] = [self._label(column) for column in self.ruling.columns]
        wide_name = bool(self.name) and name.natural_width() > widths[self.ruling.named]
        if self.name and not wide_name:
            labels[self.ruling.named] = name
        cells = tuple((Tagged(label, HEAD_CELL), wide) for label, wide in zip(labels, widths, strict=True))
        head = Stack((Beside(cells, self.ruling.gap), Rule(1.0, above=1)))
        block = self._kept_narrow(Tagged(head, HEAD_ROW), width)
        return Stack((Tagged(name, SUBHEADING), block)) if wide_name else block

    def blocks(self, width: float) -> list[Block]:
        """The rows for a width in points, each ruled off."""
        widths = self.ruling.widths(width)
        if widths is None:
            return [_ruled(self._narrow(row, width)) for row in self.rows]
        return [self._kept_narrow(Tagged(_ruled(self._row(row, widths)), ROW), width) for row in self.rows]

    def _row(self, row: Row, widths: Sequence[float]) -> Beside:
        cells = (block and Tagged(block, CELL) for block in self._wide(row))
        return Beside(tuple(zip(cells, widths, strict=True)), self.ruling.gap)

    def _kept_narrow(self, block: Block, width: float) -> Block:
        """A row with white after it where the table is not as wide as the page."""
        widest = self.ruling.widest
        return Beside(((block, widest), (None, width - widest))) if widest < width else block

    def _label(self, column: Column) -> Block:
        style = self.ruling.style.strong if column.strong else self.ruling.style.label
        return text(column.label, style, to_right=column.figure)

    def _wide(self, row: Row) -> list[Block | None]:
        blocks: list[Block | None] = []
        for found, column, tail in zip(row, self.ruling.columns, self.ruling.tails, strict=True):
            if column.figure and found.runs and found.shape is None:
                blocks.append(Figure(Text(found.runs, to_right=True), tail - tail_of(found, column)))
            else:
                blocks.append(cell_block(found))
        return blocks

    def _narrow(self, row: Row, width: float) -> Block:
        """The cells of head columns on one line, the others after their labels below."""
        first: list[tuple[Block | None, float | None]] = []
        rest: list[Run] = []
        for found, column in zip(row, self.ruling.columns, strict=True):
            if column.head and found.shape and not found.runs:
                first.append((Mark(found.shape, found.size), found.size * SIDE))
            elif column.head and found.runs:
                wide = cell_width(found, 0) + 0.1 if column.figure or found.shape else None
                first.append((Text(found.runs, to_right=column.figure) if column.figure else cell_block(found), wide))
            elif found.runs:
                rest += self._labelled(column, found.runs, first=not rest)
        heads: Block = Beside(tuple(first), self.ruling.gap / 2)
        if not self._have_room(first, width):
            heads = self._running(row)
        return stacked(heads, *([Text(tuple(rest))] if rest else [])) or Space(0)

    def _have_room(self, cells: Sequence[tuple[Block | None, float | None]], width: float) -> bool:
        """Whether words beside the figures of a narrow row have room for a long word."""
        words = sum(1 for _block, wide in cells if wide is None)
        free = width - sum(wide or 0.0 for _block, wide in cells) - self.ruling.gap / 2 * max(0, len(cells) - 1)
        return free >= words * _LEAST_BESIDE * self.ruling.style.lead.size

    def _running(self, row: Row) -> Block:
        """The cells of head columns as running text after their shape."""
        heads = [found for found, column in zip(row, self.ruling.columns, strict=True) if column.head]
        runs: list[Run] = []
        for found in heads:
            kept = bool(runs) and len(runs[-1].text) <= _LONGEST_NUMBER and found.runs
            between = UNBROKEN_SPACE if kept else "  "
            runs += [Run(between, self.ruling.style.plain)] if runs and found.runs else []
            runs += found.runs
        shape = next((found for found in heads if found.shape), None)
        words = Text(tuple(runs))
        if shape is None or shape.shape is None:
            return words
        mark = (Mark(shape.shape, shape.size), shape.size * SIDE)
        return Beside((mark, (words, None)), self.ruling.gap / 2)

    def _labelled(self, column: Column, runs: Sequence[Run], *, first: bool) -> list[Run]:
        label = [Run(f"{column.label} ", self.ruling.style.label)] if column.label else []
        return [*([] if first else [Run(" · ", self.ruling.style.plain)]), *label, *runs]


def table(
    columns: tuple[Column, ...], rows: Sequence[Row], style: ListType, name: str = "", *, widest: float = float("inf")
) -> Table:
    """A table that stands in line with no other."""
    return Table(Ruling(columns, rows, style, widest), rows, name)


def _ruled(row: Block) -> Block:
    return Stack((Space(1.5), row, Rule(HAIRLINE, above=1.5)))
