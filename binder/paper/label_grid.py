"""Sheets of labels by their measures, as the maker's packet has them."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _
from binder.paper.paper_size import PAPERS, POINTS_PER_MILLIMETRE, PaperSize, UnknownPaperError, paper_called

if TYPE_CHECKING:
    from binder.paper.print_choices import PrintChoices

_INCH = 25.4
_LEAST = 20.0
"""Millimetres of the smaller side of a label: less holds no line that can be read. Common practice, no source."""

_ROUNDING = 0.5
"""Millimetres that a maker's measures may add up to beyond the paper."""


class UnfitLabelsError(BinderError):
    """Measures that are no sheet of labels."""

    def __init__(self, measures: str, why: str) -> None:
        says = _("The labels “{measures}” do not do: {why}. Write them as {example}.")
        super().__init__(says.format(measures=measures[:80], why=why, example=EXAMPLE))


EXAMPLE = "a4 3x8 70x36 from 0x4.5 step 70x36"
"""Columns × rows, millimetres of a label, of the first one's corner from the paper's, and from label to label."""


@dataclass(frozen=True)
class LabelGrid:
    """A sheet of labels: `columns` and `rows`, and in millimetres the size of one, where the first begins, the step."""

    paper: PaperSize
    columns: int
    rows: int
    width: float
    height: float
    left: float
    top: float
    across: float
    down: float

    @property
    def count(self) -> int:
        """Labels on a sheet."""
        return self.columns * self.rows

    def corner(self, at: int) -> tuple[float, float]:
        """The upper left corner of a label, counted from 0 along the rows, in points from the paper's lower left."""
        row, column = divmod(at, self.columns)
        x, y = self.left + column * self.across, self.top + row * self.down
        return x * POINTS_PER_MILLIMETRE, (self.paper.height - y) * POINTS_PER_MILLIMETRE

    @property
    def points(self) -> tuple[float, float]:
        """Width and height of a label in points."""
        return self.width * POINTS_PER_MILLIMETRE, self.height * POINTS_PER_MILLIMETRE


LABELS = {
    "a4": LabelGrid(PAPERS["a4"], 3, 8, 70, 36, 0, 4.5, 70, 36),
    "letter": LabelGrid(
        PAPERS["letter"], 2, 5, 4 * _INCH, 2 * _INCH, 0.16 * _INCH, 0.5 * _INCH, 4.18 * _INCH, 2 * _INCH
    ),
}
"""A common sheet of labels for A4 and for Letter. Trade sizes, from memory: measure yours."""


def label_grid_for(choices: PrintChoices, paper: PaperSize) -> LabelGrid:
    """The sheet of labels chosen, or the usual one for a paper; that of A4 where there is none for it."""
    return choices.labels or LABELS.get(paper.key, LABELS["a4"])


_NUMBER = r"(\d+(?:[.,]\d+)?)"
_MEASURES = re.compile(
    rf"(?P<paper>[\w-]+)\s+(?P<columns>\d+)x(?P<rows>\d+)\s+{_NUMBER}x{_NUMBER}"
    rf"(?:\s+from\s+{_NUMBER}x{_NUMBER})?(?:\s+step\s+{_NUMBER}x{_NUMBER})?",
    re.IGNORECASE,
)


def label_grid(measures: str) -> LabelGrid:
    """A sheet of labels from its measures in millimetres, as `EXAMPLE`, or the usual one of a paper by its key.

    Without `step` labels touch, without `from` the whole stands in the middle of the paper. Raises UnfitLabelsError.
    """
    plain = " ".join(measures.casefold().replace("×", "x").split())
    if plain in LABELS:
        return LABELS[plain]
    found = _MEASURES.fullmatch(plain)
    if found is None:
        raise UnfitLabelsError(measures, _("they cannot be read"))
    try:
        paper = paper_called(found["paper"])
    except UnknownPaperError as unknown:
        raise UnfitLabelsError(measures, unknown.says.rstrip(".")) from unknown
    numbers = [None if one is None else float(one.replace(",", ".")) for one in found.groups()[3:]]
    width, height, left, top, across, down = numbers
    columns, rows = int(found["columns"]), int(found["rows"])
    return _fitting(measures, paper, (columns, rows), (width or 0.0, height or 0.0), (left, top), (across, down))


def _fitting(
    measures: str,
    paper: PaperSize,
    counts: tuple[int, int],
    size: tuple[float, float],
    begins: tuple[float | None, float | None],
    step: tuple[float | None, float | None],
) -> LabelGrid:
    """The grid where it fits its paper."""
    steps = [each if one is None else one for one, each in zip(step, size, strict=True)]
    for count, each, one in zip(counts, size, steps, strict=True):
        if count < 1 or each < _LEAST or one < each - _ROUNDING:
            says = _("a label is {least} millimetres wide and high at least, and labels do not overlap")
            raise UnfitLabelsError(measures, says.format(least=f"{_LEAST:g}"))
    whole = [(count - 1) * one + each for count, one, each in zip(counts, steps, size, strict=True)]
    room = (paper.width, paper.height)
    starts = [(all_ - used) / 2 if one is None else one for one, all_, used in zip(begins, room, whole, strict=True)]
    if any(
        start < -_ROUNDING or start + used > all_ + _ROUNDING
        for start, used, all_ in zip(starts, whole, room, strict=True)
    ):
        raise UnfitLabelsError(measures, _("together they are larger than the paper"))
    return LabelGrid(paper, *counts, *size, *starts, *steps)
