"""No time of day is wider than the room that is kept for any."""

from __future__ import annotations

from datetime import time

import pytest
from PySide6.QtGui import QFont, QFontMetricsF
from pytestqt.qtbot import QtBot

from binder.desktop.words.clock_room import widest_hour, widest_time
from binder.figures.date_text import hour_text, time_text
from binder.kitchen.binder import binder_of
from binder.kitchen.settings import SETTINGS_ID, Settings


@pytest.mark.parametrize("locale", ["en_US", "de_DE", "ja_JP"])
def test_every_minute_has_room(locale: str, qtbot: QtBot) -> None:
    binder, metrics = binder_of([Settings(id=SETTINGS_ID, name="b", locale=locale)]), QFontMetricsF(QFont())
    kept = widest_time(binder, metrics)
    for minute in range(24 * 60):
        assert metrics.horizontalAdvance(time_text(binder, time(minute // 60, minute % 60))) <= kept + 1
    for hour in range(24):
        assert metrics.horizontalAdvance(hour_text(binder, time(hour))) <= widest_hour(binder, metrics)
