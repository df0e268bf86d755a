from __future__ import annotations

from binder.paper.print_choices import PrintChoices
from binder.paper.print_set import SheetKind, sheet_bytes
from tests.paper.day_example import day_binder, planned, the_plan
from tests.paper.example import SHOOT
from tests.paper.reader import read_pages
from tests.paper.said import words_of


def test_each_has_pages_of_their_own_with_all_that_the_plan_asks_of_them() -> None:
    pages = read_pages(sheet_bytes(day_binder(), SHOOT, SheetKind.PEOPLE, "a4", choices=planned()))
    for person in day_binder().people.where("shoot", SHOOT):
        own = [page.words for page in pages if person.name in page.words]
        assert own
        for one in the_plan().activities:
            if person.id in one.people:
                start = one.start.strftime("%I:%M %p").lstrip("0")
                assert any(start in words and one.activity.name in words for words in own)
        others = [other.name for other in day_binder().people.values() if other.id != person.id]
        assert not any(name in words for words in own for name in others)


def test_without_a_plan_hours_and_skills_stand_there_and_that_there_are_no_times() -> None:
    words = words_of(day_binder(), SheetKind.PEOPLE, choices=PrintChoices())
    assert "Can do: knife and on camera." in words
    assert "there from 7:00 AM, until 5:00 PM" in words
    assert "There is no day plan" in words
