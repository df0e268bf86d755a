"""Caps: each dish beside its cap, on the basis that is named and chosen here."""

from __future__ import annotations

import pytest

from binder.desktop.money_page.caps_sheet import CapsSheet, worst_dish
from binder.desktop.sheet.cell import Mark, Tone
from binder.desktop.sheet.sheet import NotEditableError, Sight
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.edits.money import set_cap_basis
from binder.kitchen.edits.records import remove
from binder.kitchen.edits.shoots import set_dish
from binder.kitchen.shoot import CapBasis
from tests.desktop.money_page.latest import DAY
from tests.desktop.sheets import after_typing, cell_called, is_even, row_called

SHEET = CapsSheet()


@pytest.fixture
def over(chickpeas: Binder) -> Binder:
    """The fritters over a cap of their own, of $1.34: their cost is $1.3408."""
    return apply(chickpeas, set_dish(chickpeas, chickpeas.dishes["dish_2"], cap=134))


def test_a_cost_is_never_rounded_onto_its_cap(over: Binder) -> None:
    row = row_called(SHEET, Sight(over, DAY), "dishes:dish_2")
    assert [cell.text for cell in row.cells] == [
        "2",
        "Herb fritters",
        "",
        "$1.341",
        "$1.34",
        "$0.001 over",
        ">100%",
    ]
    assert (row.cells[5].mark, row.cells[5].tone) == (Mark.OVER, Tone.STOP)
    assert is_even(SHEET, Sight(over, DAY))


def test_what_is_within_says_how_much_is_to_spare(chickpeas: Binder) -> None:
    cell = cell_called(SHEET, Sight(chickpeas, DAY), "dishes:dish_3", "headroom")
    assert (cell.text, cell.mark) == ("$0.17 to spare", Mark.WITHIN)


def test_the_basis_is_chosen_here_and_named_in_the_head(chickpeas: Binder) -> None:
    after = after_typing(SHEET, Sight(chickpeas, DAY), "basis", "name", "whole")
    assert after.shoots[DAY].cap_basis is CapBasis.WHOLE_PACKS
    titles = [column.title for column in SHEET.columns_for(Sight(after, DAY))]
    assert "a portion: whole packs over portions" in titles
    assert cell_called(SHEET, Sight(after, DAY), "basis", "name").text == "whole packs over portions"


def test_a_cap_is_typed_and_an_empty_one_is_the_shoots(over: Binder) -> None:
    sight = Sight(over, DAY)
    assert after_typing(SHEET, sight, "dishes:dish_2", "cap", "1.50").dishes["dish_2"].cap == 150
    assert after_typing(SHEET, sight, "dishes:dish_2", "cap", "").dishes["dish_2"].cap is None
    with pytest.raises(NotEditableError):
        SHEET.edit(sight, "dishes:dish_2", "cost", "1")


def test_what_is_not_known_leads_to_what_is_missing(chickpeas: Binder) -> None:
    lacking = apply(chickpeas, remove("x", chickpeas, chickpeas.packs["pack_tahini"]))
    cell = cell_called(SHEET, Sight(lacking, DAY), "dishes:dish_1", "headroom")
    assert cell.mark is Mark.UNKNOWN
    assert cell.text == "not known: no price for tahini"
    assert cell.leads_to is not None
    assert cell.leads_to.id == "tahini"


def test_the_dish_that_wants_a_look_first(chickpeas: Binder, over: Binder) -> None:
    assert worst_dish(chickpeas, DAY) == "dish_3"
    assert worst_dish(over, DAY) == "dish_2"
    lacking = apply(chickpeas, remove("x", chickpeas, chickpeas.packs["pack_tahini"]))
    assert worst_dish(lacking, DAY) == "dish_1"
    bare = apply(chickpeas, remove("x", chickpeas, *chickpeas.dishes.values()))
    assert worst_dish(bare, DAY) is None
    assert SHEET.rows(Sight(bare, DAY)) == []


def test_whole_packs_are_dearer_than_their_shares(chickpeas: Binder) -> None:
    whole = apply(chickpeas, set_cap_basis(chickpeas.shoots[DAY], CapBasis.WHOLE_PACKS))
    assert cell_called(SHEET, Sight(whole, DAY), "dishes:dish_1", "headroom").mark is Mark.OVER
