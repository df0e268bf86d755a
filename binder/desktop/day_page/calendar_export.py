"""The calendar of the days before written to a file that other calendars open."""

from __future__ import annotations

from datetime import UTC, datetime
from typing import TYPE_CHECKING

from binder.desktop.file_doings import file_stem
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Sequence

    from PySide6.QtWidgets import QWidget

    from binder.desktop.day_page.days_before import Calendar
    from binder.desktop.desk import Desk
    from binder.storage.journal import Entry


def export_calendar(desk: Desk, calendar: Calendar, window: QWidget) -> bool:
    """Ask where to, and write it; whether it was written. What goes wrong is said on the message strip."""
    shoot = desk.shoot
    if shoot is None:
        return False
    suggestion = f"{file_stem(shoot.name)}.ics"
    path = desk.dialogs.file_to_make(window, _("Where to keep the calendar"), suggestion, _("Calendars (*.ics)"))
    if path is None:
        return False

    def write() -> None:
        from binder.exchange.calendar_file import calendar_bytes
        from binder.kitchen.whole_file import write_whole

        as_of, revision = _last_changed(desk)
        write_whole(path, calendar_bytes(shoot, calendar.entries, as_of=as_of, revision=revision))

    return desk.attempt(write)


def _last_changed(desk: Desk) -> tuple[datetime, int]:
    """When the binder was last changed, and how often it has been: the end of its journal."""
    journal: Sequence[Entry] = getattr(desk.bridge.document, "history", tuple)()
    last = journal[-1] if journal else None
    return (last.at, last.sequence) if last is not None else (datetime.now(UTC), 0)
