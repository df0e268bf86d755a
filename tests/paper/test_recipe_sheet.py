from __future__ import annotations

from dataclasses import replace

import pytest

from binder.figures.portion_text import set_out
from binder.kitchen.edits.recipes import line_name
from binder.kitchen.recipe import Recipe
from binder.paper.print_set import SheetKind, sheet_bytes
from tests.paper.example import SHOOT, full_binder
from tests.paper.reader import read_pages
from tests.paper.said import words_of


@pytest.mark.parametrize("paper", ["a4", "4x6"])
def test_a_recipe_has_every_line_for_one_batch_and_every_step(paper: str) -> None:
    words, binder = words_of(full_binder(), SheetKind.RECIPES, paper), full_binder()
    for step in binder.steps.values():
        assert step.title in words
        assert step.text in words
        for line in binder.lines.where("step", step.id):
            assert line_name(binder, line) in words
            amount = set_out(binder, line, 1.0)
            assert amount.weight in words
            assert amount.measure in words


def test_each_begins_on_a_page_of_its_own_dishes_first() -> None:
    pages = [page.words for page in read_pages(sheet_bytes(full_binder(), SHOOT, SheetKind.RECIPES, "a4"))]
    begins = [words.split(" What goes in")[0] for words in pages]
    assert begins[0].startswith("Chickpea and chicken stew with charred chilli serves 4 ·")
    assert begins[1].startswith("Warm chickpea salad serves 2 ·")
    assert begins[2].startswith("Charred chilli paste serves 8 ·")


def test_a_recipe_that_says_nothing_of_portions_serves_nobody_in_print() -> None:
    salad: Recipe = full_binder().recipes["salad"]
    words = words_of(full_binder(replace(salad, portions=None)), SheetKind.RECIPES)
    assert "Warm chickpea salad 6 min of work" in words


@pytest.mark.parametrize("paper", ["a6", "4x6", "a5"])
def test_a_heading_never_stands_alone_at_the_foot_of_a_page_nor_allergens_on_one(paper: str) -> None:
    for page in read_pages(sheet_bytes(full_binder(), SHOOT, SheetKind.RECIPES, paper)):
        body = page.words.split(" prices up to ")[0]
        assert not body.endswith(("Method", "What goes in"))
        assert not body.replace("Recipes · ", "").startswith("Contains")
