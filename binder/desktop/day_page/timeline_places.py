"""Where everything on the timeline lies: rows from the top, pieces along the axis, captions that never overlap.

Plain Python; pixels from the top left of what scrolls.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from binder.desktop.day_page.axis import Axis
    from binder.desktop.day_page.rows import Group, Lane, Minutes, Piece

_LEAST_HANDS = 3.0
"""Pixels; work of a minute is still seen."""

_LEAST_TARGET = 12.0
"""Pixels to each side of the middle of a short piece that still hit it."""

_LEAST_CAPTION = 2.2
"""Lines' heights; a caption with less room than that is left out."""

Extent = tuple[float, float]
"""From a place to another, in pixels."""


@dataclass(frozen=True)
class Measures:
    """Sizes in pixels for a font: a line of captions, a bar, the air between lanes; and text cut to fit a width."""

    line: float
    bar: float
    air: float
    elide: Callable[[str, float], str]


@dataclass(frozen=True)
class PlacedPiece:
    """A piece: from `top`, its caption over its bar; its parts along the axis; `lane` is its lane's number."""

    piece: Piece
    lane: int
    top: float
    hands: Extent | None
    wait: Extent | None
    fit: Extent | None
    caption: str

    @property
    def left(self) -> float:
        """Where it begins."""
        return min(one[0] for one in (self.hands, self.wait, self.fit) if one is not None)

    @property
    def right(self) -> float:
        """Where hands and waits end."""
        solid = [one[1] for one in (self.hands, self.wait) if one is not None]
        return max(solid) if solid else self.left + _LEAST_TARGET


@dataclass(frozen=True)
class PlacedLane:
    """A lane: its title, its top, its height."""

    title: str
    top: float
    height: float


@dataclass(frozen=True)
class PlacedHeading:
    """A heading of several lanes."""

    text: str
    top: float


@dataclass(frozen=True)
class PlacedLevel:
    """What an oven is at: a line over its lanes with words at its beginning."""

    text: str
    extent: Extent
    top: float


@dataclass(frozen=True)
class PlacedDish:
    """A dish on the camera's row."""

    text: str
    extent: Extent
    top: float
    height: float


@dataclass(frozen=True)
class Places:
    """Everything, placed."""

    pieces: tuple[PlacedPiece, ...]
    lanes: tuple[PlacedLane, ...]
    headings: tuple[PlacedHeading, ...]
    levels: tuple[PlacedLevel, ...]
    dishes: tuple[PlacedDish, ...]
    rules: tuple[float, ...]
    height: float

    def at(self, x: float, y: float) -> PlacedPiece | None:
        """The piece at a point: short ones are hit from a little beside them."""
        lane = next((number for number, one in enumerate(self.lanes) if one.top <= y < one.top + one.height), None)
        near = [one for one in self.pieces if one.lane == lane and _distance(one, x) <= _LEAST_TARGET]
        return min(near, key=lambda one: _distance(one, x), default=None)


def _distance(one: PlacedPiece, x: float) -> float:
    if one.left <= x <= one.right:
        return 0.0
    return min(abs(x - one.left), abs(x - one.right))


def places_of(groups: tuple[Group, ...], axis: Axis, by: Measures) -> Places:
    """Place the rows of a day on an axis."""
    placing = _Placing(axis, by)
    for group in groups:
        placing.add(group)
    return placing.done()


class _Placing:
    def __init__(self, axis: Axis, by: Measures) -> None:
        self.axis, self.by, self.top = axis, by, by.air
        self.pieces: list[PlacedPiece] = []
        self.lanes: list[PlacedLane] = []
        self.headings: list[PlacedHeading] = []
        self.levels: list[PlacedLevel] = []
        self.dishes: list[PlacedDish] = []
        self.rules: list[float] = []

    def add(self, group: Group) -> None:
        """One more group, under those before."""
        if self.lanes:
            self.rules.append(self.top)
            self.top += self.by.air
        if group.heading:
            self.headings.append(PlacedHeading(group.heading, self.top))
            self.top += self.by.line + self.by.air / 2
        if group.levels:
            self._add_levels(group)
        if group.dishes:
            self._add_dishes(group)
        for lane in group.lanes:
            self._add_lane(lane)
        self.top += self.by.air

    def _add_levels(self, group: Group) -> None:
        extents = [self._extent(level.minutes) for level in group.levels]
        ends = [*(extent[0] for extent in extents[1:]), self.axis.width]
        for level, extent, end in zip(group.levels, extents, ends, strict=True):
            self.levels.append(PlacedLevel(self._cut(level.text, end - extent[0]), extent, self.top))
        self.top += self.by.line

    def _add_dishes(self, group: Group) -> None:
        height = self.by.line + self._lane_height
        extents = [self._extent(dish.minutes) for dish in group.dishes]
        ends = [*(extent[0] for extent in extents[1:]), self.axis.width]
        for dish, extent, end in zip(group.dishes, extents, ends, strict=True):
            text = self._cut(dish.text, end - extent[0] - self.by.air)
            self.dishes.append(PlacedDish(text, extent, self.top, height))
        self.top += self.by.line

    @property
    def _lane_height(self) -> float:
        return self.by.line + self.by.bar + self.by.air

    def _add_lane(self, lane: Lane) -> None:
        number = len(self.lanes)
        self.lanes.append(PlacedLane(lane.title, self.top, self._lane_height))
        self.pieces += self._placed(lane, number)
        self.top += self._lane_height

    def _placed(self, lane: Lane, number: int) -> Iterator[PlacedPiece]:
        starts = [self.axis.x(piece.start) for piece in lane.pieces]
        ends = [*starts[1:], self.axis.width][: len(starts)]
        for piece, start, end in zip(lane.pieces, starts, ends, strict=True):
            room = end - start - self.by.air - (self.by.bar if piece.bar.pinned else 0.0)
            hands, wait = self._part(piece.hands, least=_LEAST_HANDS), self._part(piece.wait)
            fit = self._part(piece.fit, until=end)
            if hands or wait or fit:
                caption = self._cut(piece.bar.activity.name, room)
                yield PlacedPiece(piece, number, self.top, hands, wait, fit, caption)

    def _part(self, minutes: Minutes | None, *, least: float = 0.0, until: float | None = None) -> Extent | None:
        if minutes is None:
            return None
        left, right = self._extent(minutes)
        right = max(right, left + least)
        if until is not None:
            right = min(right, until)
        return (left, right) if right > left else None

    def _extent(self, minutes: Minutes) -> Extent:
        return self.axis.x(minutes[0]), self.axis.x(minutes[1])

    def _cut(self, text: str, room: float) -> str:
        return self.by.elide(text, room) if room >= _LEAST_CAPTION * self.by.line else ""

    def done(self) -> Places:
        """What was placed."""
        return Places(
            tuple(self.pieces),
            tuple(self.lanes),
            tuple(self.headings),
            tuple(self.levels),
            tuple(self.dishes),
            tuple(self.rules),
            self.top,
        )
