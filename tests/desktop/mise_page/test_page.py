"""The page of the mise in the window."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from binder.desktop.day_page.planning import planning_of
from binder.desktop.main_window import MainWindow
from binder.desktop.mise_page.mise_list import HOUR
from binder.desktop.mise_page.page import MisePage
from binder.kitchen.binder import Binder
from tests.desktop.conftest import MakeWindow
from tests.desktop.day_page.straight_plan import straight_work
from tests.desktop.editing import type_over


@pytest.fixture
def page(window: MainWindow) -> MisePage:
    planning_of(window.desk).work = straight_work()
    window.show_page("mise")
    page = window.page("mise")
    assert isinstance(page, MisePage)
    return page


def keys(page: MisePage) -> list[str]:
    model = page.sheet.sheet_model
    return [model.row_at(at).key for at in range(model.rowCount())]


def test_by_hour_the_day_is_planned_and_its_hours_are_shown(page: MisePage, qtbot: QtBot) -> None:
    assert not page.planning.busy
    assert not page.standing.text()
    QTest.mouseClick(page.order[HOUR], Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: page.planning.plan is not None)
    assert page.planning.plan is not None
    assert page.standing.text().startswith(page.planning.plan.says())
    assert [key for key in keys(page) if key.startswith("hour:2026-11-06T")]
    assert not [key for key in keys(page) if key.startswith("station:")]
    assert keys(page)[0] == "before"


def test_nobody_plans_for_a_page_that_is_not_looked_at(window: MainWindow, page: MisePage, qtbot: QtBot) -> None:
    made: list[Binder] = []
    page.planning.work = straight_work(made)
    page.order[HOUR].click()
    qtbot.waitUntil(lambda: len(made) == 1)
    window.show_page("larder")
    window.desk.changed.emit()
    assert not page.planning.busy


def test_a_preparation_undone_is_looked_at_here(window: MainWindow, page: MisePage) -> None:
    row = next(key for key in keys(page) if key.startswith("mise:"))
    type_over(page.sheet, row, "preparation", "peeled and warm")
    window.actions_.run("undo")
    assert window.shown == "mise"
    current = page.sheet.current_row()
    assert current is not None
    assert current.key == row


def test_an_empty_shoot_says_what_belongs_here(window_on: MakeWindow) -> None:
    window = window_on(Binder())
    window.show_page("mise")
    page = window.page("mise")
    assert isinstance(page, MisePage)
    assert not page.sheet.isVisible()


def test_nothing_scrolls_sideways_on_a_laptop(window: MainWindow, page: MisePage, qtbot: QtBot) -> None:
    window.resize(1100, 720)
    qtbot.waitUntil(lambda: page.sheet.viewport().width() < 1100 and page.sheet.horizontalScrollBar().maximum() == 0)
