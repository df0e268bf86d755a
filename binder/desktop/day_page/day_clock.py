"""What the clock on the wall shows at the place of a shoot. A test gives another."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime

from binder.figures.clock import zone_of

WallClock = Callable[[str], datetime]
"""Given a time zone's name, or nothing for that of this machine: what the clock on the wall shows there."""


def wall_now(zone: str) -> datetime:
    """The date and time it is there, without a zone."""
    return datetime.now(zone_of(zone)).replace(tzinfo=None)
