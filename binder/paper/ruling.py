"""The widths of a table's columns, worked out once for all the tables of a sheet that stand in line."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING

from binder.paper.cell import Cell, Column, cell_width, natural_width, tail_of
from binder.paper.run import Run
from binder.paper.word import width_of_runs

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from binder.paper.list_type import ListType

Row = tuple[Cell, ...]

GAP = 9.0
_GAP_OF_LARGE_TYPE = 0.45
"""Points between columns, and of large type the part of its size that is left at least."""

_LEAST_WORDS = 8.0
"""A column of words is at least so many times the type size wide; where it cannot be, the table is set as lines."""

_USUALLY = 0.85
"""The part of the cells of a column that stand on unbroken lines, where not all can."""

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
    def gap(self) -> float:
        """Points between columns."""
        return max(GAP, _GAP_OF_LARGE_TYPE * self.style.lead.size)

    @property
    def named(self) -> int:
        """The column whose label a table's name takes the place of: the first of words."""
        return next(at for at, column in enumerate(self.columns) if not column.figure and not column.bar)

    def _widths(self, width: float) -> list[float] | None:
        fixed = [self._fixed(at, width) for at in range(len(self.columns))]
        free = width - sum(wide or 0.0 for wide in fixed) - self.gap * (len(self.columns) - 1)
        shares = {at: column.share for at, column in enumerate(self.columns) if fixed[at] is None}
        if free < sum(shares.values()) * _LEAST_WORDS * self.style.plain.size:
            return None
        words = self._shared(shares, free)
        return [words[at] if wide is None else wide for at, wide in enumerate(fixed)]

    def _shared(self, shares: Mapping[int, float], free: float) -> dict[int, float]:
        """Points of the columns of words: first what most of their cells need, so that few lines are broken."""
        needed = {at: self._one_line(at) for at in shares}
        widest = {at: widths[-1] for at, widths in needed.items()}
        usual = {at: widths[int(_USUALLY * (len(widths) - 1))] for at, widths in needed.items()}
        for least, weights in ((widest, dict(shares)), (usual, {at: widest[at] - usual[at] for at in shares})):
            over = free - sum(least.values())
            if over >= 0:
                return {at: wide + over * weights[at] / sum(weights.values()) for at, wide in least.items()}
        return self._by_share(shares, usual, free)

    @staticmethod
    def _by_share(shares: Mapping[int, float], needed: Mapping[int, float], free: float) -> dict[int, float]:
        """What a column does not need of its share goes to the others."""
        unsettled, settled, left = dict(shares), dict[int, float](), free
        while unsettled:
            each = left / sum(unsettled.values())
            short = [at for at, share in unsettled.items() if needed[at] <= each * share]
            if not short:
                return settled | {at: each * share for at, share in unsettled.items()}
            settled |= {at: needed[at] for at in short}
            left -= sum(needed[at] for at in short)
            unsettled = {at: share for at, share in unsettled.items() if at not in settled}
        return settled

    def _one_line(self, at: int) -> list[float]:
        """Points that the cells of a column of words, and its label, take without a line broken; the widest last."""
        label = width_of_runs((Run(self.columns[at].label, self.style.label),)) + 0.1
        return sorted(max(label, natural_width(row[at]) + 0.1) for row in self.rows) or [label]

    def _fixed(self, at: int, width: float) -> float | None:
        """Points of a column of figures or bars; None for one of words."""
        column = self.columns[at]
        if column.bar:
            return _BAR_WIDTH
        return min(self._natural(at), width * column.most) if column.figure else None

    def _natural(self, at: int) -> float:
        """What a column of figures would take: its widest figure, decimal marks aligned, or its label."""
        column, tail = self.columns[at], self.tails[at]
        widest = max((cell_width(row[at], tail - tail_of(row[at], column)) for row in self.rows), default=0.0)
        label = Run(column.label, self.style.strong if column.strong else self.style.label)
        return max(widest, width_of_runs((label,))) + 0.1
