"""Where the arrow keys lead on the timeline. Plain Python."""

from __future__ import annotations

from enum import StrEnum
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.desktop.day_page.timeline_places import PlacedPiece, Places


class Way(StrEnum):
    """A way to go from one activity to another."""

    LEFT = "left"
    RIGHT = "right"
    UP = "up"
    DOWN = "down"
    FIRST = "first"
    LAST = "last"


def next_piece(places: Places, at: PlacedPiece | None, way: Way) -> PlacedPiece | None:
    """The piece a key leads to from the current one; the current one itself at the edge; None where there is none."""
    if at is None or at not in places.pieces:
        return places.pieces[0] if places.pieces else None
    lane = _lane(places, at.lane)
    if way in {Way.LEFT, Way.RIGHT}:
        place = lane.index(at) + (1 if way is Way.RIGHT else -1)
        return lane[min(max(place, 0), len(lane) - 1)]
    if way is Way.FIRST:
        return lane[0]
    if way is Way.LAST:
        return lane[-1]
    return _across(places, at, 1 if way is Way.DOWN else -1)


def _across(places: Places, at: PlacedPiece, by: int) -> PlacedPiece:
    """The nearest piece of the next lane that has any."""
    number = at.lane + by
    while 0 <= number < len(places.lanes):
        lane = _lane(places, number)
        if lane:
            return min(lane, key=lambda one: abs(one.left - at.left))
        number += by
    return at


def _lane(places: Places, number: int) -> Sequence[PlacedPiece]:
    return [one for one in places.pieces if one.lane == number]
