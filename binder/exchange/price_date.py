"""The day of a price as spreadsheets write it."""

from __future__ import annotations

import functools
import re
from datetime import date
from typing import TYPE_CHECKING

from binder.kitchen.errors import BinderError
from binder.kitchen.locale import known_locale
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterable

_TIME = r"(?:[T ]\s*\d{1,2}:\d{2}(?::\d{2}(?:[.,]\d+)?)?\s*(?:Z|[+-]\d{2}:?\d{2})?)?"
_YEAR_FIRST = re.compile(rf"^(\d{{4}})(?:[-/.](\d{{1,2}})[-/.](\d{{1,2}})|年(\d{{1,2}})月(\d{{1,2}})日){_TIME}$")
_YEAR_LAST = re.compile(rf"^(\d{{1,2}})([-/.])(\d{{1,2}})\2(\d{{4}}){_TIME}$")
_NAMED = re.compile(
    r"^(?:(?P<day>\d{1,2})(?:st|nd|rd|th)?\.?[\s-]+(?P<month>[^\W\d_]+)|(?P<name>[^\W\d_]+)\.?\s+(?P<of>\d{1,2}))"
    r"[.,]?[\s-]+(?P<year>\d{4})$"
)


class UnreadableDateError(BinderError):
    """Text that is no day, or could be two."""

    def __init__(self, text: str) -> None:
        super().__init__(_("“{text}” is not a date. Write it as 2026-03-14.").format(text=text[:40]))


class AmbiguousDateError(BinderError):
    """A day and a month that may be each other in a list that writes them in both orders."""

    def __init__(self, text: str) -> None:
        says = _("“{text}” may be two days, since the list has days and months in both orders. Write it as 2026-03-14.")
        super().__init__(says.format(text=text[:40]))


def parse_date(text: str, locale: str, *, month_first: bool | None = None) -> date:
    """The day that `text` means: `2026-03-14`, `14 March 2026`, or with the year last in the order of day and month.

    `month_first` is that order (None: the locale's own). With points the day always comes first, as nobody writes it
    otherwise. Raises UnreadableDateError.
    """
    year_first, year_last, named = _YEAR_FIRST.match(text), _YEAR_LAST.match(text), _NAMED.match(text)
    try:
        if year_first:
            return date(int(year_first[1]), int(year_first[2] or year_first[4]), int(year_first[3] or year_first[5]))
        if year_last:
            first, second, year = int(year_last[1]), int(year_last[3]), int(year_last[4])
            order = _month_comes_first(locale) if month_first is None else month_first
            month = year_last[2] != "." and order
            return date(year, first, second) if month else date(year, second, first)
        if named:
            month_name = (named["month"] or named["name"]).casefold()
            return date(int(named["year"]), _months(locale).get(month_name, 0), int(named["day"] or named["of"]))
    except ValueError:
        pass
    raise UnreadableDateError(text)


class DateReader:
    """Reads the dates of one list, in the order of day and month that its heading says or its other dates show.

    A list from another country has days such as `13/03/2026` among others that would be read the wrong way round.
    """

    def __init__(self, locale: str, texts: Iterable[str] = (), heading: str = "") -> None:
        self._locale, self._known = locale, dict[str, date]()
        self._month_first = _order_in(heading)
        self._both = False
        if self._month_first is None:
            orders = {order for order in map(_order_shown, set(texts)) if order is not None}
            self._both = len(orders) > 1
            self._month_first = orders.pop() if len(orders) == 1 else None

    def read(self, text: str) -> date:
        """The day. Raises UnreadableDateError or AmbiguousDateError."""
        known = self._known.get(text)
        if known is None:
            known = self._known[text] = self._read(text)
        return known

    def _read(self, text: str) -> date:
        if not self._both:
            return parse_date(text, self._locale, month_first=self._month_first)
        one, other = (self._in_order(text, month_first=order) for order in (True, False))
        if one and other and one != other:
            raise AmbiguousDateError(text)
        found = one or other
        if found is None:
            raise UnreadableDateError(text)
        return found

    def _in_order(self, text: str, *, month_first: bool) -> date | None:
        try:
            return parse_date(text, self._locale, month_first=month_first)
        except UnreadableDateError:
            return None


def _order_in(heading: str) -> bool | None:
    """Whether the month comes first in `MM/DD/YYYY`; None where a heading says nothing of it."""
    if not re.fullmatch(r"[dmyDMYjJtT./\s-]{4,}", heading):
        return None
    day, month = (
        min((heading.upper().find(sign) for sign in signs if sign in heading.upper()), default=-1)
        for signs in ("DTJ", "M")
    )
    return None if day < 0 or month < 0 else month < day


def _order_shown(text: str) -> bool | None:
    """Whether the month comes first in a date that can be read in one order only; None where it tells nothing."""
    found = _YEAR_LAST.match(text)
    if found is None or found[2] == ".":
        return None
    first, second = int(found[1]) > _MONTHS, int(found[3]) > _MONTHS
    return None if first == second else second


_MONTHS = 12


@functools.cache
def _months(locale: str) -> dict[str, int]:
    """Names of months, whole and short, in the locale's language and in English (CLDR, by Babel)."""
    from babel.dates import get_month_names

    return {
        name.casefold().rstrip("."): number
        for where in (known_locale(locale), known_locale("en_US"))
        for width in ("wide", "abbreviated")
        for context in ("format", "stand-alone")
        for number, name in get_month_names(width, context, where).items()
    }


@functools.cache
def _month_comes_first(locale: str) -> bool:
    """Whether the locale's short date (CLDR, by Babel) has the month before the day."""
    from babel.dates import get_date_format

    pattern = get_date_format("short", locale=known_locale(locale)).pattern
    return pattern.casefold().find("m") < pattern.casefold().find("d")
