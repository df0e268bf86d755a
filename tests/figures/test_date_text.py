from __future__ import annotations

from datetime import date, datetime, time

import pytest

from binder.figures.date_text import date_text, moment_text, time_text
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
