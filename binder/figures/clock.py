"""Moments by the clock on the wall, and the minutes that really pass between them in a night the clocks change."""

from __future__ import annotations

import functools
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError


@functools.cache
def zone_of(name: str) -> ZoneInfo | None:
    """The time zone of a name such as `Europe/Berlin`; None where there is none of that name."""
    try:
        return ZoneInfo(name) if name else None
    except (ZoneInfoNotFoundError, ValueError, OSError):
        return None


def shifted(wall: datetime, minutes: float, zone: str) -> datetime:
    """What the clock on the wall shows so many minutes after `wall` (before it, where they are negative)."""
    known = zone_of(zone)
    if known is None:
        return wall + timedelta(minutes=minutes)
    moment = wall.replace(tzinfo=known).astimezone(UTC) + timedelta(minutes=minutes)
    return moment.astimezone(known).replace(tzinfo=None)


def minutes_between(first: datetime, second: datetime, zone: str) -> float:
    """Minutes that pass from one moment on the wall clock to another; negative where the second comes first."""
    known = zone_of(zone)
    if known is not None:
        first, second = (moment.replace(tzinfo=known).astimezone(UTC) for moment in (first, second))
    return (second - first).total_seconds() / 60
