"""A cell is edited where it stands: what is not understood keeps its editor, with the reason under it."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from binder.desktop.dishes_page.page import DishesPage
from binder.desktop.main_window import MainWindow
from binder.desktop.sheet.sheet_view import SheetView
from binder.desktop.shoot_page.page import ShootPage
from tests.desktop.editing import column_of, editor_in, is_editing, open_editor, shown, type_over


@pytest.fixture
def order(window: MainWindow) -> SheetView:
    page = window.page("shoot")
    assert isinstance(page, ShootPage)
    return page.order


@pytest.fixture
def body(window: MainWindow) -> SheetView:
    window.show_page("dishes")
    page = window.page("dishes")
    assert isinstance(page, DishesPage)
    return page.body


def test_enter_takes_what_was_typed(order: SheetView, window: MainWindow) -> None:
    type_over(order, "dishes:dish_1", "portions", "6")
    assert window.desk.binder.dishes["dish_1"].portions == 6
    assert shown(order, "dishes:dish_1", "portions") == "6"
    assert not is_editing(order)


def test_typing_begins_an_edit(order: SheetView, window: MainWindow) -> None:
    order.select_key("dishes:dish_2", column_of(order, "cap"))
    order.setFocus()
    QTest.keyClicks(order, "2")
    QTest.keyClicks(editor_in(order), ".5")
    QTest.keyClick(editor_in(order), Qt.Key.Key_Return)
    assert window.desk.binder.dishes["dish_2"].cap == 250


def test_what_is_not_understood_keeps_its_editor_and_says_why(order: SheetView, window: MainWindow) -> None:
    before = window.desk.binder
    type_over(order, "dishes:dish_1", "portions", "many")
    editor = editor_in(order)
    assert "many" in editor.note.says
    assert editor.value() == "many"
    assert window.desk.binder is before


def test_a_value_out_of_range_is_not_understood_either(order: SheetView, window: MainWindow) -> None:
    type_over(order, "dishes:dish_1", "portions", "0")
    assert "portions" in editor_in(order).note.says


def test_it_can_be_mended_in_place(order: SheetView, window: MainWindow) -> None:
    type_over(order, "dishes:dish_1", "portions", "many")
    editor = editor_in(order)
    editor.selectAll()
    QTest.keyClicks(editor, "5")
    assert not editor.note.says
    QTest.keyClick(editor, Qt.Key.Key_Return)
    assert window.desk.binder.dishes["dish_1"].portions == 5


def test_escape_leaves_all_as_it_was(order: SheetView, window: MainWindow) -> None:
    before = window.desk.binder
    type_over(order, "dishes:dish_1", "portions", "7", Qt.Key.Key_Escape)
    assert window.desk.binder is before
    assert not is_editing(order)


def test_an_edit_that_changes_nothing_is_no_change(order: SheetView, window: MainWindow) -> None:
    editor = open_editor(order, "dishes:dish_1", "portions")
    QTest.keyClick(editor, Qt.Key.Key_Return)
    assert window.desk.bridge.document.undo_label is None


def test_leaving_the_editor_takes_what_was_typed(order: SheetView, window: MainWindow) -> None:
    editor = open_editor(order, "dishes:dish_1", "portions")
    editor.selectAll()
    QTest.keyClicks(editor, "9")
    window.head.finder.setFocus()
    assert window.desk.binder.dishes["dish_1"].portions == 9


def test_tab_goes_to_the_next_cell_that_is_edited(order: SheetView, window: MainWindow) -> None:
    type_over(order, "dishes:dish_1", "portions", "6", Qt.Key.Key_Tab)
    assert order.currentIndex().column() == column_of(order, "cap")
    assert is_editing(order)


@pytest.mark.parametrize(("row", "column"), [("add:dish", "name"), ("dishes:dish_1", "portions")])
def test_the_note_is_in_sight_under_its_editor(order: SheetView, window: MainWindow, row: str, column: str) -> None:
    editor = open_editor(order, row, column)
    if not editor.note.offers:
        editor.selectAll()
        QTest.keyClicks(editor, "many")
        QTest.keyClick(editor, Qt.Key.Key_Return)
    note = editor.note.geometry()
    assert note.height() >= editor.height()
    assert window.rect().contains(note)
    assert not note.intersects(QRect(editor.mapTo(window, QPoint(0, 0)), editor.size()))


def test_a_line_is_typed_whole_and_says_what_it_understood(body: SheetView, window: MainWindow, qtbot: QtBot) -> None:
    editor = open_editor(body, "add-line:silky_hummus_with_lemon_0", "title")
    QTest.keyClicks(editor, "1 1/2 cups chopped onion")
    assert editor.note.says == "1½ cups · onion · chopped"
    QTest.keyClick(editor, Qt.Key.Key_Return)
    line = window.desk.binder.lines.where("step", "silky_hummus_with_lemon_0")[-1]
    assert (line.food, line.low, line.unit, line.preparation) == ("onion", 1.5, "cup", "chopped")
    assert shown(body, f"lines:{line.id}", "title") == "1½ cups onion, chopped"


def test_after_a_line_the_next_is_begun(body: SheetView, window: MainWindow) -> None:
    editor = open_editor(body, "add-line:silky_hummus_with_lemon_0", "title")
    for text in ("1 tsp salt", "2 cloves garlic"):
        editor = editor_in(body)
        QTest.keyClicks(editor, text)
        QTest.keyClick(editor, Qt.Key.Key_Return)
    foods = [line.food for line in window.desk.binder.lines.where("step", "silky_hummus_with_lemon_0")]
    assert foods[-2:] == ["salt", "garlic"]


def test_names_are_offered_while_a_line_is_typed(body: SheetView, window: MainWindow) -> None:
    editor = open_editor(body, "add-line:silky_hummus_with_lemon_0", "title")
    QTest.keyClicks(editor, "200 g chickpeas coo")
    assert "200 g chickpeas, cooked" in editor.note.offers
    place = editor.note.offers.index("200 g chickpeas, cooked")
    for _press in range(place + 1):
        QTest.keyClick(editor, Qt.Key.Key_Down)
    QTest.keyClick(editor, Qt.Key.Key_Return)
    line = window.desk.binder.lines.where("step", "silky_hummus_with_lemon_0")[-1]
    assert line.food == "chickpeas_cooked"


def test_an_unknown_food_offers_the_nearest_and_the_larder(body: SheetView, window: MainWindow) -> None:
    editor = open_editor(body, "add-line:silky_hummus_with_lemon_0", "title")
    QTest.keyClicks(editor, "2 tsp moonberry dust")
    QTest.keyClick(editor, Qt.Key.Key_Return)
    assert "moonberry dust" in editor.note.says
    assert editor.note.offers[-1] == "Add “moonberry dust” to the larder"


def test_the_food_is_added_with_its_line_as_one_change(body: SheetView, window: MainWindow) -> None:
    before = window.desk.binder
    editor = open_editor(body, "add-line:silky_hummus_with_lemon_0", "title")
    QTest.keyClicks(editor, "2 tsp moonberry dust")
    QTest.keyClick(editor, Qt.Key.Key_Return)
    QTest.keyClick(editor, Qt.Key.Key_Up)
    QTest.keyClick(editor, Qt.Key.Key_Return)
    assert "moonberry_dust" in window.desk.binder.foods
    window.desk.bridge.undo()
    assert window.desk.binder == before


def test_a_paragraph_takes_enter_and_keeps_shift_enter(body: SheetView, window: MainWindow) -> None:
    editor = open_editor(body, "text:silky_hummus_with_lemon_1", "title")
    editor.selectAll()
    QTest.keyClicks(editor, "Swirl.")
    QTest.keyClick(editor, Qt.Key.Key_Return, Qt.KeyboardModifier.ShiftModifier)
    QTest.keyClicks(editor, "Serve.")
    QTest.keyClick(editor, Qt.Key.Key_Return)
    assert window.desk.binder.steps["silky_hummus_with_lemon_1"].text == "Swirl.\nServe."


def test_lines_pasted_where_lines_are_begun_become_lines(body: SheetView, window: MainWindow) -> None:
    body.select_key("add-line:silky_hummus_with_lemon_1", 1)
    body.type_in("1 tsp salt\n\n1/2 tsp smoked paprika\n1 tsp what is this")
    foods = [line.food for line in window.desk.binder.lines.where("step", "silky_hummus_with_lemon_1")]
    assert foods[-2:] == ["salt", "smoked_paprika"]
    assert editor_in(body).value() == "1 tsp what is this"
