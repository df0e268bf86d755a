"""Sheets of paper as they leave the printer: one page each, or several cards with marks to cut them apart by."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.paper.page import Page
    from binder.paper.paper_size import PaperSize

Segment = tuple[float, float, float, float]
"""A line from a point to a point, in points from the leaf's lower left corner."""


@dataclass(frozen=True)
class Placing:
    """A page on a leaf, given by its index among the pages of its part.

    Its lower left corner, before it is turned, comes to (`x`, `y`); it is turned by a multiple of 90 degrees to the
    left about that corner.
    """

    page: int
    x: float
    y: float
    turned: int = 0

    @property
    def matrix(self) -> tuple[int, int, int, int, float, float]:
        """As a page's stream has it (ISO 32000-1, 8.3.3)."""
        across, up = {0: (1, 0), 90: (0, 1), 180: (-1, 0), 270: (0, -1)}[self.turned]
        return across, up, -up, across, self.x, self.y


@dataclass(frozen=True)
class Leaf:
    """One side of a sheet of paper: its size in points, what is printed on it, and where it is to be cut."""

    width: float
    height: float
    placings: tuple[Placing, ...]
    cuts: Sequence[Segment] = ()


def plain_leaves(pages: Sequence[Page], paper: PaperSize) -> list[Leaf]:
    """A leaf for each page."""
    return [Leaf(*paper.points, (Placing(at, 0.0, 0.0),)) for at in range(len(pages))]
