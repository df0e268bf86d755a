"""A monkey at the window: whatever is pressed and typed, nothing breaks, and all of it can be undone."""

from __future__ import annotations

import random
from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from binder.desktop.main_window import MainWindow
from binder.desktop.pages import every_page
from binder.desktop.sheet.cell_editor import LineEditor, ParagraphEditor
from binder.desktop.sheet.sheet_view import SheetView
from binder.desktop.theme import Appearance
from binder.kitchen.binder import Binder

_TEXTS = [
    *("2", "0", "-1", "1/2", "1 1/2 cups chopped onion", "2 tsp moonberry", "1 = 20 g", "1 lb for 2.50 at The mill"),
    *("yes", "hero", "oven 200", "10 min", "", " ", "x" * 400, "ɓ∂ 🍋", "<b>&amp;", "9" * 30, "2026-11-06", "%s{}"),
]
_KEYS = [
    *(Qt.Key.Key_Down, Qt.Key.Key_Up, Qt.Key.Key_Left, Qt.Key.Key_Right, Qt.Key.Key_Home, Qt.Key.Key_End),
    *(Qt.Key.Key_Tab, Qt.Key.Key_Return, Qt.Key.Key_Escape, Qt.Key.Key_F2, Qt.Key.Key_F8, Qt.Key.Key_Delete),
]
_ACTIONS = [
    *("undo", "redo", "undo", "redo", "move_up", "move_down", "delete", "copy", "cut", "select_all", "add_dish"),
    *("add_build", "add_recipe", "add_step", "add_line", "add_food", "add_shoot", "open_recipe", "next_check"),
    *("checks", "find", "find_next", "larger", "smaller", "go_back", "add_proposed", "add_form", "add_conversion"),
    "record_trial",
]


class Monkey:
    """Does one thing after another, always the same for the same seed."""

    def __init__(self, window: MainWindow, seed: int) -> None:
        self._window, self._chance = window, random.Random(seed)
        self._things: list[Callable[[], None]] = [
            self._turn_page, self._press, self._press, self._press, self._type_into, self._type_into, self._type_into,
            self._act, self._act, self._wear, self._resize,
        ]  # fmt: skip

    def play(self, times: int) -> None:
        for _time in range(times):
            self._chance.choice(self._things)()

    def _turn_page(self) -> None:
        self._window.show_page(self._chance.choice(every_page()).key)
        self._window.focus_page()

    def _press(self) -> None:
        QTest.keyClick(QApplication.focusWidget() or self._window, self._chance.choice(_KEYS))

    def _type_into(self) -> None:
        views = [
            view for view in self._window.findChildren(SheetView) if view.isVisible() and view.sheet_model.rowCount()
        ]
        if not views:
            return
        view = self._chance.choice(views)
        model = view.sheet_model
        view.setFocus()
        view.setCurrentIndex(
            model.index(self._chance.randrange(model.rowCount()), self._chance.randrange(model.columnCount()))
        )
        QTest.keyClick(view, Qt.Key.Key_F2)
        focus = QApplication.focusWidget()
        if isinstance(focus, LineEditor | ParagraphEditor):
            text = self._chance.choice(_TEXTS)
            focus.setText(text) if isinstance(focus, LineEditor) else focus.setPlainText(text)
            QTest.keyClick(focus, self._chance.choice((Qt.Key.Key_Return, Qt.Key.Key_Tab, Qt.Key.Key_Escape)))

    def _act(self) -> None:
        action = self._window.actions_[self._chance.choice(_ACTIONS)]
        if action.isEnabled():
            action.trigger()

    def _wear(self) -> None:
        if self._chance.random() < 0.1:
            self._window.actions_[self._chance.choice(list(Appearance)).value].trigger()

    def _resize(self) -> None:
        if self._chance.random() < 0.2:
            self._window.resize(self._chance.randrange(300, 2000), self._chance.randrange(200, 1200))


@pytest.mark.parametrize("seed", range(4))
def test_nothing_breaks_and_all_can_be_undone(window: MainWindow, chickpeas: Binder, seed: int) -> None:
    Monkey(window, seed).play(250)
    document = window.desk.bridge.document
    while document.undo_label is not None:
        assert window.actions_.run("undo")
    assert document.binder == chickpeas
