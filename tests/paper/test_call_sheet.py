from __future__ import annotations

import pytest

from binder.figures.safety import step_cautions
from binder.kitchen.reference import deference
from binder.paper.print_set import SheetKind
from tests.paper.day_example import day_binder, the_plan
from tests.paper.example import SHOOT, full_binder
from tests.paper.said import words_of, words_of_day

PAPERS = pytest.mark.parametrize("paper", ["a4", "4x6"])


@PAPERS
def test_everyone_is_on_it_with_their_hours(paper: str) -> None:
    words = words_of_day(SheetKind.CALL, paper)
    for person in day_binder().people.where("shoot", SHOOT):
        assert person.name in words
        assert person.role in words
    assert "Bo Ravn" in words
    for hours in ("call 8:00 AM", "7:00 AM", "5:00 PM", "6:00 PM"):
        assert hours in words


@PAPERS
def test_what_only_those_on_the_spot_know_is_left_to_fill_in(paper: str) -> None:
    words = words_of_day(SheetKind.CALL, paper)
    for label in ("Address", "Nearest emergency care", "Emergency number", "First-aid box", "Food-safety lead"):
        assert label in words


def test_hazards_and_allergens_of_the_day_are_told_with_their_sources() -> None:
    words = words_of_day(SheetKind.CALL)
    binder = day_binder()
    for dish in binder.dishes.where("shoot", SHOOT):
        for step in binder.steps.where("recipe", dish.recipe):
            for caution in step_cautions(step):
                assert caution.title in words
                assert caution.source in words
    assert deference() in words
    assert "milk (dish 1)" in words
    assert "sesame (dish 2)" in words


def test_when_the_camera_is_on_what_and_what_happens_at_a_fixed_time() -> None:
    words = words_of_day(SheetKind.CALL)
    assert "12:30 PM 45 min Lunch" in words
    assert "Warm chickpea salad on camera" in words
    assert the_plan().wrap.strftime("%I:%M %p").lstrip("0") in words


def test_without_people_there_are_lines_to_write_them_on() -> None:
    assert "name does from until telephone" in words_of(full_binder(), SheetKind.CALL).replace("Who", "name")
