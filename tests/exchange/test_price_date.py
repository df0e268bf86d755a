"""A date of a price list is a day, or is asked for again."""

from __future__ import annotations

from datetime import date

import pytest

from binder.exchange.price_date import AmbiguousDateError, DateReader, UnreadableDateError, parse_date

PI_DAY = date(2026, 3, 14)


@pytest.mark.parametrize(
    ("text", "locale"),
    [
        ("2026-03-14", "en_US"),
        ("2026-3-14", "de_DE"),
        ("2026/03/14", "en_US"),
        ("2026-03-14 00:00:00", "en_US"),
        ("3/14/2026", "en_US"),
        ("14/3/2026", "en_GB"),
        ("14.03.2026", "de_DE"),
        ("14.3.2026", "en_US"),
        ("14-03-2026", "fr_FR"),
        ("3/14/2026", "no such locale"),
        ("2026-03-14T10:00:30Z", "en_US"),
        ("14 March 2026", "de_DE"),
        ("14-Mar-2026", "en_US"),
        ("March 14, 2026", "en_US"),
        ("14. März 2026", "de_DE"),
        ("2026年3月14日", "ja_JP"),
    ],
)
def test_a_day_is_read_in_the_order_of_its_place(text: str, locale: str) -> None:
    assert parse_date(text, locale) == PI_DAY


@pytest.mark.parametrize(
    "text",
    [
        "14/3/26",
        "2026-02-30",
        "14/14/2026",
        "46095",
        "March 14",
        "14 Marsh 2026",
        "20260314",
        "14/3-2026",
        "0000-01-01",
        "२०२६",
    ],
)
def test_what_is_no_day_or_could_be_two_is_asked_for(text: str) -> None:
    with pytest.raises(UnreadableDateError, match=r"is not a date\. Write it as 2026-03-14"):
        parse_date(text, "en_US")


def test_a_list_from_another_country_is_read_in_its_own_order() -> None:
    dates = DateReader("en_US", ["03/04/2026", "14/03/2026"])
    assert dates.read("03/04/2026") == date(2026, 4, 3)
    assert dates.read("14/03/2026") == PI_DAY
    assert DateReader("en_GB", ["03/04/2026", "03/14/2026"]).read("03/04/2026") == date(2026, 3, 4)
    assert DateReader("en_US", ["03/04/2026"]).read("03/04/2026") == date(2026, 3, 4)


def test_a_heading_says_the_order_of_day_and_month() -> None:
    assert DateReader("en_US", ["03/04/2026"], "DD/MM/YYYY").read("03/04/2026") == date(2026, 4, 3)
    assert DateReader("en_GB", ["03/04/2026"], "mm-dd-yyyy").read("03/04/2026") == date(2026, 3, 4)
    assert DateReader("en_US", ["03/04/2026"], "of the market").read("03/04/2026") == date(2026, 3, 4)


def test_a_list_in_both_orders_has_no_day_guessed() -> None:
    dates = DateReader("en_US", ["13/03/2026", "03/13/2026"])
    assert dates.read("13/03/2026") == dates.read("03/13/2026") == date(2026, 3, 13)
    assert dates.read("2026-03-14") == PI_DAY
    assert dates.read("04/04/2026") == date(2026, 4, 4)
    with pytest.raises(AmbiguousDateError, match="“03/04/2026” may be two days"):
        dates.read("03/04/2026")
    with pytest.raises(UnreadableDateError):
        dates.read("soon")
