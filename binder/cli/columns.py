"""Text set in columns of a given room, counted in terminal cells. Lines fold between words; numbers stay whole."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import zip_longest
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

GAP = "  "
_LONGEST_WORD = 16
"""Cells; a longer word may be broken where room is short."""


@dataclass(frozen=True)
class Column:
    """A column by its heading. Its texts break only at `joint` (nowhere where that is empty); long words may be cut."""

    heading: str
    joint: str
    to_right: bool = False
    may_cut: bool = False


def words(heading: str = "") -> Column:
    """A column of words, which flow."""
    return Column(heading, " ", may_cut=True)


def names(heading: str) -> Column:
    """A column of what is copied and must stay whole, such as paths."""
    return Column(heading, "")


def numbers(heading: str) -> Column:
    """A column of numbers with their units, never broken."""
    return Column(heading, "", to_right=True)


def amounts(heading: str) -> Column:
    """A column of amounts such as `180 g · 1½ cups`, broken only between weight and measure."""
    return Column(heading, " · ", to_right=True)


def parts(heading: str) -> Column:
    """A column of a few parts that each stay whole where they can, such as store and date."""
    return Column(heading, " · ", may_cut=True)


SENTENCE = Column("", " ")
"""Text by itself: it flows, and a word longer than the line (a path) stays whole."""

PARTS = Column("", " · ")
"""A heading of several parts."""


def folded(text: str, width: int, column: Column = SENTENCE) -> list[str]:
    """A text in lines of at most `width` cells; longer only where something would have to be cut that must not be."""
    lines: list[str] = []
    for piece in _pieces(text, column):
        longer = f"{lines[-1]}{column.joint}{piece}" if lines else piece
        if lines and _cells(longer) <= width:
            lines[-1] = longer
        else:
            lines += _chopped(piece, width) if column.may_cut else [piece]
    return lines or [""]


def _pieces(text: str, column: Column) -> list[str]:
    return text.split(column.joint) if column.joint and text else [text]


def _cells(text: str) -> int:
    from rich.cells import cell_len

    return cell_len(text)


def _chopped(word: str, width: int) -> list[str]:
    from rich.cells import chop_cells

    return chop_cells(word, width) if _cells(word) > width else [word]


def fitted(columns: Sequence[Column], rows: Iterable[Sequence[str]], room: int) -> list[int]:
    """The width of each column: as wide as its longest text, narrowed, the widest first, until all stand in `room`."""
    cells = list(zip(*rows, strict=True)) or [()] * len(columns)
    widths = [max(map(_cells, (column.heading, *texts))) for column, texts in zip(columns, cells, strict=True)]
    least = [_least(column, texts) for column, texts in zip(columns, cells, strict=True)]
    too_much = sum(widths) + len(GAP) * (len(columns) - 1) - room
    for _cell in range(too_much):
        widest = max(range(len(columns)), key=lambda at: (widths[at] > least[at], widths[at]))
        widths[widest] = max(widths[widest] - 1, least[widest])
    return widths


def _least(column: Column, texts: Iterable[str]) -> int:
    heading = max(map(_cells, column.heading.split()), default=0)
    pieces = [_cells(piece) for text in texts for piece in _pieces(text, column)]
    longest = max(pieces, default=0)
    return max(heading, min(longest, _LONGEST_WORD) if column.may_cut else longest)


def heading_lines(columns: Sequence[Column], widths: Sequence[int]) -> list[str]:
    """The headings, those of several lines standing on the rule under them."""
    folds = [folded(column.heading, width) for column, width in zip(columns, widths, strict=True)]
    deepest = max(map(len, folds))
    cells = [[""] * (deepest - len(fold)) + fold for fold in folds]
    return [*_joined(columns, cells, widths), "─" * (sum(widths) + len(GAP) * (len(widths) - 1))]


def row_lines(columns: Sequence[Column], row: Sequence[str], widths: Sequence[int]) -> list[str]:
    """A row in as many lines as its deepest cell takes."""
    every = zip(columns, row, widths, strict=True)
    return _joined(columns, [folded(text, width, column) for column, text, width in every], widths)


def _joined(columns: Sequence[Column], cells: Sequence[Sequence[str]], widths: Sequence[int]) -> list[str]:
    lines = zip_longest(*cells, fillvalue="")
    return [GAP.join(map(_padded, columns, line, widths)).rstrip() for line in lines]


def _padded(column: Column, text: str, width: int) -> str:
    padding = " " * (width - _cells(text))
    return padding + text if column.to_right else text + padding
