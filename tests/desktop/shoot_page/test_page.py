"""Builds in the window: proposed with one press, refused in place, ticked off on the day."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from binder.desktop.main_window import MainWindow
from binder.desktop.shoot_page.builds import ADD_BUILD
from binder.desktop.shoot_page.page import ShootPage
from binder.kitchen.binder import Binder
from binder.kitchen.edits.shoots import set_dish, set_shoot
from binder.kitchen.shoot import BuildKind, BuildState
from tests.desktop.conftest import MakeWindow
from tests.desktop.editing import column_of, editor_in, is_editing, shown, type_over
from tests.kitchen_binder import small_binder
from tests.large_shoot import Size, large_shoot


def shoot_page(window: MainWindow) -> ShootPage:
    page = window.page("shoot")
    assert isinstance(page, ShootPage)
    return page


@pytest.fixture
def page(window: MainWindow) -> ShootPage:
    """The chickpea day, 340 g short."""
    return shoot_page(window)


def test_the_proposed_builds_are_added_with_one_press_and_one_undo(window_on: MakeWindow) -> None:
    window = window_on(small_binder())
    page = shoot_page(window)
    before = window.desk.binder
    assert page.proposed.sheet_model.rowCount() == 1
    QTest.mouseClick(page.add_proposed, Qt.MouseButton.LeftButton)
    kinds = [build.kind for build in window.desk.binder.builds.where("dish", "dish-spread")]
    assert kinds[-1] is BuildKind.BEAUTY
    assert not page.proposed.isVisible()
    assert not page.add_proposed.isVisible()
    window.actions_.run("undo")
    assert window.desk.binder == before
    assert page.proposed.isVisible()


def test_the_menu_adds_them_too_and_says_when_there_is_none(window_on: MakeWindow) -> None:
    window = window_on(small_binder())
    assert window.actions_.run("add_proposed")
    assert len(window.desk.binder.builds.where("dish", "dish-spread")) == 3
    window.actions_.run("add_proposed")
    assert "has all the builds" in window.frame.strip.says


def test_a_spare_that_cannot_be_made_is_refused_in_its_editor(
    window: MainWindow, page: ShootPage, chickpeas: Binder
) -> None:
    type_over(page.builds, ADD_BUILD, "kind", "spare")
    editor = editor_in(page.builds)
    assert editor.note.says.startswith("There is not enough chickpeas")
    assert window.desk.binder is chickpeas
    assert editor.note.offers[0].startswith("Have ")
    QTest.keyClick(editor, Qt.Key.Key_Down)
    QTest.keyClick(editor, Qt.Key.Key_Return)
    kinds = [build.kind for build in window.desk.binder.builds.where("dish", "dish_1")]
    assert kinds[-1] is BuildKind.SPARE
    window.actions_.run("undo")
    assert window.desk.binder == chickpeas


def test_a_build_is_ticked_off_on_the_day(window: MainWindow, page: ShootPage) -> None:
    build = window.desk.binder.builds.where("dish", "dish_1")[0]
    type_over(page.builds, f"builds:{build.id}", "state", "under way")
    assert window.desk.binder.builds[build.id].state is BuildState.UNDER_WAY
    assert not is_editing(page.builds)


def test_takes_follow_the_dish_chosen(window_on: MakeWindow) -> None:
    window = window_on(small_binder())
    page = shoot_page(window)
    assert shown(page.takes, "whole", "limit") == "tahini"
    page.order.select_key("dishes:dish-bread")
    assert [page.takes.sheet_model.row_at(at).key for at in range(3)] == ["whole", "from:bread/1", "from:bread/2"]


def test_of_a_large_shoot_they_come_a_moment_later(window_on: MakeWindow, qtbot: QtBot) -> None:
    window = window_on(large_shoot(Size(dishes=4)))
    page = shoot_page(window)
    qtbot.waitUntil(lambda: not window.desk.tasks.busy("dish"))
    assert page.takes.isVisible()
    assert shown(page.takes, "whole", "possible")


def test_undo_of_a_term_opens_the_fold_and_looks_at_it(window: MainWindow, page: ShootPage) -> None:
    window.desk.make(set_shoot(window.desk.binder.shoots["day"], reset_minutes=9.0))
    window.show_page("larder")
    window.actions_.run("undo")
    assert window.shown == "shoot"
    assert page.fold.is_open
    assert page.terms.hasFocus()
    row = page.terms.current_row()
    assert row is not None
    assert row.key == "reset_minutes"


def test_undo_of_the_name_looks_at_the_head(window: MainWindow, page: ShootPage) -> None:
    window.desk.make(set_shoot(window.desk.binder.shoots["day"], name="Another day"))
    window.actions_.run("undo")
    assert page.head.hasFocus()
    assert not page.fold.is_open


def test_undo_of_a_dishs_notes_looks_at_them(window: MainWindow, page: ShootPage) -> None:
    window.desk.make(set_dish(window.desk.binder, window.desk.binder.dishes["dish_3"], notes="Low and slow."))
    window.actions_.run("undo")
    assert page.dish_head.hasFocus()
    assert page.current_dish() == "dish_3"
    assert page.dish_head.currentIndex().column() == 1


def test_the_basis_of_caps_is_chosen_in_place_and_named_above_the_costs(window: MainWindow, page: ShootPage) -> None:
    def head() -> str:
        at = column_of(page.order, "cost")
        return str(page.order.sheet_model.headerData(at, Qt.Orientation.Horizontal))

    assert head() == "a portion against its cap: used cost"
    before = shown(page.order, "dishes:dish_3", "cost")
    page.fold.open()
    type_over(page.terms, "cap_basis", "value", "whole packs over portions")
    assert head() == "a portion against its cap: whole packs over portions"
    assert shown(page.order, "dishes:dish_3", "cost") != before
    window.actions_.run("undo")
    assert head() == "a portion against its cap: used cost"
    assert shown(page.order, "dishes:dish_3", "cost") == before
