"""The page of buying in the window: ticked by click and by key, each undo looked at in its place."""

from __future__ import annotations

import threading
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from binder.desktop.buying_page.buying_figures import BuyingFigures, buying_figures
from binder.desktop.buying_page.list_rows import TICKS
from binder.desktop.buying_page.page import HOME, LIST, STORES, BuyingPage
from binder.desktop.main_window import MainWindow
from binder.desktop.sheet.sheet_view import SheetView
from binder.figures.missing import Place
from binder.figures.under_way import told
from binder.kitchen.binder import Binder
from binder.kitchen.edits.buying import add_pantry_item, move_section, set_store
from tests.desktop.conftest import Answers, MakeWindow
from tests.desktop.editing import column_of, shown, type_over
from tests.kitchen_binder import small_binder

ROW = "buy:tahini/pack-tahini"


@pytest.fixture
def window(window_on: MakeWindow) -> MainWindow:
    return window_on(small_binder())


@pytest.fixture
def page(window: MainWindow) -> BuyingPage:
    window.show_page("buying")
    page = window.page("buying")
    assert isinstance(page, BuyingPage)
    return page


def current(view: SheetView) -> str:
    row = view.current_row()
    assert row is not None
    return row.key


def click(view: SheetView, row: str, column: str) -> None:
    at = view.sheet_model.row_numbered(row)
    assert at is not None
    view.scrollTo(view.sheet_model.index(at, 0))
    middle = view.visualRect(view.sheet_model.index(at, column_of(view, column))).center()
    QTest.mouseClick(view.viewport(), Qt.MouseButton.LeftButton, pos=QPoint(middle))


def test_a_click_on_the_box_ticks_and_another_lets_it_be_open(window: MainWindow, page: BuyingPage) -> None:
    click(page.list, ROW, "tick")
    assert [one.food for one in window.desk.binder.purchases.values()] == ["tahini"]
    click(page.list, ROW, "tick")
    assert not window.desk.binder.purchases


@pytest.mark.parametrize("key", [Qt.Key.Key_Return, Qt.Key.Key_Space])
def test_a_key_ticks_too_and_undo_looks_at_the_line(window: MainWindow, page: BuyingPage, key: Qt.Key) -> None:
    page.list.select_key(ROW, 0)
    page.list.setFocus()
    QTest.keyClick(page.list, key)
    assert len(window.desk.binder.purchases) == 1
    assert current(page.list) == ROW
    window.show_page("larder")
    window.actions_.run("undo")
    assert not window.desk.binder.purchases
    assert window.shown == "buying"
    assert current(page.list) == ROW
    assert page.list.hasFocus()
    window.actions_.run("redo")
    assert current(page.list).startswith("bought:")


def test_what_is_paid_is_typed_in_place_and_the_caps_follow(window: MainWindow, page: BuyingPage) -> None:
    assert not page.as_bought.isVisible()
    type_over(page.list, ROW, "paid", "12")
    assert shown(page.list, "total", "paid") == "$12.00"
    assert page.as_bought.isVisible()
    assert "1 Bean spread" in page.as_bought.text()
    window.actions_.run("undo")
    assert not page.as_bought.isVisible()


def test_why_this_pack_is_said_of_the_current_row(page: BuyingPage) -> None:
    page.list.select_key(ROW)
    assert page.why.text() == "tahini: no other pack of it has a price."
    page.show_part(STORES)
    assert not page.why.isVisible()


def test_a_price_undone_while_the_list_is_looked_at_stays_there(window: MainWindow, page: BuyingPage) -> None:
    type_over(page.list, ROW, "price", "7.77")
    window.actions_.run("undo")
    assert window.shown == "buying"
    assert current(page.list) == ROW


def test_each_part_is_gone_to(window: MainWindow, page: BuyingPage) -> None:
    binder = window.desk.binder
    change, item = add_pantry_item(binder, binder.shoots["day"], binder.foods["flour"], amount=200)
    assert window.desk.make(change)
    window.go_to(Place("pantry_items", item.id))
    assert page.parts.current == HOME
    assert current(page.home) == f"pantry_items:{item.id}"
    window.go_to(Place("stores", "corner"))
    assert page.parts.current == STORES
    assert current(page.stores) == "stores:corner"


def test_undo_of_a_store_and_of_its_walk(window: MainWindow, page: BuyingPage) -> None:
    window.desk.make(set_store(window.desk.binder.stores["corner"], trip_cost=300))
    window.show_page("shoot")
    window.actions_.run("undo")
    assert window.shown == "buying"
    assert page.stores.hasFocus()
    window.desk.make(move_section(window.desk.binder.stores["corner"], "drinks", to=0))
    window.actions_.run("undo")
    assert page.walk.hasFocus()


def test_the_way_through_a_store_is_moved_by_keys(window: MainWindow, page: BuyingPage) -> None:
    page.show_part(STORES)
    page.walk.select_key("section:meat")
    page.walk.setFocus()
    window.actions_.run("move_up")
    assert window.desk.binder.stores["corner"].sections[:2] == ("meat", "produce")
    assert current(page.walk) == "section:meat"


def test_what_is_at_home_is_begun_in_place(window: MainWindow, page: BuyingPage) -> None:
    page.show_part(HOME)
    type_over(page.home, "add:home", "food", "1 kg flour")
    assert [one.food for one in window.desk.binder.pantry_items.values()] == ["flour"]


def test_a_day_typed_above_the_list_is_undone_there(window: MainWindow, page: BuyingPage) -> None:
    trip = next(key for key in keys(page.list) if key.startswith("trip:"))
    type_over(page.list, trip, "food", "2026-11-30")
    assert "trip:corner/2026-11-30" in keys(page.list)
    window.desk.go_to(Place("trips", next(iter(window.desk.binder.trips))))
    assert page.parts.current == LIST
    assert current(page.list) == "trip:corner/2026-11-30"
    window.actions_.run("undo")
    assert not window.desk.binder.trips
    assert window.shown == "buying"


def keys(view: SheetView) -> list[str]:
    return [view.row_at(at).key for at in range(view.sheet_model.rowCount())]


def test_nothing_scrolls_sideways_on_a_laptop(window: MainWindow, page: BuyingPage, qtbot: QtBot) -> None:
    window.resize(1100, 720)
    views: list[SheetView] = page.findChildren(SheetView)

    def fits() -> bool:
        return all(view.horizontalScrollBar().maximum() == 0 for view in views if view.isVisible())

    for part in (LIST, HOME, STORES):
        page.show_part(part)
        assert any(view.isVisible() for view in views)
        qtbot.waitUntil(fits)


@pytest.mark.parametrize("ending", [".xlsx", ".csv", ".txt", ".pdf"])
def test_the_list_is_saved_as_what_is_asked_for(
    window: MainWindow, page: BuyingPage, answers: Answers, qtbot: QtBot, tmp_path: Path, ending: str
) -> None:
    answers.file = tmp_path / f"list{ending}"
    with qtbot.waitSignal(window.desk.said, timeout=20_000) as said:
        QTest.mouseClick(page.files.keep, Qt.MouseButton.LeftButton)
    assert str(answers.file) in said.args[0]
    begins = {".xlsx": b"PK", ".csv": b"\xef\xbb\xbfday", ".txt": b"Shopping for", ".pdf": b"%PDF"}
    assert answers.file.read_bytes().startswith(begins[ending])


def test_a_kind_of_file_that_no_list_is_written_as_is_said(
    window: MainWindow, page: BuyingPage, answers: Answers, qtbot: QtBot, tmp_path: Path
) -> None:
    answers.file = tmp_path / "list.doc"
    with qtbot.waitSignal(window.desk.said) as said:
        window.actions_.run("export_shopping")
    assert "list.doc" in said.args[0]
    assert not answers.file.exists()


def test_the_list_is_copied_as_text(page: BuyingPage) -> None:
    QTest.mouseClick(page.files.copy, Qt.MouseButton.LeftButton)
    assert QApplication.clipboard().text().startswith("Shopping for Bean day")


def _never_in_the_window(*_asked: object) -> str:
    pytest.fail("the search was made in the window's own time")


def test_a_long_search_shows_how_far_it_is_and_can_be_stopped(
    window: MainWindow, page: BuyingPage, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    begun, go_on = threading.Event(), threading.Event()

    def slow(binder: Binder, shoot: str) -> BuyingFigures:
        for _part in told(range(4)):
            begun.set()
            go_on.wait(20)
        return buying_figures(binder, shoot)

    monkeypatch.setattr(page._figures, "_figure", slow)
    monkeypatch.setattr(page._figures, "_is_quick", lambda _binder, _shoot: False)
    before = page.list.sheet_model.rowCount()
    page.list.select_key(ROW)
    why = page.why.text()
    assert why
    monkeypatch.setattr("binder.desktop.buying_page.page.why_text", _never_in_the_window)
    page.refresh()
    assert page.why.text() == why
    qtbot.waitUntil(page.wait.isVisible, timeout=20_000)
    assert begun.wait(20)
    QTest.mouseClick(page.wait.stop, Qt.MouseButton.LeftButton)
    go_on.set()
    assert not page.wait.isVisible()
    assert page.again.isVisible()
    assert page.list.sheet_model.rowCount() == before
    monkeypatch.undo()
    with qtbot.waitSignal(
        page._figures.changed, timeout=20_000, check_params_cb=lambda: not page._figures.latest.stale
    ):
        QTest.mouseClick(page.again, Qt.MouseButton.LeftButton)
    assert not page.again.isVisible()


def test_what_is_ticked_next_stays_under_the_hand(window_on: MakeWindow, chickpeas: Binder, qtbot: QtBot) -> None:
    window = window_on(chickpeas)
    window.resize(1100, 500)
    window.show_page("buying")
    page = window.page("buying")
    assert isinstance(page, BuyingPage)
    qtbot.waitUntil(lambda: page.list.sheet_model.rowCount() > 12)
    model = page.list.sheet_model
    rows = [model.row_at(at).key for at in range(model.rowCount()) if model.row_at(at).key.startswith("buy:")]
    page.list.select_key(rows[6], 0)
    for ticked, following in ((rows[4], rows[5]), (rows[5], rows[6]), (rows[4], rows[5])):
        top = page._top_of(following)
        page.list.place_asked.emit(Place(TICKS, ticked))
        assert page._top_of(following) == top
    bar = page._areas[LIST].verticalScrollBar()
    bar.setValue(bar.value() + page._top_of(rows[6]))
    page.list.place_asked.emit(Place(TICKS, rows[6]))
    assert page._top_of(rows[6]) >= 0
