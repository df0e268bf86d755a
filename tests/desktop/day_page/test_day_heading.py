"""The heading of a day says how far off the shoot is."""

from __future__ import annotations

from datetime import date

import pytest

from binder.desktop.day_page.day_heading import day_heading


@pytest.mark.parametrize(
    ("before", "says"),
    [(2, "Thursday, 2 days before"), (1, "Thursday, 1 day before"), (0, "Thursday"), (-1, "Thursday")],
)
def test_a_day_is_called_by_its_name_and_how_long_before_it_is(before: int, says: str) -> None:
    row = day_heading(date(2026, 12, 3), "Thursday", before=before, columns=4, first=False)
    assert row.cells[0].text == says
    assert len(row.cells) == 4
    assert row.key == "day:2026-12-03"


def test_the_first_day_stands_at_the_top() -> None:
    first, other = (day_heading(date(2026, 12, 3), "Thursday", before=0, columns=4, first=one) for one in (True, False))
    assert first.gap == 0 < other.gap
