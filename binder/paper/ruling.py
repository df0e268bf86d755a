"""The widths of a table's columns, worked out once for all the tables of a sheet that stand in line."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING

from binder.paper.cell import Cell, Column, cell_width, tail_of
from binder.paper.run import Run
from binder.paper.word import width_of_runs

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.paper.list_type import ListType

Row = tuple[Cell, ...]

GAP = 9.0
"""Points between columns."""

_LEAST_WORDS = 8.0
"""A column of words is at least so many times the type size wide; where it cannot be, the table is set as lines."""

_WIDEST_FIGURE = 0.28
"""Part of the table's width that a column of figures may take."""

_BAR_WIDTH = 60.0
"""Points of a column of bars."""


@dataclass
class Ruling:
    """Columns for some rows. `widest` is the most points that a table takes of the page's width."""

    columns: tuple[Column, ...]
    rows: Sequence[Row]
    style: ListType
    widest: float = float("inf")
    _worked_out: dict[float, list[float] | None] = field(default_factory=dict, repr=False, compare=False)

    def widths(self, page_width: float) -> list[float] | None:
        """Points of each column; None where the words would not have room."""
        if page_width not in self._worked_out:
            self._worked_out[page_width] = self._widths(min(page_width, self.widest))
        return self._worked_out[page_width]

    @cached_property
    def tails(self) -> list[float]:
        """For each column the most points after the decimal mark of a figure in it."""
        return [
            max((tail_of(row[at], column) for row in self.rows), default=0.0) if column.decimal_mark else 0.0
            for at, column in enumerate(self.columns)
        ]

    @property
    def named(self) -> int:
        """The column whose label a table's name takes the place of: the first of words."""
        return next(at for at, column in enumerate(self.columns) if not column.figure and not column.bar)

    def _widths(self, width: float) -> list[float] | None:
        fixed = [self._fixed(at, width) for at in range(len(self.columns))]
        free = width - sum(wide or 0.0 for wide in fixed) - GAP * (len(self.columns) - 1)
        shares = sum(column.share for column, wide in zip(self.columns, fixed, strict=True) if wide is None)
        if free < shares * _LEAST_WORDS * self.style.plain.size:
            return None
        return [
            free * column.share / shares if wide is None else wide
            for column, wide in zip(self.columns, fixed, strict=True)
        ]

    def _fixed(self, at: int, width: float) -> float | None:
        """Points of a column of figures or bars; None for one of words."""
        column = self.columns[at]
        if column.bar:
            return _BAR_WIDTH
        return min(self._natural(at), width * _WIDEST_FIGURE) if column.figure else None

    def _natural(self, at: int) -> float:
        """What a column of figures would take: its widest figure, decimal marks aligned, or its label."""
        column, tail = self.columns[at], self.tails[at]
        widest = max((cell_width(row[at], tail - tail_of(row[at], column)) for row in self.rows), default=0.0)
        label = Run(column.label, self.style.strong if column.strong else self.style.label)
        return max(widest, width_of_runs((label,))) + 0.1
