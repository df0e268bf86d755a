"""The day of a price as spreadsheets write it."""

from __future__ import annotations

import functools
import re
from datetime import date

from binder.kitchen.errors import BinderError
from binder.kitchen.locale import known_locale
from binder.kitchen.wording import _

_YEAR_FIRST = re.compile(r"^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ]0?0:00(?::00)?)?$")
_YEAR_LAST = re.compile(r"^(\d{1,2})([-/.])(\d{1,2})\2(\d{4})$")


class UnreadableDateError(BinderError):
    """Text that is no day, or could be two."""

    def __init__(self, text: str) -> None:
        super().__init__(_("“{text}” is not a date. Write it as 2026-03-14.").format(text=text[:40]))


def parse_date(text: str, locale: str) -> date:
    """The day that `text` means: `2026-03-14`, or with the year last in the locale's own order of day and month.

    With points the day always comes first, as nobody writes it otherwise. Raises UnreadableDateError.
    """
    year_first, year_last = _YEAR_FIRST.match(text), _YEAR_LAST.match(text)
    try:
        if year_first:
            return date(int(year_first[1]), int(year_first[2]), int(year_first[3]))
        if year_last:
            first, second, year = int(year_last[1]), int(year_last[3]), int(year_last[4])
            month_first = year_last[2] != "." and _month_comes_first(locale)
            return date(year, first, second) if month_first else date(year, second, first)
    except ValueError:
        pass
    raise UnreadableDateError(text)


@functools.cache
def _month_comes_first(locale: str) -> bool:
    """Whether the locale's short date (CLDR, by Babel) has the month before the day."""
    from babel.dates import get_date_format

    pattern = get_date_format("short", locale=known_locale(locale)).pattern
    return pattern.casefold().find("m") < pattern.casefold().find("d")
