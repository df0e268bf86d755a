"""Station cards, read back from the PDF: every figure that the card of a dish has stands on its pages."""

from __future__ import annotations

from dataclasses import replace

import pytest

from binder.figures.card import StationCard, station_cards
from binder.figures.duration_text import duration_text
from binder.figures.temperature_text import temperature_text
from binder.kitchen.binder import Binder
from binder.kitchen.recipe import Recipe
from binder.kitchen.reference import deference
from binder.kitchen.shoot import Dish
from binder.paper.card_step import StepOf, step_block
from binder.paper.card_type import card_type
from binder.paper.legibility import ARMS_LENGTH, LEAST_ARC, PREFERRED_ARC, seen_under
from binder.paper.paper_size import PAPERS, POINTS_PER_MILLIMETRE
from binder.paper.print_set import SheetKind, sheet_bytes
from tests.paper.example import SHOOT, full_binder, metric_binder
from tests.paper.reader import ReadPage, all_words, read_pages

MILLIMETRE = 1 / POINTS_PER_MILLIMETRE


def _pages(binder: Binder, paper: str = "a5") -> list[ReadPage]:
    return read_pages(sheet_bytes(binder, SHOOT, SheetKind.CARDS, paper))


def _words(binder: Binder, paper: str = "a5") -> str:
    return all_words(sheet_bytes(binder, SHOOT, SheetKind.CARDS, paper))


def _expected(binder: Binder, card: StationCard) -> set[str]:
    """Everything that a card has to say, as the figures say it."""
    said = set(card.name.split())
    for found in card.steps:
        said |= {*found.step.title.split(), *found.step.text.split()}
        said |= {word for equipment in found.step.equipment for word in equipment.split()}
        said |= {
            duration_text(minutes) for minutes in (found.step.hands_on_minutes, found.step.waiting_minutes) if minutes
        }
        said |= {temperature_text(binder, found.step.celsius)} if found.step.celsius is not None else set()
        for row in found.containers:
            said |= {*row.food.split(), *row.preparation.split()}
            said |= {amount.amount.weight for amount in row.amounts} | {amount.amount.measure for amount in row.amounts}
        said |= {caution.title for caution in found.cautions} | {w for c in found.cautions for w in c.text.split()}
    said |= {build.waits.split()[0] for build in card.builds if build.waits}
    return {text for text in said if text}


@pytest.mark.parametrize("paper", list(PAPERS))
@pytest.mark.parametrize("binder", [full_binder(), metric_binder()], ids=["us", "metric"])
def test_every_figure_of_every_card_is_on_paper(binder: Binder, paper: str) -> None:
    words = _words(binder, paper)
    for card in station_cards(binder, SHOOT):
        assert {text for text in _expected(binder, card) if text not in words} == set()


def test_each_dish_begins_a_card_in_running_order_and_what_is_made_ahead_follows() -> None:
    starts = [page.words.split()[0] for page in _pages(full_binder(), "letter") if "continued" not in page.words[:80]]
    assert starts == ["1", "2", "A"]


def test_a_dish_over_several_cards_says_which_of_how_many_and_that_it_goes_on() -> None:
    first, second, *_others = _pages(full_binder(), "a6")
    assert "1 of" in first.words
    assert first.words.count("continued ·") == 1
    assert "continued" in second.words
    assert "2 of" in second.words


def test_a_step_stands_whole_on_one_card_with_what_is_set_out_for_it() -> None:
    pages = _pages(full_binder(), "half-letter")
    (simmer,) = [page.words for page in pages if "Simmer until it coats a spoon." in page.words]
    for said in ("Simmer", "cooked", "3 cups", "chickpeas, cooked", "40 g", "Charred chilli paste", "165 °F", "40 min"):
        assert said in simmer


def test_the_caution_stands_on_the_card_of_its_step_with_its_source_and_whose_word_goes_first() -> None:
    (poultry,) = [page.words for page in _pages(full_binder()) if "Brown the chicken" in page.words]
    for said in ("Raw poultry", "Do not wash it", "USDA FSIS", deference()):
        assert said in poultry


def test_every_card_names_the_allergens_or_says_that_none_is_named() -> None:
    pages = _pages(full_binder())
    for page in pages:
        assert (
            "Contains milk (whole-milk yogurt)" in page.words
            or "Contains sesame (tahini)" in page.words
            or ("None of the nine allergens of US law is named" in page.words)
        )


def test_builds_say_how_far_they_go_and_where_they_wait() -> None:
    words = _words(full_binder(), "a4")
    assert "hero · 4 portions · finished" in words
    assert "swap-out · 4 portions · up to and with step 3 · waits: low oven, lid on" in words
    assert "swap-out (4 portions) stops here" in words


def test_builds_that_would_need_a_card_of_their_own_stand_under_the_name() -> None:
    here = _pages(full_binder(), "a5")
    for said in ("hero finished", "swap-out up to and with step 3", "swap-out up to and with step 1"):
        assert said in here[0].words
    assert "waits: low oven, lid on" in here[0].words + here[1].words
    assert all("hands on" in page.words for page in here), "no card without anything to do"


def test_a_recipe_without_portions_says_that_amounts_are_for_one_batch() -> None:
    words = _words(full_binder(Recipe(id="salad", name="Warm chickpea salad")))
    assert "Amounts are for one batch. Warm chickpea salad does not say how many portions it yields" in words


def test_markup_in_a_name_is_printed_as_it_was_typed() -> None:
    name = "<b>Stew</b> & <img src='/etc/hostname'/> &#x41; <para>"
    binder = full_binder()
    dish: Dish = binder.dishes["dish-stew"]
    words = _words(full_binder(replace(dish, name=name)))
    assert name in words


def test_a_shoot_without_dishes_prints_one_page_that_says_so() -> None:
    binder = full_binder()
    binder = binder.with_tables(
        {
            name: binder.table(name).with_changes((key, None) for key in binder.table(name))
            for name in ("builds", "dishes")
        }
    )
    (page,) = _pages(binder)
    assert "The shoot has no dishes yet" in page.words


def test_the_numbers_a_cook_uses_most_are_measured_to_be_as_large_as_they_should_be() -> None:
    figure = card_type().figure.size
    digits = [
        sign
        for page in _pages(full_binder())
        for sign in page.signs
        if sign.text in "12457" and abs(sign.size - figure) < 0.05
    ]
    assert len(digits) > 30
    for digit in digits:
        assert seen_under((digit.top - digit.bottom) * MILLIMETRE, ARMS_LENGTH) >= PREFERRED_ARC


def test_nothing_but_sources_and_the_foot_is_measured_to_be_smaller_than_the_least() -> None:
    quiet = card_type().quiet.size
    for page in _pages(full_binder()):
        capitals = [sign for sign in page.signs if sign.text in "BDEFHIKLMNPRTXZ" and abs(sign.size - quiet) > 0.05]
        assert capitals
        for capital in capitals:
            assert seen_under((capital.top - capital.bottom) * MILLIMETRE, ARMS_LENGTH) >= LEAST_ARC - 0.01
        assert {round(sign.size, 1) for sign in page.signs if sign.size < card_type().plain.size - 0.05} <= {quiet}


def test_where_a_card_would_else_be_without_a_step_steps_stand_closer_and_lose_no_words() -> None:
    binder = full_binder()
    (card, *_others) = station_cards(binder, SHOOT)
    for found in card.steps:
        usual, close = (
            step_block(binder, found, None, card_type(), StepOf("1"), close=closer) for closer in (False, True)
        )
        assert close.height(300) < usual.height(300)
        assert close.blocks[:-1] == usual.blocks[:-1]
