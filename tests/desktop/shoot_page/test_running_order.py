"""The running order: what each strip says, and what typing, removing and moving there do."""

from __future__ import annotations

import pytest

from binder.desktop.pictures.cost_bar import CostBar
from binder.desktop.pictures.pans import Pan, Pans
from binder.desktop.sheet.cell import Mark, Tone
from binder.desktop.sheet.sheet import CellName, Sight
from binder.desktop.shoot_page.running_order import ADD_DISH, RunningOrder
from binder.figures.missing import Place
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.edits.records import remove
from binder.kitchen.edits.shoots import set_dish
from binder.kitchen.errors import BinderError
from tests.desktop.sheets import after_typing, cell_called, is_even

ORDER = RunningOrder()


@pytest.fixture
def day(chickpeas: Binder) -> Sight:
    return Sight(chickpeas, "day")


def order_of(binder: Binder) -> list[str]:
    return [dish.id for dish in binder.dishes.where("shoot", "day")]


def test_there_is_a_strip_a_dish_and_a_row_to_add_one(day: Sight) -> None:
    keys = [row.key for row in ORDER.rows(day)]
    assert keys == [*(f"dishes:dish_{number}" for number in range(1, 6)), ADD_DISH]
    assert is_even(ORDER, day)


def test_no_shoot_no_rows(chickpeas: Binder) -> None:
    assert ORDER.rows(Sight(chickpeas, None)) == []


def test_a_strip_says_cost_state_and_headroom(day: Sight) -> None:
    cell = cell_called(ORDER, day, "dishes:dish_3", "cost")
    assert cell.text == "$1.83, within: $0.17 to spare"
    assert cell.mark is Mark.WITHIN
    assert isinstance(cell.picture, CostBar)
    assert cell.picture.cost is not None
    assert cell.picture.cap is not None
    assert cell.picture.cost < cell.picture.cap


def test_over_the_cap_is_a_wedge_and_a_word(day: Sight) -> None:
    binder = apply(day.binder, set_dish(day.binder, day.binder.dishes["dish_3"], cap=100))
    cell = cell_called(ORDER, Sight(binder, "day"), "dishes:dish_3", "cost")
    assert cell.mark is Mark.OVER
    assert cell.tone is Tone.STOP
    assert cell.text == "$1.83, over: $0.83 over"


def test_a_cost_not_known_says_what_is_missing_and_leads_there(day: Sight) -> None:
    binder = apply(day.binder, remove("", day.binder, day.binder.quotes["quote_tahini"]))
    cell = cell_called(ORDER, Sight(binder, "day"), "dishes:dish_1", "cost")
    assert cell.text == "not known: no price for tahini"
    assert cell.leads_to == Place("foods", "tahini")
    assert cell.mark is Mark.UNKNOWN


def test_a_cap_of_the_shoot_is_quiet_and_one_of_the_dish_is_not(day: Sight) -> None:
    assert cell_called(ORDER, day, "dishes:dish_1", "cap").tone is Tone.QUIET
    assert cell_called(ORDER, day, "dishes:dish_3", "cap").tone is Tone.INK
    assert cell_called(ORDER, day, "dishes:dish_1", "cap").edit == ""


def test_builds_are_pans_filled_to_their_stage(day: Sight) -> None:
    cell = cell_called(ORDER, day, "dishes:dish_2", "builds")
    assert cell.picture == Pans((Pan(0.0), Pan(0.25), Pan(1.0)))
    assert cell.text == "hero, swap-out to step 1, spare"


def test_of_the_base_each_form_has_its_weight(day: Sight) -> None:
    cell = cell_called(ORDER, day, "dishes:dish_1", "base")
    assert (cell.text, cell.unit) == ("800", "g cooked")
    assert cell.under == "119 g cooking liquid"


@pytest.mark.parametrize(
    ("column", "text", "field", "value"),
    [
        ("name", "Fritters of the house", "name", "Fritters of the house"),
        ("name", "Herb fritters", "name", ""),
        ("portions", "6", "portions", 6.0),
        ("cap", "1.50", "cap", 150),
        ("cap", "", "cap", None),
        ("camera_minutes", "1 h", "camera_minutes", 60.0),
    ],
)
def test_typing_edits_the_dish(day: Sight, column: str, text: str, field: str, value: object) -> None:
    binder = after_typing(ORDER, day, "dishes:dish_2", column, text)
    assert getattr(binder.dishes["dish_2"], field) == value


def test_figures_are_not_typed(day: Sight) -> None:
    with pytest.raises((BinderError, KeyError)):
        ORDER.edit(day, "dishes:dish_2", "cost", "1")


def test_a_dish_is_added_by_its_recipes_name(day: Sight) -> None:
    binder = after_typing(ORDER, day, ADD_DISH, "name", "herb fritters")
    added = binder.dishes[order_of(binder)[-1]]
    assert added.recipe == "herb_fritters"
    assert len(binder.builds.where("dish", added.id)) == 1


def test_an_unknown_name_may_begin_a_new_recipe(day: Sight) -> None:
    with pytest.raises(BinderError) as refused:
        ORDER.edit(day, ADD_DISH, "name", "Lentil cake")
    (remedy,) = ORDER.remedies(day, CellName(ADD_DISH, "name"), "Lentil cake", refused.value)
    assert remedy.change is not None
    binder = apply(day.binder, remedy.change)
    assert binder.recipes[binder.dishes[order_of(binder)[-1]].recipe].name == "Lentil cake"


def test_dishes_are_removed_one_or_several(day: Sight) -> None:
    one = ORDER.remove(day, ["dishes:dish_2", ADD_DISH])
    assert one is not None
    assert one.label == "Remove Herb fritters from the shoot"
    several = ORDER.remove(day, ["dishes:dish_1", "dishes:dish_4"])
    assert several is not None
    assert several.label == "Remove 2 dishes"
    assert order_of(apply(day.binder, several)) == ["dish_2", "dish_3", "dish_5"]
    assert ORDER.remove(day, [ADD_DISH]) is None


@pytest.mark.parametrize(
    ("moved", "before", "order"),
    [
        ("dish_4", "dishes:dish_1", "41235"),
        ("dish_1", "dishes:dish_4", "23145"),
        ("dish_1", ADD_DISH, "23451"),
        ("dish_1", None, "23451"),
    ],
)
def test_a_strip_is_dropped_before_another(day: Sight, moved: str, before: str | None, order: str) -> None:
    change = ORDER.move_before(day, f"dishes:{moved}", before)
    assert change is not None
    assert "".join(key[-1] for key in order_of(apply(day.binder, change))) == order


def test_a_strip_is_moved_by_keys_and_stops_at_the_ends(day: Sight) -> None:
    down = ORDER.move_by(day, "dishes:dish_1", 1)
    assert down is not None
    assert order_of(apply(day.binder, down))[:2] == ["dish_2", "dish_1"]
    up = ORDER.move_by(day, "dishes:dish_1", -1)
    assert up is not None
    assert up.empty
