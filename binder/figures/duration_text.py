"""Minutes as a cook reads them: `25 min`, `1 h 30 min`, `12 h`, `30 days`."""

from __future__ import annotations

import math

from binder.kitchen.wording import _

_HOUR, _DAY = 60, 24 * 60
_IN_MINUTES_BELOW = 90
"""A pot is watched for 75 min, not for 1 h 15 min. Common practice, no source."""

_IN_DAYS_FROM = 5 * _DAY
"""From here on no one counts hours: the time is given to the nearest day. Common practice, no source."""


def duration_text(minutes: float) -> str:
    """A time in whole minutes, halves rounded up, from 90 on in hours and minutes; never 0 for what takes time."""
    whole = max(math.floor(minutes + 0.5), 1 if minutes > 0 else 0)
    if whole < _IN_MINUTES_BELOW:
        return _("{minutes} min").format(minutes=whole)
    if whole >= _IN_DAYS_FROM:
        days = math.floor(whole / _DAY + 0.5)
        return _("{days} days").format(days=days)
    hours, rest = divmod(whole, _HOUR)
    if not rest:
        return _("{hours} h").format(hours=hours)
    return _("{hours} h {minutes} min").format(hours=hours, minutes=rest)
