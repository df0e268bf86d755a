"""Several cards on one sheet of paper, with marks to cut them apart by, and backs that stand behind their fronts."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.paper.leaf import Leaf, Placing, Segment, plain_leaves
from binder.paper.paper_size import POINTS_PER_MILLIMETRE, paper_called
from binder.paper.print_choices import Backs, PrintChoices

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from binder.paper.page import Page
    from binder.paper.paper_size import PaperSize

_MARK = 3.0 * POINTS_PER_MILLIMETRE
"""Half the length of a cutting mark: it stands in the white at the edge of the cards."""

_ROUNDING = 0.05


@dataclass(frozen=True)
class _Grid:
    """How cards stand on a sheet: how many across and down, the size of one as it stands, and whether it is turned."""

    columns: int
    rows: int
    width: float
    height: float
    turned: bool

    @property
    def count(self) -> int:
        return self.columns * self.rows


def leaves_of(pages: Sequence[Page], paper: PaperSize, choices: PrintChoices, *, cards: bool) -> list[Leaf]:
    """The sheets of paper for some pages. Only `cards` are put several to a sheet."""
    if not pages[0].foot:
        return plain_leaves(pages, paper)  # labels are printed on one side, as their sheet has them
    grid = _grid(paper, paper_called(choices.sheet)) if cards and choices.sheet else None
    if grid is None or grid.count == 0 or choices.sheet is None:
        if choices.backs is Backs.NONE:
            return plain_leaves(pages, paper)
        grid, sheet = _Grid(1, 1, *paper.points, turned=False), paper
    else:
        sheet = paper_called(choices.sheet)
    return list(_imposed(pages, sheet, grid, choices.backs))


def _grid(card: PaperSize, sheet: PaperSize) -> _Grid:
    """The way round that more cards fit; upright where both fit as many."""
    width, height = card.points
    ways = (_Grid(*_counts(card, sheet, turned=turned), *sides, turned) for turned, sides in _sides(width, height))
    return max(ways, key=lambda grid: (grid.count, not grid.turned))


def _sides(width: float, height: float) -> tuple[tuple[bool, tuple[float, float]], ...]:
    return (False, (width, height)), (True, (height, width))


def _counts(card: PaperSize, sheet: PaperSize, *, turned: bool) -> tuple[int, int]:
    """How many cards stand across and down: half of A4 is A5 to half a millimetre (ISO 216 rounds down)."""
    wide, tall = (card.height, card.width) if turned else (card.width, card.height)
    return math.floor((sheet.width + _ROUNDING) / wide), math.floor((sheet.height + _ROUNDING) / tall)


def _imposed(pages: Sequence[Page], sheet: PaperSize, grid: _Grid, backs: Backs) -> Iterator[Leaf]:
    fronts = _fronts(pages) if backs is not Backs.NONE else [(at, None) for at in range(len(pages))]
    width, height = sheet.points
    for start in range(0, len(fronts), grid.count):
        here = fronts[start : start + grid.count]
        cells = [_corner(grid, at, width, height) for at in range(len(here))]
        cuts = _cuts(grid, width, height) if grid.count > 1 else ()
        yield Leaf(
            width,
            height,
            tuple(_placing(front, grid, *cell) for (front, _back), cell in zip(here, cells, strict=True)),
            cuts,
        )
        if backs is not Backs.NONE:
            yield _back_leaf(here, cells, grid, sheet, backs)


def _fronts(pages: Sequence[Page]) -> list[tuple[int, int | None]]:
    """Pages two by two, front and back; what has an entry in the outline begins on a front."""
    pairs: list[tuple[int, int | None]] = []
    at = 0
    while at < len(pages):
        goes_on = at + 1 < len(pages) and not pages[at + 1].outline
        pairs.append((at, at + 1 if goes_on else None))
        at += 2 if goes_on else 1
    return pairs


def _corner(grid: _Grid, at: int, width: float, height: float) -> tuple[float, float]:
    """The lower left corner of a cell, the whole grid in the middle of the sheet."""
    row, column = divmod(at, grid.columns)
    left = (width - grid.columns * grid.width) / 2
    top = height - (height - grid.rows * grid.height) / 2
    return left + column * grid.width, top - (row + 1) * grid.height


def _placing(page: int, grid: _Grid, x: float, y: float) -> Placing:
    """A page in a cell, turned to the left where cards lie."""
    return Placing(page, x + grid.width, y, 90) if grid.turned else Placing(page, x, y)


def _back_leaf(
    here: Sequence[tuple[int, int | None]],
    cells: Sequence[tuple[float, float]],
    grid: _Grid,
    sheet: PaperSize,
    backs: Backs,
) -> Leaf:
    """The backs, so that each stands behind its front and is the right way up when its card is turned like a page.

    About an upright edge the sheet's left comes to the right: the columns change sides. Cards that lie are turned like
    a page about what is then a level edge. A printer that turns the sheet about its other edge gets it upside down.
    """
    width, height = sheet.points
    about_upright = (backs is Backs.LONG_EDGE) == (width <= height)
    placings = []
    for (_front, back), (x, y) in zip(here, cells, strict=True):
        if back is None:
            continue
        mirrored = width - x - grid.width
        # A card that lies has its spine level: seen from behind it is turned to the right.
        placing = Placing(back, mirrored, y + grid.height, 270) if grid.turned else Placing(back, mirrored, y)
        placings.append(placing if about_upright else _upside_down(placing, width, height))
    return Leaf(width, height, tuple(placings))


def _upside_down(placing: Placing, width: float, height: float) -> Placing:
    return Placing(placing.page, width - placing.x, height - placing.y, (placing.turned + 180) % 360)


def _cuts(grid: _Grid, width: float, height: float) -> tuple[Segment, ...]:
    """Short marks at the corners of the cards; none beyond the paper, and none along its own edge."""
    left, bottom = (width - grid.columns * grid.width) / 2, (height - grid.rows * grid.height) / 2
    across = [left + column * grid.width for column in range(grid.columns + 1)]
    up = [bottom + row * grid.height for row in range(grid.rows + 1)]
    marks: list[Segment] = []
    for x in across:
        for y in up:
            if _ROUNDING < x < width - _ROUNDING:
                marks.append((x, max(0.0, y - _MARK), x, min(height, y + _MARK)))
            if _ROUNDING < y < height - _ROUNDING:
                marks.append((max(0.0, x - _MARK), y, min(width, x + _MARK), y))
    return tuple(marks)
