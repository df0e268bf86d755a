"""A date of a price list is a day, or is asked for again."""

from __future__ import annotations

from datetime import date

import pytest

from binder.exchange.price_date import UnreadableDateError, parse_date

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
    ],
)
def test_a_day_is_read_in_the_order_of_its_place(text: str, locale: str) -> None:
    assert parse_date(text, locale) == PI_DAY


@pytest.mark.parametrize(
    "text",
    ["14/3/26", "2026-02-30", "14/14/2026", "46095", "March 14", "2026-03-14T10:00", "14/3-2026", "0000-01-01", "२०२६"],
)
def test_what_is_no_day_or_could_be_two_is_asked_for(text: str) -> None:
    with pytest.raises(UnreadableDateError, match=r"is not a date\. Write it as 2026-03-14"):
        parse_date(text, "en_US")
