from __future__ import annotations

from datetime import date, datetime, time

import pytest

from binder.figures.date_text import DateForm, date_text, day_time_text, hour_text, moment_text, span_text, time_text
from binder.kitchen.binder import Binder
from binder.kitchen.settings import SETTINGS_ID, Settings
from tests.kitchen_binder import small_binder


@pytest.mark.parametrize(
    ("locale", "shown"),
    [
        ("en_US", "Dec 3, 2026"),
        ("en_GB", "3 Dec 2026"),
        ("fr_FR", "3 déc. 2026"),
        ("de_DE", "3. Dez. 2026"),
        ("xx_none", "Dec 3, 2026"),
    ],
)
def test_a_day_has_its_month_in_words(locale: str, shown: str) -> None:
    binder = small_binder(Settings(id=SETTINGS_ID, name="Bean day", locale=locale))
    assert date_text(binder, date(2026, 12, 3)) == shown


def test_a_time_of_day_is_as_the_locale_has_it() -> None:
    binder = small_binder(Settings(id=SETTINGS_ID, name="Bean day", locale="de_DE"))
    assert time_text(binder, time(8, 5)) == "08:05"
    assert " ".join(time_text(small_binder(), time(8, 5)).split()) == "8:05 AM"


def test_a_moment_on_another_day_says_which() -> None:
    binder = small_binder(Settings(id=SETTINGS_ID, name="Bean day", locale="en_GB"))
    assert moment_text(binder, datetime(2026, 12, 3, 15, 40), date(2026, 12, 3)) == "15:40"  # noqa: DTZ001
    assert moment_text(binder, datetime(2026, 12, 4, 0, 40), date(2026, 12, 3)) == "00:40 on 4 Dec 2026"  # noqa: DTZ001


@pytest.mark.parametrize(
    ("locale", "form", "shown"),
    [
        ("en_US", DateForm.WEEKDAY_DATE, "Thu, Dec 3, 2026"),
        ("en_US", DateForm.WEEKDAY, "Thu, Dec 3"),
        ("en_US", DateForm.SHORT, "Dec 3"),
        ("en_US", DateForm.LONG, "Thursday, December 3"),
        ("en_US", DateForm.NAME, "Thu"),
        ("de_DE", DateForm.WEEKDAY, "Do., 3. Dez."),
        ("de_DE", DateForm.LONG, "Donnerstag, 3. Dezember"),
        ("en_GB", DateForm.LONG, "Thursday 3 December"),
        ("fr_FR", DateForm.LONG, "jeudi 3 décembre"),
        ("fi_FI", DateForm.LONG, "torstai 3. joulukuuta"),
        ("ja_JP", DateForm.LONG, "12月3日(木曜日)"),
        ("xx_none", DateForm.WEEKDAY, "Thu, Dec 3"),
    ],
)
def test_a_day_is_written_with_as_much_as_is_asked(locale: str, form: DateForm, shown: str) -> None:
    assert date_text(in_locale(locale), date(2026, 12, 3), form) == shown


def test_a_full_hour_is_short_only_where_there_is_am_and_pm() -> None:
    assert plain(hour_text(in_locale("en_US"), time(16))) == "4 PM"
    assert plain(hour_text(in_locale("en_US"), time(16, 15))) == "4:15 PM"
    assert plain(hour_text(in_locale("de_DE"), time(16))) == "16:00"


def test_a_span_names_both_ends_and_a_moment_once() -> None:
    assert plain(span_text(in_locale("en_US"), time(11, 58), time(12, 5))) == "11:58 AM–12:05 PM"
    assert span_text(in_locale("de_DE"), time(9, 2), time(9, 5)) == "09:02–09:05"
    assert span_text(in_locale("de_DE"), time(9, 2, 10), time(9, 2, 40)) == "09:02"


def test_a_moment_can_have_its_day_before_it() -> None:
    moment = datetime(2026, 12, 7, 19, 15)  # noqa: DTZ001
    assert plain(day_time_text(in_locale("en_US"), moment)) == "Mon, Dec 7, 7:15 PM"
    assert day_time_text(in_locale("en_GB"), moment) == "Mon 7 Dec, 19:15"


def in_locale(locale: str) -> Binder:
    return small_binder(Settings(id=SETTINGS_ID, name="Bean day", locale=locale))


def plain(text: str) -> str:
    """With the spaces of a keyboard."""
    return " ".join(text.split())
