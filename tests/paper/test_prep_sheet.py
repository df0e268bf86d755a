from __future__ import annotations

import pytest

from binder.figures.prep_calendar import EntryKind, prep_calendar
from binder.paper.print_set import SheetKind
from tests.paper.day_example import day_binder, the_plan
from tests.paper.example import SHOOT, full_binder
from tests.paper.said import words_of, words_of_day


@pytest.mark.parametrize("paper", ["a4", "4x6"])
def test_every_entry_of_the_calendar_is_on_it_with_who_and_where(paper: str) -> None:
    words = words_of_day(SheetKind.PREP, paper)
    entries = prep_calendar(day_binder(), SHOOT, the_plan())
    assert {EntryKind.TRIP} < {entry.kind for entry in entries}
    for entry in entries:
        assert entry.what in words
        assert entry.where in words
        assert all(name in words for name in entry.who)
        assert all(" ".join(detail.split()) in words for detail in entry.details)
    assert "the day before" in words


def test_without_a_plan_it_says_that_work_is_not_on_it() -> None:
    assert "There is no day plan to take work from" in words_of(full_binder(), SheetKind.PREP)
