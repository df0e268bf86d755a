"""The window as a whole: an edit shows everywhere at once, goes back by name, and every check leads to its place."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QPushButton
from pytestqt.qtbot import QtBot

from binder.desktop.actions import without_access_key
from binder.desktop.checks_sheet import checks_of
from binder.desktop.dishes_page.page import DishesPage
from binder.desktop.dividers import Divider
from binder.desktop.larder_page.page import LarderPage
from binder.desktop.main_window import MainWindow
from binder.desktop.sheet.cell import Mark
from binder.desktop.sheet.sheet_model import CELL_ROLE
from binder.desktop.shoot_page.page import ShootPage
from binder.figures.checks import Severity
from binder.figures.missing import Place
from binder.kitchen.binder import Binder
from binder.kitchen.budget import BudgetLine
from binder.kitchen.change import Change, Edit
from binder.kitchen.claim import ClaimKind
from binder.kitchen.edits.foods import remove_food
from binder.kitchen.edits.money import add_claim
from binder.kitchen.edits.shoots import set_dish, set_shoot
from binder.kitchen.shoot import CapBasis
from tests.desktop.conftest import Answers, MakeWindow, MemoryShelf
from tests.desktop.editing import column_of, shown, type_over


@pytest.fixture
def shoot(window: MainWindow) -> ShootPage:
    page = window.page("shoot")
    assert isinstance(page, ShootPage)
    return page


@pytest.fixture
def larder(window: MainWindow) -> LarderPage:
    page = window.page("larder")
    assert isinstance(page, LarderPage)
    return page


def cost_mark(page: ShootPage, dish: str) -> Mark:
    at = page.order.sheet_model.row_numbered(f"dishes:{dish}")
    assert at is not None
    mark: Mark = page.order.sheet_model.index(at, column_of(page.order, "cost")).data(CELL_ROLE).mark
    return mark


def menu_text(window: MainWindow, key: str) -> str:
    return without_access_key(window.actions_[key].text())


def test_a_price_takes_a_dish_over_its_cap_and_undo_takes_it_back(
    window: MainWindow, shoot: ShootPage, larder: LarderPage
) -> None:
    assert cost_mark(shoot, "dish_1") is Mark.WITHIN
    window.go_to(Place("foods", "tahini"))
    type_over(larder.packs, "packs:pack_tahini", "price", "49.90")
    window.show_page("shoot")
    assert cost_mark(shoot, "dish_1") is Mark.OVER
    assert "over" in shown(shoot.order, "dishes:dish_1", "cost")
    assert any(check.kind == "over cap" for check in checks_of(window.desk.sight()))
    assert menu_text(window, "undo") == "Undo: Set price of tahini to $49.90"
    shoot.order.setFocus()
    QTest.keyClick(window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert menu_text(window, "undo") == "Undo"
    assert menu_text(window, "redo") == "Redo: Set price of tahini to $49.90"
    window.show_page("shoot")
    assert cost_mark(shoot, "dish_1") is Mark.WITHIN


def test_undo_looks_at_what_it_changed(window: MainWindow, larder: LarderPage) -> None:
    window.go_to(Place("foods", "tahini"))
    type_over(larder.packs, "packs:pack_tahini", "price", "8.10")
    window.show_page("dishes")
    window.actions_.run("undo")
    assert window.shown == "larder"
    assert larder.title.text() == "tahini"


def test_a_refresh_keeps_what_is_chosen(window: MainWindow, shoot: ShootPage, qtbot: QtBot) -> None:
    shoot.order.select_key("dishes:dish_4", column_of(shoot.order, "name"))
    with qtbot.assertNotEmitted(shoot.order.sheet_model.modelReset):
        window.desk.make(set_dish(window.desk.binder, window.desk.binder.dishes["dish_1"], portions=9.0))
        window.desk.make(set_shoot(window.desk.binder.shoots["day"], cap=50))
    row = shoot.order.current_row()
    assert row is not None
    assert row.key == "dishes:dish_4"
    assert shoot.order.selected_keys() == ["dishes:dish_4"]


def test_a_click_on_a_check_leads_to_its_place(window: MainWindow, shoot: ShootPage, qtbot: QtBot) -> None:
    window.desk.make(set_dish(window.desk.binder, window.desk.binder.dishes["dish_3"], cap=5))
    window.show_page("larder")
    view = window.checks.sheet
    at = next(
        at for at in range(view.sheet_model.rowCount()) if "Smoky tomato stew is over" in view.row_at(at).cells[0].text
    )
    middle = view.visualRect(view.sheet_model.index(at, 0)).center()
    QTest.mouseClick(view.viewport(), Qt.MouseButton.LeftButton, pos=QPoint(middle))
    assert window.shown == "shoot"
    assert shoot.order.selected_keys() == ["dishes:dish_3"]


def test_every_check_leads_to_a_page_that_shows_its_record(window: MainWindow) -> None:
    for check in checks_of(window.desk.sight()):
        window.go_to(check.place)
        assert window.page(window.shown).go_to(check.place), check


def test_f8_goes_from_check_to_check(window: MainWindow) -> None:
    QTest.keyClick(window, Qt.Key.Key_F8)
    first = window.checks.sheet.current_row()
    QTest.keyClick(window, Qt.Key.Key_F8)
    second = window.checks.sheet.current_row()
    assert first is not None
    assert second is not None
    assert first.key != second.key


def test_dividers_are_ticked_where_something_needs_you(window: MainWindow) -> None:
    waiting = [check for check in checks_of(window.desk.sight()) if check.severity is not Severity.NOTE]
    divider = window.dividers.findChild(Divider, "shoot")
    assert divider is not None
    assert f"{len(waiting)} check" in divider.accessibleName()


def test_the_foot_line_says_the_four_numbers(window: MainWindow) -> None:
    assert window.foot.says.startswith(
        "worst headroom: $0.17 to spare, Smoky tomato stew; chickpeas, dried left: 340 g short"
    )
    assert "at the till: $91.22 of $90.00" in window.foot.says
    assert window.foot.says.endswith("call: 7:00\u202fAM, Fri, Nov 6")


def test_the_foot_line_counts_what_is_not_food_against_the_budget_too(window: MainWindow) -> None:
    hire = BudgetLine(id="hire", shoot="day", name="Kitchen for a day", rate=10_000)
    window.desk.make(Change("Add a line", (Edit(before=None, after=hire),)))
    assert "expected in all: $191.22 of $90.00" in window.foot.says


def test_checks_of_what_is_claimed_come_a_moment_later(window: MainWindow, qtbot: QtBot) -> None:
    day = window.desk.shoot
    assert day is not None
    before = window.desk.checks.latest.value
    window.desk.make(add_claim(window.desk.binder, day, "Under $1.75", ClaimKind.PORTION_UNDER, target=175.0)[0])
    assert window.desk.checks.latest.stale
    assert window.desk.checks.latest.value == before
    qtbot.waitUntil(lambda: not window.desk.checks.latest.stale)
    assert window.desk.checks.latest.value == checks_of(window.desk.sight())
    said = [window.checks.sheet.row_at(at).cells[0].text for at in range(window.checks.sheet.sheet_model.rowCount())]
    assert any("“Under $1.75”: Does not hold." in says for says in said)
    divider = window.dividers.findChild(Divider, "money")
    assert divider is not None
    assert "1 check" in divider.accessibleName()


def test_the_foot_line_is_of_a_moment_ago_where_packs_are_chosen_together(window: MainWindow, qtbot: QtBot) -> None:
    day = window.desk.shoot
    assert day is not None
    window.desk.make(set_shoot(day, most_stores=1, budget=20_000))
    assert window.desk.tasks.busy("foot")
    assert "at the till: $91.22 of $90.00" in window.foot.says
    qtbot.waitUntil(lambda: not window.desk.tasks.busy("foot"), timeout=20_000)
    assert "at the till: $0.00 and what has no price of $200.00" in window.foot.says


def test_the_foot_line_names_the_basis_where_it_is_not_the_usual_one(window: MainWindow) -> None:
    window.desk.make(set_shoot(window.desk.binder.shoots["day"], cap_basis=CapBasis.WHOLE_PACKS))
    assert window.foot.says.startswith("worst headroom (whole packs over portions): ")
    assert "chickpeas, dried left: 340 g short" in window.foot.toolTip()


def test_an_edit_that_is_refused_is_said_in_the_strip_and_changes_nothing(window: MainWindow) -> None:
    before = window.desk.binder
    assert not window.desk.make(remove_food(before, before.foods["tahini"]))
    assert "tahini" in window.frame.strip.says
    assert window.desk.binder is before
    window.desk.make(set_shoot(before.shoots["day"], cap=180))
    assert not window.frame.strip.says


def test_the_title_shows_the_binders_name(window: MainWindow) -> None:
    assert window.windowTitle() == "Chickpea day (not kept in a file yet) – Binder"


def test_an_empty_binder_has_one_sentence_and_one_button_on_each_page(window_on: MakeWindow, qtbot: QtBot) -> None:
    window = window_on(Binder())
    page = window.page("shoot")
    assert isinstance(page, ShootPage)
    buttons = [button for button in page.findChildren(QPushButton, "begin") if button.isVisible()]
    assert len(buttons) == 1
    QTest.mouseClick(buttons[0], Qt.MouseButton.LeftButton)
    assert [shoot.name for shoot in window.desk.binder.shoots.values()] == ["New shoot"]
    assert page.head.isVisible()


def test_the_first_recipe_is_begun_with_its_button(window_on: MakeWindow, qtbot: QtBot) -> None:
    window = window_on(Binder())
    window.show_page("dishes")
    page = window.page("dishes")
    assert isinstance(page, DishesPage)
    button = next(button for button in page.findChildren(QPushButton, "begin") if button.isVisible())
    QTest.mouseClick(button, Qt.MouseButton.LeftButton)
    assert [recipe.name for recipe in window.desk.binder.recipes.values()] == ["New recipe"]


def test_what_is_typed_in_the_finder_is_gone_to(window: MainWindow, qtbot: QtBot) -> None:
    QTest.keyClick(window, Qt.Key.Key_F, Qt.KeyboardModifier.ControlModifier)
    QTest.keyClicks(window.head.finder, "smoked pap")
    assert next(found.title for found in window.head.finder.found) == "smoked paprika"
    QTest.keyClick(window.head.finder, Qt.Key.Key_Return)
    assert window.shown == "larder"
    larder = window.page("larder")
    assert isinstance(larder, LarderPage)
    assert larder.title.text() == "smoked paprika"


def test_a_file_that_cannot_be_opened_is_said_and_the_binder_stays(window: MainWindow, shelf: MemoryShelf) -> None:
    before = window.desk.binder
    shelf.broken = "“old.binder” is not a binder. Choose another file."
    assert not window.open_path(Path("old.binder"))
    assert window.frame.strip.says == shelf.broken
    assert window.desk.binder is before


def test_a_copy_of_what_is_in_no_file_is_gone_on_with(window: MainWindow, answers: Answers, tmp_path: Path) -> None:
    answers.file = tmp_path / "kept.binder"
    assert window.actions_.run("copy_binder")
    assert window.files.path == answers.file
    assert answers.asked == ["Chickpea day.binder"]
    assert window.windowTitle() == "Chickpea day – Binder"
    assert window.desk.settings.recent == [answers.file.resolve()]


def test_going_back_to_how_it_was_opened_can_be_undone(window: MainWindow, chickpeas: Binder) -> None:
    window.desk.make(set_shoot(window.desk.binder.shoots["day"], cap=10))
    window.actions_.run("go_back")
    assert window.desk.binder == chickpeas
    window.actions_.run("undo")
    assert window.desk.binder.shoots["day"].cap == 10
