"""Container labels on sheets of labels: each on one label, on as many as it takes where one is too small."""

from __future__ import annotations

from datetime import timedelta
from itertools import islice
from typing import TYPE_CHECKING

from binder.figures.date_text import DateForm, date_text, time_text
from binder.kitchen.wording import _, listed
from binder.paper.arrangement import Beside, Space, Stack, stacked
from binder.paper.block import ROUNDING, Lines, Text, text
from binder.paper.card_words import measure_text
from binder.paper.container_labels import container_labels
from binder.paper.fill_in import FillIn
from binder.paper.label_grid import label_grid_for
from binder.paper.legibility import IN_THE_HAND
from binder.paper.page import Page
from binder.paper.paper_size import POINTS_PER_MILLIMETRE, PRINTERS
from binder.paper.run import Run, unbroken

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from datetime import datetime

    from binder.kitchen.binder import Binder
    from binder.paper.block import Block
    from binder.paper.container_labels import ContainerLabel
    from binder.paper.job import Job
    from binder.paper.label_grid import LabelGrid
    from binder.paper.list_type import ListType

_PAD = 6.0
"""Points of white within a label: no hand puts the sheet in quite straight. Common practice, no source."""

_UNPRINTED = PRINTERS["laser"] * POINTS_PER_MILLIMETRE
"""Points at the edge of the paper that nothing is printed on, though labels begin there."""

_DISTANCES = (1.0, 0.8, 0.65, IN_THE_HAND)
"""Metres, from the largest type down."""

_A_DAY = timedelta(days=1)
"""What is good for as long as that is dated by the day."""

_NEARLY_ALL = 0.9
_SHORTEST_RULE = 45.0
"""Points to write a date on."""


def label_pages(job: Job) -> list[Page]:
    """All labels of a shoot; one page that says so where nothing is set out."""
    grid = label_grid_for(job.choices, job.paper)
    sheets = _Sheets(grid, job.choices.used_labels, _("Container labels"))
    labels = list(container_labels(job.binder, job.shoot, job.plan))
    for label, style in zip(labels, _types(job, labels, grid), strict=True):
        for block in _parts(_label_block(job.binder, label, style), label, grid, style):
            sheets.put(block)
    if not sheets.pages:
        sheets.put(text(_("Nothing is to be set out: no dish has a build yet."), job.list_type().plain))
    return sheets.pages


def _types(job: Job, labels: Sequence[ContainerLabel], grid: LabelGrid) -> list[ListType]:
    """For each label the largest type in which nearly all fit, or else the largest in which it fits itself."""
    styles = [job.list_type(metres) for metres in _DISTANCES]
    begin = next((at for at, style in enumerate(styles) if _nearly_all_fit(job, labels, grid, style)), len(styles) - 1)
    return [_fitting(job, label, grid, styles[begin:]) for label in labels]


def _nearly_all_fit(job: Job, labels: Sequence[ContainerLabel], grid: LabelGrid, style: ListType) -> bool:
    """Whether nearly all labels fit in a type; no more are looked at than it takes to know."""
    too_large = (1 for label in labels if not _fits(job, label, grid, style))
    most = int(len(labels) * (1 - _NEARLY_ALL) + 1e-9)
    return sum(islice(too_large, most + 1)) <= most


def _fits(job: Job, label: ContainerLabel, grid: LabelGrid, style: ListType) -> bool:
    width, room = _inner(grid)
    return _label_block(job.binder, label, style).height(width) <= room


def _fitting(job: Job, label: ContainerLabel, grid: LabelGrid, styles: Sequence[ListType]) -> ListType:
    """The largest of some types in which a label fits, or the smallest."""
    return next((one for one in styles[:-1] if _fits(job, label, grid, one)), styles[-1])


def _white(grid: LabelGrid) -> tuple[float, float]:
    """Points of white at the sides of each label, and above and below; at the paper's edge what a printer leaves."""
    (wide, tall), (left, top), (from_left, from_top) = grid.paper.points, grid.points, grid.corner(0)
    last_left, last_top = grid.corner(grid.count - 1)
    nearest_side = min(from_left, wide - last_left - left)
    nearest_end = min(tall - from_top, last_top - top)
    return max(_PAD, _UNPRINTED - nearest_side), max(_PAD, _UNPRINTED - nearest_end)


def _inner(grid: LabelGrid) -> tuple[float, float]:
    """Points of a label that may be printed on."""
    across, down = _white(grid)
    return grid.points[0] - 2 * across, grid.points[1] - 2 * down


class _Sheets:
    """Fills sheets of labels row by row, the first from its first label that is not gone."""

    def __init__(self, grid: LabelGrid, used: int, outline: str) -> None:
        self._grid, self._at, self._outline = grid, used % grid.count, outline
        self.pages: list[Page] = []

    def put(self, block: Block) -> None:
        """A block on the next label."""
        if not self.pages or self._at >= self._grid.count:
            self._at = 0 if self.pages else self._at
            self.pages.append(Page(outline="" if self.pages else self._outline, foot=False))
        x, top = self._grid.corner(self._at)
        across, down = _white(self._grid)
        self.pages[-1].put(block, x + across, top - down, _inner(self._grid)[0])
        self._at += 1


def _parts(block: Stack, label: ContainerLabel, grid: LabelGrid, style: ListType) -> list[Block]:
    """A label's block in parts that fit a label each, every further one headed by what it goes on with."""
    width, room = _inner(grid)
    if block.height(width) > room:
        block = Stack(tuple(line for part in block.blocks for line in _line_by_line(part, width)))
    head = text(_("{food}, continued").format(food=label.food), style.strong).shortened(width, 1)
    parts: list[Block] = []
    rest: Block | None = block
    while rest is not None:
        heads, free = ((head,), room - head.height(width)) if parts else ((), room)
        first, rest = (rest, None) if rest.height(width) <= free + ROUNDING else rest.parted(width, free)
        if first is None:
            first, rest = rest, None  # smaller than two lines is no label of the table
        parts.append(stacked(*heads, *([first] if first else [])) or Space(0))
    return parts


def _line_by_line(block: Block, width: float) -> Iterator[Block]:
    """A text as single lines: a small label takes what it can, and the next goes on."""
    if isinstance(block, Text):
        yield from (Lines((line,)) for line in block.lines(width).lines)
    else:
        yield block


def _label_block(binder: Binder, label: ContainerLabel, style: ListType) -> Stack:
    """What and how much first, then whose, what is in it, when it was made and how long it is good."""
    weight, measure = label.amount.weight, measure_text(label.amount.measure)
    amount = [Run(unbroken(weight or measure), style.figure)]
    amount += [Run(f" · {unbroken(measure)}", style.plain)] if weight and measure else []
    after = f" {label.preparation}" if label.preparation else ""
    named = listed(label.allergens)
    contains = _("Contains {allergens}.").format(allergens=named) if named else _("No allergen is named.")
    keeping = [Run(f" {unbroken(label.keeping)}", style.strong)] if label.keeping else []
    return Stack(
        (
            Text((Run(label.food, style.lead), *([Run(after, style.plain)] if after else []))),
            Text(tuple(amount)),
            text(label.whose, style.plain),
            Text((Run(contains, style.strong if named else style.plain), *keeping)),
            *_times(binder, label, style),
        )
    )


def _times(binder: Binder, label: ContainerLabel, style: ListType) -> list[Block]:
    """When it was made and how long it is good: as planned, or a line to write on."""
    made, until = (FillIn(words, style.plain, least=_SHORTEST_RULE) for words in (_("made"), _("use by")))
    if label.made is None:
        return [Beside(((made, None), (until, None)), gap=style.plain.size / 2)]
    says = _("ready {moment}").format(moment=_moment(binder, label.made))
    if label.use_by is None:
        return [text(says, style.plain), until]
    last = _day(binder, label.use_by) if label.use_by - label.made >= _A_DAY else _moment(binder, label.use_by)
    return [text(_("{ready} · use by {moment}").format(ready=says, moment=last), style.plain)]


def _day(binder: Binder, moment: datetime) -> str:
    """Without the year: a label is gone before another begins."""
    return unbroken(date_text(binder, moment.date(), DateForm.SHORT))


def _moment(binder: Binder, moment: datetime) -> str:
    return f"{_day(binder, moment)} {unbroken(time_text(binder, moment.time()))}"
