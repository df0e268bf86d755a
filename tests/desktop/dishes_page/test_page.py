"""The page of the dishes in the window: nothing scrolls sideways on a laptop, and undo looks at the very fact."""

from __future__ import annotations

import pytest
from pytestqt.qtbot import QtBot

from binder.desktop.dishes_page.page import DishesPage
from binder.desktop.main_window import MainWindow
from binder.desktop.sheet.sheet_view import SheetView
from binder.figures.missing import Place
from binder.kitchen.edits.recipes import set_recipe, set_step
from tests.desktop.editing import column_of, shown, type_over


@pytest.fixture
def page(window: MainWindow) -> DishesPage:
    window.show_page("dishes")
    page = window.page("dishes")
    assert isinstance(page, DishesPage)
    return page


@pytest.mark.parametrize("width", [1100, 1440])
def test_nothing_scrolls_sideways_on_a_laptop(window: MainWindow, page: DishesPage, width: int, qtbot: QtBot) -> None:
    views: list[SheetView] = page.findChildren(SheetView)

    def sideways() -> list[str]:
        return [view.accessibleName() for view in views if view.horizontalScrollBar().maximum() > 0]

    window.resize(width, 720)
    qtbot.waitUntil(lambda: page.body.viewport().width() < width and not sideways())


@pytest.mark.parametrize(
    ("field", "value", "row", "column"),
    [
        ("hold_minutes", 20.0, "more:herb_fritters_2", "weight"),
        ("on_camera", False, "steps:herb_fritters_2", "weight"),
        ("text", "Fry.", "text:herb_fritters_2", "title"),
        ("station", "fryer", "steps:herb_fritters_2", "station"),
        ("places", 2, "more:herb_fritters_2", "station"),
    ],
)
def test_undo_of_a_fact_looks_at_its_cell(
    window: MainWindow, page: DishesPage, field: str, value: object, row: str, column: str
) -> None:
    window.desk.make(set_step(window.desk.binder, window.desk.binder.steps["herb_fritters_2"], **{field: value}))
    window.show_page("larder")
    window.actions_.run("undo")
    assert window.shown == "dishes"
    current = page.body.current_row()
    assert current is not None
    assert (current.key, page.body.currentIndex().column()) == (row, column_of(page.body, column))
    assert page.body.hasFocus()


@pytest.mark.parametrize(
    ("field", "value", "row"), [("portions", 9.0, "recipe"), ("introduction", "Warm.", "introduction")]
)
def test_undo_of_a_recipes_head_looks_there(
    window: MainWindow, page: DishesPage, field: str, value: object, row: str
) -> None:
    window.desk.make(set_recipe(window.desk.binder.recipes["herb_fritters"], **{field: value}))
    window.actions_.run("undo")
    current = page.head.current_row()
    assert current is not None
    assert current.key == row
    assert page.head.hasFocus()


def test_undo_of_notes_looks_at_the_foot(window: MainWindow, page: DishesPage) -> None:
    window.desk.make(set_recipe(window.desk.binder.recipes["herb_fritters"], notes="Double it."))
    window.actions_.run("undo")
    current = page.body.current_row()
    assert current is not None
    assert current.key == "notes"


def test_a_step_is_taken_off_camera_in_place(window: MainWindow, page: DishesPage) -> None:
    type_over(page.body, "steps:silky_hummus_with_lemon_0", "weight", "off camera")
    assert not window.desk.binder.steps["silky_hummus_with_lemon_0"].on_camera
    assert shown(page.body, "steps:silky_hummus_with_lemon_0", "weight") == "off camera"
    window.actions_.run("undo")
    assert window.desk.binder.steps["silky_hummus_with_lemon_0"].on_camera


def test_undo_of_a_moved_step_looks_at_the_step(window: MainWindow, page: DishesPage) -> None:
    def place() -> int | None:
        return page.body.sheet_model.row_numbered("steps:herb_fritters_1")

    page.go_to(Place("steps", "herb_fritters_1"))
    before = place()
    window.actions_.run("move_down")
    assert place() != before
    assert window.actions_.run("undo")
    assert place() == before
    row = page.body.current_row()
    assert row is not None
    assert row.key.startswith("steps:herb_fritters_")
