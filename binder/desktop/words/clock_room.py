"""How wide a time of day may come to be in a font, so that room for any of them can be kept."""

from __future__ import annotations

from datetime import time
from typing import TYPE_CHECKING

from binder.figures.date_text import hour_text, time_text

if TYPE_CHECKING:
    from PySide6.QtGui import QFontMetricsF

    from binder.kitchen.binder import Binder

_HOURS = range(24)
_MINUTES = range(0, 60, 11)
"""00, 11, 22 … 55: each digit that can stand there, twice."""


def widest_time(binder: Binder, metrics: QFontMetricsF) -> float:
    """The width in pixels of the widest time of day as the binder's locale writes it."""
    times = (time(hour, minute) for hour in _HOURS for minute in _MINUTES)
    return max(metrics.horizontalAdvance(time_text(binder, at)) for at in times)


def widest_hour(binder: Binder, metrics: QFontMetricsF) -> float:
    """The width in pixels of the widest full hour as a scale shows it: `12 PM`, `22:00`."""
    return max(metrics.horizontalAdvance(hour_text(binder, time(hour))) for hour in _HOURS)
