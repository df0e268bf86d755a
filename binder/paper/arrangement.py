"""Blocks put together: white, rules, one below the other, side by side."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from binder.paper.block import ROUNDING

if TYPE_CHECKING:
    from binder.paper.block import Block
    from binder.paper.pen import Pen


@dataclass
class Space:
    """White, `points` tall."""

    points: float

    def height(self, width: float) -> float:  # noqa: ARG002
        """Its own."""
        return self.points

    def rise(self, width: float) -> float:  # noqa: ARG002
        """None."""
        return 0.0

    def parted(self, width: float, room: float) -> tuple[Block | None, Block | None]:  # noqa: ARG002
        """White at the end of a page is not carried over."""
        return None, None

    def draw(self, pen: Pen, x: float, top: float, width: float) -> None:
        """Nothing."""


@dataclass
class Rule:
    """A horizontal line `weight` points thick with white `above` and `below` it."""

    weight: float = 0.5
    above: float = 0.0
    below: float = 0.0

    def height(self, width: float) -> float:  # noqa: ARG002
        """The line and its white."""
        return self.above + self.weight + self.below

    def rise(self, width: float) -> float:  # noqa: ARG002
        """None."""
        return 0.0

    def parted(self, width: float, room: float) -> tuple[Block | None, Block | None]:  # noqa: ARG002
        """Not: it goes over whole."""
        return None, self

    def draw(self, pen: Pen, x: float, top: float, width: float) -> None:
        """Across the whole width."""
        y = top - self.above - self.weight / 2
        pen.rule(x, y, x + width, y, weight=self.weight)


@dataclass
class Tagged:
    """A block that is an element of the document's structure: a heading, a row of a table, a cell."""

    block: Block
    role: str

    def height(self, width: float) -> float:
        """As its block."""
        return self.block.height(width)

    def rise(self, width: float) -> float:
        """As its block."""
        return self.block.rise(width)

    def parted(self, width: float, room: float) -> tuple[Block | None, Block | None]:
        """As its block is; what goes on is of the same kind."""
        first, rest = self.block.parted(width, room)
        return first and Tagged(first, self.role), rest and Tagged(rest, self.role)

    def draw(self, pen: Pen, x: float, top: float, width: float) -> None:
        """As its block, within an element."""
        pen.begin_element(self.role)
        self.block.draw(pen, x, top, width)
        pen.end_element()


@dataclass
class Stack:
    """Blocks one below the other."""

    blocks: tuple[Block, ...]
    _heights: dict[float, float] = field(default_factory=dict, repr=False, compare=False)

    def height(self, width: float) -> float:
        """The sum of its blocks."""
        if width not in self._heights:
            self._heights[width] = sum(block.height(width) for block in self.blocks)
        return self._heights[width]

    def rise(self, width: float) -> float:
        """Down to the first baseline there is."""
        above = 0.0
        for block in self.blocks:
            if block.rise(width):
                return above + block.rise(width)
            above += block.height(width)
        return 0.0

    def parted(self, width: float, room: float) -> tuple[Block | None, Block | None]:
        """After the last block that fits whole, and within the next where that can be parted."""
        placed: list[Block] = []
        for at, block in enumerate(self.blocks):
            height = block.height(width)
            if height <= room + ROUNDING:
                placed.append(block)
                room -= height
                continue
            first, rest = block.parted(width, room)
            placed += [first] if first else []
            return stacked(*placed), stacked(*([rest] if rest else []), *self.blocks[at + 1 :])
        return self, None

    def draw(self, pen: Pen, x: float, top: float, width: float) -> None:
        """From the top down."""
        for block in self.blocks:
            block.draw(pen, x, top, width)
            top -= block.height(width)


def stacked(*blocks: Block) -> Block | None:
    """Blocks as one; None where there are none."""
    if len(blocks) < 2:  # noqa: PLR2004
        return blocks[0] if blocks else None
    return Stack(blocks)


@dataclass
class Beside:
    """Blocks side by side, `gap` points between them, on one first baseline where `level`, else their tops level.

    Each has its width in points; those with None have equal parts of what the others leave.
    """

    cells: tuple[tuple[Block | None, float | None], ...]
    gap: float = 0.0
    level: bool = True
    _known: dict[float, list[tuple[Block | None, float, float, float]]] = field(
        default_factory=dict, repr=False, compare=False
    )

    def _placed(self, width: float) -> list[tuple[Block | None, float, float, float]]:
        """Each block with where it begins, how wide it is and how far it is lowered to the common baseline."""
        if width not in self._known:
            self._known[width] = self._worked_out(width)
        return self._known[width]

    def _worked_out(self, width: float) -> list[tuple[Block | None, float, float, float]]:
        free = width - self.gap * (len(self.cells) - 1) - sum(wide or 0.0 for _block, wide in self.cells)
        share = free / max(1, sum(1 for _block, wide in self.cells if wide is None))
        widths = [share if wide is None else wide for _block, wide in self.cells]
        rises = [
            block.rise(wide) if block and self.level else 0.0
            for (block, _wide), wide in zip(self.cells, widths, strict=True)
        ]
        placed, x = [], 0.0
        for (block, _wide), wide, rise in zip(self.cells, widths, rises, strict=True):
            placed.append((block, x, wide, max(rises) - rise if rise else 0.0))
            x += wide + self.gap
        return placed

    def height(self, width: float) -> float:
        """The tallest of its blocks."""
        return max((block.height(wide) + lower for block, _x, wide, lower in self._placed(width) if block), default=0.0)

    def rise(self, width: float) -> float:
        """The common baseline."""
        return max((block.rise(wide) + lower for block, _x, wide, lower in self._placed(width) if block), default=0.0)

    def parted(self, width: float, room: float) -> tuple[Block | None, Block | None]:
        """All at the same place; what fits whole stays. Not at all where one of them cannot begin here."""
        above: list[tuple[Block | None, float | None]] = []
        below: list[tuple[Block | None, float | None]] = []
        for block, _x, wide, lower in self._placed(width):
            fits = block is None or block.height(wide) + lower <= room + ROUNDING
            first, rest = (block, None) if fits or block is None else block.parted(wide, room - lower)
            if first is None and rest is not None:
                return None, self
            above.append((first, wide))
            below.append((rest, wide))
        return Beside(tuple(above), self.gap, self.level), Beside(tuple(below), self.gap, self.level)

    def draw(self, pen: Pen, x: float, top: float, width: float) -> None:
        """Each at its place."""
        for block, at, wide, lower in self._placed(width):
            if block:
                block.draw(pen, x + at, top - lower, wide)


@dataclass
class Flow:
    """Short blocks one after the other, each with its width in points, on as many rows as it takes."""

    items: tuple[tuple[Block, float], ...]
    gap: float = 0.0

    def _rows(self, width: float) -> list[Beside]:
        rows: list[list[tuple[Block, float]]] = []
        used = float("inf")
        for block, natural in self.items:
            wide = min(natural, width)
            if used + self.gap + wide > width + ROUNDING:
                rows.append([])
                used = -self.gap
            rows[-1].append((block, wide))
            used += self.gap + wide
        return [Beside(tuple(row), self.gap) for row in rows]

    def height(self, width: float) -> float:
        """The sum of its rows."""
        return sum(row.height(width) for row in self._rows(width))

    def rise(self, width: float) -> float:
        """That of its first row."""
        rows = self._rows(width)
        return rows[0].rise(width) if rows else 0.0

    def parted(self, width: float, room: float) -> tuple[Block | None, Block | None]:
        """Between rows."""
        return Stack(tuple(self._rows(width))).parted(width, room)

    def draw(self, pen: Pen, x: float, top: float, width: float) -> None:
        """Row by row downward."""
        Stack(tuple(self._rows(width))).draw(pen, x, top, width)
