"""Dates and times of day as the binder's locale writes them: the one place for paper, window, command line and figures.

Patterns are those of CLDR; what a locale has no pattern for takes the nearest, and a locale that CLDR does not know is
written as US English, as money is. Texts are kept: a timeline asks for the same few hundreds of times at every paint.
"""

from __future__ import annotations

import functools
import re
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.kitchen.locale import known_locale
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from datetime import date, datetime, time

    from binder.kitchen.binder import Binder


class DateForm(StrEnum):
    """How much of a day is written, by its CLDR skeleton. The month is in words, so 3 December is never March 12."""

    DATE = "yMMMd"
    """`Dec 3, 2026`, `3. Dez. 2026`."""
    WEEKDAY_DATE = "yMMMEd"
    """`Thu, Dec 3, 2026`."""
    WEEKDAY = "MMMEd"
    """`Thu, Dec 3`: for a day that is not a year away."""
    SHORT = "MMMd"
    """`Dec 3`."""
    LONG = "MMMMEEEEd"
    """`Thursday, December 3`: nothing of it shortened."""
    NAME = "E"
    """`Thu`."""


def date_text(binder: Binder, day: date, form: DateForm = DateForm.DATE) -> str:
    """A day, by default with its year and without its weekday: `Dec 3, 2026`, `3. Dez. 2026`."""
    return _written_day(binder.settings.locale, day, form)


def time_text(binder: Binder, of_day: time) -> str:
    """A time of day to the minute: `8:00 AM`, `08:00`. Before AM and PM stands the narrow no-break space of CLDR."""
    return _written_time(binder.settings.locale, of_day.hour, of_day.minute)


def hour_text(binder: Binder, of_day: time) -> str:
    """A time of day on a scale: as `time_text`, but a full hour without minutes where there is AM and PM: `8 AM`."""
    if of_day.minute or not _has_halves(binder.settings.locale):
        return time_text(binder, of_day)
    return _written_hour(binder.settings.locale, of_day.hour)


def span_text(binder: Binder, start: time, end: time) -> str:
    """From a time of day to another, each in full: `9:02 AM–9:05 AM`, `09:02–09:05`; one where they meet."""
    first, last = time_text(binder, start), time_text(binder, end)
    return first if first == last else f"{first}–{last}"


def day_time_text(binder: Binder, moment: datetime) -> str:
    """A moment with its day, for a plan that goes over several: `Mon, Dec 7, 7:15 PM`."""
    day = date_text(binder, moment.date(), DateForm.WEEKDAY)
    return _("{day}, {time}").format(day=day, time=time_text(binder, moment.time()))


def moment_text(binder: Binder, moment: datetime, on: date | None) -> str:
    """A moment by its time of day alone where it is on the day `on`, else with its day: `8:00 PM on Dec 2, 2026`."""
    clock = time_text(binder, moment.time())
    if moment.date() == on:
        return clock
    return _("{time} on {day}").format(time=clock, day=date_text(binder, moment.date()))


@functools.lru_cache(maxsize=10_000)
def _written_day(locale: str, day: date, form: DateForm) -> str:
    from babel.dates import format_date, format_skeleton

    if form is DateForm.LONG:
        return format_date(day, _long_pattern(locale), locale=known_locale(locale))
    return format_skeleton(form.value, day, locale=known_locale(locale))


def _long_pattern(locale: str) -> str:
    """The locale's own pattern of a long day, or its short one with day and month in full.

    To lengthen fields of the nearest pattern is the rule of Unicode Technical Standard 35, part 4 (from memory).
    """
    skeletons = known_locale(locale).datetime_skeletons
    if DateForm.LONG.value in skeletons:
        return str(skeletons[DateForm.LONG.value].pattern)
    nearest = str(skeletons["MMMMEd" if "MMMMEd" in skeletons else DateForm.WEEKDAY.value].pattern)
    return re.sub(r"\bE{1,3}\b|(?<!c)ccc(?!c)|(?<!M)MMM(?!M)|(?<!L)LLL(?!L)", _in_full, nearest)


def _in_full(field: re.Match[str]) -> str:
    return field[0][0] * 4


@functools.lru_cache(maxsize=10_000)
def _written_time(locale: str, hour: int, minute: int) -> str:
    from datetime import time

    from babel.dates import format_time

    return format_time(time(hour, minute), "short", locale=known_locale(locale))


@functools.lru_cache(maxsize=1_000)
def _written_hour(locale: str, hour: int) -> str:
    from datetime import datetime

    from babel.dates import format_skeleton

    return format_skeleton("h", datetime(1, 1, 1, hour), locale=known_locale(locale))  # noqa: DTZ001 - of no zone


@functools.lru_cache(maxsize=100)
def _has_halves(locale: str) -> bool:
    """Whether the clock of a locale goes to 12 twice a day."""
    pattern = str(known_locale(locale).time_formats["short"].pattern)
    return "h" in pattern or "K" in pattern
