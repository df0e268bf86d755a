"""Everything that can have the keyboard has a name that can be heard, on every page; Tab reaches it all."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QAccessible
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from binder.desktop.main_window import MainWindow
from binder.desktop.pages import every_page
from binder.desktop.sheet.cell_editor import LineEditor

_BY_TAB = {Qt.FocusPolicy.TabFocus, Qt.FocusPolicy.StrongFocus, Qt.FocusPolicy.WheelFocus}
PAGES = [entry.key for entry in every_page()]


def reachable(window: QWidget) -> list[QWidget]:
    """What takes the keyboard by Tab."""
    every: list[QWidget] = window.findChildren(QWidget)
    return [one for one in every if one.isVisible() and one.isEnabled() and one.focusPolicy() in _BY_TAB]


def name_of(widget: QWidget) -> str:
    return QAccessible.queryAccessibleInterface(widget).text(QAccessible.Text.Name)


@pytest.mark.parametrize("page", PAGES)
def test_every_control_has_a_name(window: MainWindow, page: str) -> None:
    window.show_page(page)
    unnamed = [type(one).__name__ for one in reachable(window) if not name_of(one).strip()]
    assert not unnamed


@pytest.mark.parametrize("page", PAGES)
def test_tab_reaches_every_control(window: MainWindow, page: str) -> None:
    window.show_page(page)
    window.focus_page()
    wanted = {one for one in reachable(window) if not isinstance(one, LineEditor) and one.focusProxy() is None}
    seen: set[QWidget] = set()
    for _press in range(3 * len(wanted) + 10):
        focus = QApplication.focusWidget()
        assert focus is not None
        seen.add(focus)
        QTest.keyClick(focus, Qt.Key.Key_Tab)
    exclusive = {one for one in wanted if type(one).__name__ == "Divider" and not one.isChecked()}  # type: ignore[attr-defined]
    missed = [f"{type(one).__name__} {name_of(one)}" for one in wanted - seen - exclusive]
    assert not missed


def test_a_cell_says_what_it_shows_and_its_state(window: MainWindow) -> None:
    model = window.page("shoot").order.sheet_model  # type: ignore[attr-defined]
    said = [model.index(0, column).data(Qt.ItemDataRole.AccessibleTextRole) for column in range(model.columnCount())]
    assert said[0] == "number 1"
    assert said[3] == "$0.79, within: $0.96 to spare, within"
    assert said[6] == "hero, swap-out to step 2"


def test_an_editor_is_named_after_its_column(window: MainWindow) -> None:
    order = window.page("shoot").order  # type: ignore[attr-defined]
    order.edit_key("dishes:dish_1", 2)
    editor = order.viewport().findChild(LineEditor)
    assert editor is not None
    assert editor.accessibleName() == "portions"


@pytest.mark.parametrize("page", PAGES)
def test_targets_are_large_enough(window: MainWindow, page: str) -> None:
    """WCAG 2.2, 2.5.8: 24 by 24 px."""
    window.show_page(page)
    least = QSize(24, 24)
    small = [
        f"{type(one).__name__} {name_of(one)} {one.size()}"
        for one in reachable(window)
        if one.width() < least.width() or one.height() < least.height()
    ]
    assert not small
