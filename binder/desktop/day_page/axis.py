"""The time axis of the plan: days before and the day itself in one line, stretches in which nobody works folded away.

Plain Python. Minutes are those of the plan, places along the axis are pixels from its left end.
"""

from __future__ import annotations

import bisect
import functools
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Sequence
    from datetime import datetime, time

FOLD_FROM = 90
"""Minutes without hands that are folded away; shorter ones are part of the day's rhythm. Common practice, no source."""

_MARGIN = 10
"""Minutes of air before the first and after the last work of a stretch."""

_HOUR = 60

_STEPS = (1, 2, 5, 10, 15, 30, 60, 120, 180, 240, 360, 720)
"""Minutes from one mark of the clock to the next."""


@dataclass(frozen=True)
class Span:
    """A stretch of time, in minutes; `folded` where nobody works."""

    start: int
    end: int
    folded: bool = False


@dataclass(frozen=True)
class Stretch:
    """A span with its place along the axis."""

    span: Span
    left: float
    right: float

    @property
    def per_minute(self) -> float:
        """Pixels that a minute takes here."""
        return (self.right - self.left) / max(1, self.span.end - self.span.start)


@dataclass(frozen=True)
class Tick:
    """A mark of the clock."""

    x: float
    text: str


@dataclass(frozen=True)
class Dial:
    """How marks of the clock are written, and the room in pixels from one to the next: full hours may need less."""

    says: Callable[[time], str]
    hours_apart: float
    minutes_apart: float

    def apart(self, step: int) -> float:
        """The room that marks need which are `step` minutes from each other."""
        return self.minutes_apart if step % _HOUR else self.hours_apart


@dataclass(frozen=True)
class Axis:
    """Where each minute lies."""

    stretches: tuple[Stretch, ...]

    @property
    def width(self) -> float:
        """How long the axis is."""
        return self.stretches[-1].right if self.stretches else 0.0

    @property
    def start(self) -> int:
        """Its first minute."""
        return self.stretches[0].span.start if self.stretches else 0

    @property
    def end(self) -> int:
        """Its last minute."""
        return self.stretches[-1].span.end if self.stretches else 0

    @functools.cached_property
    def _starts(self) -> list[int]:
        return [one.span.start for one in self.stretches]

    @functools.cached_property
    def _lefts(self) -> list[float]:
        return [one.left for one in self.stretches]

    def x(self, minute: float) -> float:
        """Where a minute lies; one before or after all stretches lies at the end of the axis."""
        if not self.stretches:
            return 0.0
        at = bisect.bisect_right(self._starts, minute) - 1
        one = self.stretches[max(0, at)]
        share = (minute - one.span.start) / max(1, one.span.end - one.span.start)
        return one.left + (one.right - one.left) * min(max(share, 0.0), 1.0)

    def minute(self, x: float) -> int:
        """The minute that lies at a place, to the nearest."""
        if not self.stretches:
            return 0
        at = bisect.bisect_right(self._lefts, x) - 1
        one = self.stretches[max(0, at)]
        share = (x - one.left) / max(1e-9, one.right - one.left)
        return round(one.span.start + (one.span.end - one.span.start) * min(max(share, 0.0), 1.0))

    def folded(self, minute: float) -> bool:
        """Whether a minute is folded away."""
        return any(one.span.folded and one.span.start < minute < one.span.end for one in self.stretches)


def spans_of(work: Iterable[tuple[int, int]], day: tuple[int, int] | None = None) -> tuple[Span, ...]:
    """The stretches that the work of hands (from, to) leaves open, and between them what is folded.

    `day` is never folded: from call to wrap.
    """
    busy = sorted([*work, *([day] if day is not None else [])])
    if not busy:
        return ()
    open_ones: list[list[int]] = []
    for start, end in busy:
        if open_ones and start - open_ones[-1][1] < FOLD_FROM:
            open_ones[-1][1] = max(open_ones[-1][1], end)
        else:
            open_ones.append([start, end])
    spans: list[Span] = []
    for start, end in open_ones:
        begin = _rounded_down(start - _MARGIN)
        if spans:
            spans.append(Span(spans[-1].end, begin, folded=True))
        spans.append(Span(begin, -_rounded_down(-(end + _MARGIN))))
    return tuple(spans)


def _rounded_down(minute: int) -> int:
    return minute // 10 * 10


def axis_of(spans: Sequence[Span], *, per_minute: float, fold: float, least: float) -> Axis:
    """The axis at a scale. A fold is `fold` pixels wide, an open stretch at least `least`."""
    stretches: list[Stretch] = []
    left = 0.0
    for span in spans:
        right = left + (fold if span.folded else max(least, (span.end - span.start) * per_minute))
        stretches.append(Stretch(span, left, right))
        left = right
    return Axis(tuple(stretches))


def fitting_scale(spans: Sequence[Span], *, width: float, fold: float, least: float) -> float:
    """Pixels a minute at which the whole axis is `width` wide, or as near as the least widths let it come."""
    room = width - fold * sum(span.folded for span in spans)
    lengths = sorted(span.end - span.start for span in spans if not span.folded)
    for at, shortest in enumerate(lengths):
        scale = (room - least * at) / max(1, sum(lengths[at:]))
        if scale * shortest >= least:
            return scale
    return least / max(1, lengths[-1]) if lengths else 1.0


def ticks_of(axis: Axis, wall: Callable[[float], datetime], dial: Dial) -> tuple[Tick, ...]:
    """Marks of the clock at full fives, quarters, hours, as close as their words can stand."""
    found: list[Tick] = []
    for stretch in axis.stretches:
        if not stretch.span.folded:
            found += _ticks_in(stretch, wall, dial)
    return tuple(found)


def _ticks_in(stretch: Stretch, wall: Callable[[float], datetime], dial: Dial) -> list[Tick]:
    step = next((one for one in _STEPS if one * stretch.per_minute >= dial.apart(one)), _STEPS[-1])
    apart = dial.apart(step)
    begin = wall(stretch.span.start)
    first = stretch.span.start + (-(begin.hour * 60 + begin.minute)) % step
    minutes = range(first, stretch.span.end + 1, step)
    found = [
        Tick(stretch.left + (minute - stretch.span.start) * stretch.per_minute, dial.says(wall(minute).time()))
        for minute in minutes
    ]
    at_start = Tick(stretch.left, dial.says(begin.time()))  # where none else has room before what comes next
    return [tick for tick in found if tick.x + apart <= stretch.right + 0.5] or [at_start]
