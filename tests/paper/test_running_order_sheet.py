from __future__ import annotations

from binder.figures.day_activities import FILMED
from binder.kitchen.edits.shoots import dish_name
from binder.paper.print_set import SheetKind
from tests.paper.day_example import day_binder, the_plan
from tests.paper.example import SHOOT, full_binder
from tests.paper.said import words_of, words_of_day


def _clock(moment: object) -> str:
    return moment.strftime("%I:%M %p").lstrip("0")  # type: ignore[attr-defined, no-any-return]


def test_every_dish_stands_with_the_time_that_the_camera_is_on_it() -> None:
    words = words_of_day(SheetKind.RUNNING_ORDER)
    for dish in day_binder().dishes.where("shoot", SHOOT):
        seen = [one for one in the_plan().activities if one.activity.dish == dish.id and one.activity.kind in FILMED]
        begins, ends = min(one.start for one in seen), max(one.end for one in seen)
        assert f"{_clock(begins)} to {_clock(ends)} {dish.position + 1} {dish_name(day_binder(), dish)}" in words


def test_call_lunch_and_wrap_stand_in_it_in_their_order() -> None:
    words = words_of_day(SheetKind.RUNNING_ORDER)
    assert words.index("8:00 AM Call") < words.index("1 Chickpea") < words.index(f"{_clock(the_plan().wrap)} Wrap")
    assert "12:30 PM to 1:15 PM Lunch work stops" in words


def test_without_a_plan_it_is_the_order_and_says_that_there_are_no_times() -> None:
    words = words_of(full_binder(), SheetKind.RUNNING_ORDER)
    assert "There is no day plan to take times from" in words
    assert words.index("1 Chickpea and chicken stew") < words.index("2 Warm chickpea salad")
