from __future__ import annotations

from binder.figures.mise import mise_list
from binder.paper.print_set import SheetKind
from tests.paper.day_example import day_binder, the_plan
from tests.paper.example import SHOOT, full_binder
from tests.paper.said import words_of, words_of_day


def test_every_line_of_mise_is_on_it_with_its_amount() -> None:
    words = words_of_day(SheetKind.MISE_TIMES)
    for item in mise_list(day_binder(), SHOOT):
        assert item.food in words
        for build in item.builds:
            assert build.amount.weight in words


def test_times_are_those_of_the_plan() -> None:
    words = words_of_day(SheetKind.MISE_TIMES)
    starts = {
        one.start for one in the_plan().activities if day_binder().lines.where("step", one.activity.step or "none")
    }
    assert starts
    for start in starts:
        assert start.strftime("%I:%M %p").lstrip("0") in words


def test_what_is_set_out_for_a_build_that_another_takes_the_place_of_has_the_time_of_that_one() -> None:
    assert "Without a time in the plan" not in words_of_day(SheetKind.MISE_TIMES)


def test_without_a_plan_it_says_so_and_keeps_the_order_of_the_dishes() -> None:
    words = words_of(full_binder(), SheetKind.MISE_TIMES)
    assert "There is no day plan to take times from" in words
    assert "In the order of the dishes" in words
