"""The mise list on screen."""

from __future__ import annotations

import pytest

from binder.desktop.mise_sheet import MiseSheet
from binder.desktop.sheet.sheet import NotEditableError, Sight
from binder.figures.mise import mise_list
from binder.kitchen.binder import Binder
from tests.desktop.sheets import after_typing, is_even

MISE = MiseSheet()


@pytest.fixture
def day(chickpeas: Binder) -> Sight:
    return Sight(chickpeas, "day")


def test_every_item_stands_at_its_station(day: Sight) -> None:
    rows = MISE.rows(day)
    assert len([row for row in rows if row.key.startswith("mise:")]) == len(mise_list(day.binder, "day"))
    assert [row.cells[0].text for row in rows if row.key.startswith("station:")] == [
        "cold prep",
        "plating",
        "stove",
        "oven",
        "fridge",
    ]
    assert is_even(MISE, day)


def test_a_dish_is_named_once_at_each_station(day: Sight) -> None:
    named = [row.cells[0].text for row in MISE.rows(day) if row.key.startswith("mise:") and row.cells[0].text]
    assert named[:2] == ["1 Silky hummus with lemon", "2 Herb fritters"]


def test_equal_builds_are_counted_and_others_named(day: Sight) -> None:
    shown = {row.cells[1].text: row.cells[3].text for row in reversed(MISE.rows(day)) if row.key.startswith("mise:")}
    assert shown["chickpeas, soaked"] == "hero 300 g, swap-out 300 g, spare 150 g"
    assert shown["chickpeas, cooked"] == "2 × 400 g"
    assert shown["flat-leaf parsley"] in {"to taste", "hero 60 g, swap-out 60 g, spare 30 g"}


def test_a_preparation_is_edited_where_it_is_read(day: Sight) -> None:
    row = next(row for row in MISE.rows(day) if row.key.startswith("mise:"))
    assert row.place is not None
    binder = after_typing(MISE, day, row.key, "preparation", "warm")
    assert binder.lines[row.place.id].preparation == "warm"
    with pytest.raises(NotEditableError):
        MISE.edit(day, row.key, "weight", "3")
