"""Dates and times of day as the binder's locale writes them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.kitchen.wording import _

if TYPE_CHECKING:
    from datetime import date, datetime, time

    from binder.kitchen.binder import Binder


def date_text(binder: Binder, day: date) -> str:
    """A day with its month in words, so that 3 December is never March 12: `Dec 3, 2026`, `3. Dez. 2026`."""
    from babel.dates import format_skeleton

    return format_skeleton("yMMMd", day, locale=_locale(binder))


def time_text(binder: Binder, of_day: time) -> str:
    """A time of day to the minute: `8:00 AM`, `08:00`."""
    from babel.dates import format_time

    return format_time(of_day, "short", locale=_locale(binder))


def moment_text(binder: Binder, moment: datetime, on: date | None) -> str:
    """A moment by its time of day alone where it is on the day `on`, else with its day: `8:00 PM on Dec 2, 2026`."""
    clock = time_text(binder, moment.time())
    if moment.date() == on:
        return clock
    return _("{time} on {day}").format(time=clock, day=date_text(binder, moment.date()))


def _locale(binder: Binder) -> str:
    """The binder's locale where CLDR knows it, else US English, as money has it."""
    from babel.core import Locale, UnknownLocaleError

    try:
        return str(Locale.parse(binder.settings.locale))
    except (UnknownLocaleError, ValueError):
        return "en_US"
