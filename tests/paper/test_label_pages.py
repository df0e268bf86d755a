"""Labels are read back from the printed sheet: every word of a label lies on that label."""

from __future__ import annotations

import pytest

from binder.paper.container_labels import container_labels
from binder.paper.label_grid import label_grid
from binder.paper.print_choices import PrintChoices
from binder.paper.print_set import SheetKind, sheet_bytes
from tests.paper.day_example import day_binder, planned, the_plan
from tests.paper.example import SHOOT, full_binder, hostile_binder
from tests.paper.reader import outside, overlapping, read_pages
from tests.paper.said import words_of, words_of_day

GRIDS = [
    "a4 3x8 70x36 from 0x4.5 step 70x36",
    "a4 2x4 99x67",
    "letter 2x5 101.6x50.8",
    "a5 1x3 120x60",
    "a4 7x13 25x20",
]


def test_a_label_says_what_for_whom_how_much_and_its_allergens_in_words() -> None:
    words = words_of_day(SheetKind.LABELS)
    for label in container_labels(day_binder(), SHOOT, the_plan()):
        assert label.food in words
        assert label.whose in words
        assert label.amount.weight in words
        for allergen in label.allergens:
            assert f"Contains {allergen}" in words or f"and {allergen}" in words or f", {allergen}" in words
    assert "use by" in words
    assert "made" in words


def test_what_the_plan_knows_stands_there_and_the_rest_is_left_to_write() -> None:
    made = [label for label in container_labels(day_binder(), SHOOT, the_plan()) if label.made]
    assert made
    assert " ready " in words_of_day(SheetKind.LABELS)
    without = words_of(full_binder(), SheetKind.LABELS)
    assert "made use by" in without


@pytest.mark.parametrize("measures", GRIDS)
def test_every_word_lies_on_one_label_of_any_grid(measures: str) -> None:
    grid = label_grid(measures)
    choices = PrintChoices(labels=grid, plans=planned().plans)
    corners = [grid.corner(at) for at in range(grid.count)]
    wide, tall = grid.points
    for page in read_pages(sheet_bytes(day_binder(), SHOOT, SheetKind.LABELS, choices=choices)):
        assert not outside(page, 5 * 72 / 25.4 - 1), "where a laser printer does not print"
        assert not overlapping(page)
        for sign in page.signs:
            assert any(
                x <= sign.left and sign.right <= x + wide and top - tall <= sign.bottom and sign.top <= top
                for x, top in corners
            ), sign


def test_labels_that_are_gone_from_the_first_sheet_are_left_out() -> None:
    grid = label_grid(GRIDS[0])
    pages = read_pages(
        sheet_bytes(full_binder(), SHOOT, SheetKind.LABELS, choices=PrintChoices(labels=grid, used_labels=4))
    )
    _x, third_row = grid.corner(6)
    first_on_second_row = [sign for sign in pages[0].signs if sign.bottom > third_row]
    assert first_on_second_row
    assert min(sign.left for sign in first_on_second_row) > grid.corner(4)[0]
    assert max(sign.top for sign in pages[0].signs) < grid.corner(3)[1]


def test_a_hostile_binder_has_labels_too() -> None:
    content = sheet_bytes(hostile_binder(), SHOOT, SheetKind.LABELS)
    assert all(not overlapping(page) for page in read_pages(content)[:3])
