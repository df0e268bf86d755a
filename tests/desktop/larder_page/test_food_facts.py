"""The facts of a food."""

from __future__ import annotations

import pytest

from binder.desktop.larder_page.food_facts import FoodFacts, cell_of_fact
from binder.desktop.sheet.sheet import Sight
from binder.kitchen.binder import Binder
from binder.kitchen.errors import BinderError
from binder.kitchen.food import Food, Keeping, Section
from binder.kitchen.record import fields_of
from tests.desktop.sheets import after_typing, cell_called, is_even

FACTS = FoodFacts()


@pytest.fixture
def onion(chickpeas: Binder) -> Sight:
    return Sight(chickpeas, "day", "foods:onion")


@pytest.mark.parametrize(
    ("fact", "text", "value"),
    [
        ("section", "frozen", Section.FROZEN),
        ("keeping", "cool", Keeping.COOL),
        ("keeps_days", "30 days", 30),
        ("keeps_days", "", None),
        ("order_days", "3 days", 3),
        ("form_of", "Carrot", "carrot"),
        ("form_of", "", None),
        ("good_from_days", "2", 2),
        ("doneness", "fish", "fish"),
        ("free", "yes", True),
        ("temperature_control", "yes", True),
        ("allergens", "wheat, milk", ("wheat", "milk")),
        ("allergens", "", ()),
        ("density", "0.7 g/ml", 0.7),
        ("density", "", None),
        ("trim_yield", "85 %", 0.85),
        ("trim_yield", "0.85", 0.85),
        ("staple", "y", True),
        ("other_names", "brown onion, yellow onion", ("brown onion", "yellow onion")),
        ("notes", "the strong ones", "the strong ones"),
    ],
)
def test_typing_edits_the_food(onion: Sight, fact: str, text: str, value: object) -> None:
    assert getattr(after_typing(FACTS, onion, fact, "value", text).foods["onion"], fact) == value


def test_where_a_fact_comes_from_is_edited_too(onion: Sight) -> None:
    assert (
        after_typing(FACTS, onion, "trim_yield", "source", "weighed by us").foods["onion"].yield_source
        == "weighed by us"
    )


@pytest.mark.parametrize(
    ("fact", "text"),
    [
        ("trim_yield", "0"),
        ("trim_yield", "120"),
        ("allergens", "dragons"),
        ("density", "-1"),
        ("order_days", "2.5"),
        ("form_of", "onion"),
        ("form_of", "moonberry"),
    ],
)
def test_what_cannot_be_is_refused(onion: Sight, fact: str, text: str) -> None:
    with pytest.raises(BinderError):
        FACTS.edit(onion, fact, "value", text)


def test_what_is_shown_for_editing_is_understood_when_nothing_is_changed(chickpeas: Binder) -> None:
    for food in chickpeas.foods:
        sight = Sight(chickpeas, "day", f"foods:{food}")
        for row in FACTS.rows(sight):
            edit = row.cells[1].edit
            assert edit is not None
            assert FACTS.edit(sight, row.key, "value", edit).empty, (food, row.key)


def test_a_food_of_the_shipped_larder_is_only_looked_at(chickpeas: Binder) -> None:
    sight = Sight(chickpeas, "day", "shipped:lentils_brown_dried")
    rows = FACTS.rows(sight) or FACTS.rows(Sight(chickpeas, "day", "shipped:tahini"))
    assert rows
    assert all(cell.edit is None for row in rows for cell in row.cells)
    assert is_even(FACTS, sight)


def test_a_yield_shows_its_percent(onion: Sight) -> None:
    cell = cell_called(FACTS, onion, "trim_yield", "value")
    assert (cell.text, cell.unit) == ("90", "%")


def test_a_form_is_never_made_from_itself(chickpeas: Binder) -> None:
    sight = Sight(chickpeas, "day", "foods:chickpeas_dried")
    with pytest.raises(BinderError, match="none that is made from this one"):
        FACTS.edit(sight, "form_of", "value", "chickpeas, cooked")


def test_what_only_a_form_has_is_shown_for_a_form(chickpeas: Binder) -> None:
    def facts(food: str) -> set[str]:
        return {row.key for row in FACTS.rows(Sight(chickpeas, "day", f"foods:{food}"))}

    assert facts("chickpeas_cooked") - facts("onion") == {"good_from_days"}


def test_every_fact_of_a_food_has_a_cell(chickpeas: Binder) -> None:
    sight = Sight(chickpeas, "day", "foods:chickpeas_cooked")
    for field in {field.name for field in fields_of(Food)} - {"id", "name"}:
        at = cell_of_fact(field)
        assert cell_called(FACTS, sight, at.row, at.column).edit is not None, field
