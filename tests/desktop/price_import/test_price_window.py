"""Bringing in a price list: columns are guessed and chosen, every row's fate is seen, all of it is one change."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import openpyxl
import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from binder.desktop.larder_page.page import LarderPage
from binder.desktop.main_window import MainWindow
from binder.desktop.price_import.fate_model import FATE, SAYS, STANDS
from binder.desktop.price_import.price_window import PriceWindow
from tests.desktop.conftest import Answers

pytestmark = pytest.mark.qt_log_ignore("does not support propagateSizeHints")

GOOD = "food,pack size,price,date\nTahini,16 oz,8.25,2026-03-01\nOnion,1 lb,1.99,2026-03-02\n"
MIXED = GOOD + "No such food,1 lb,1.00,2026-03-01\nGarlic,100 g,abc,2026-03-01\n"
Begin = Callable[[str], PriceWindow]


@pytest.fixture
def begin(window: MainWindow, answers: Answers, tmp_path: Path, qtbot: QtBot) -> Begin:
    """Has a list of prices brought in, and waits until it is read."""

    def bring_in(text: str) -> PriceWindow:
        answers.file = tmp_path / "prices.csv"
        answers.file.write_text(text, encoding="utf-8")
        window.show_page("larder")
        page = window.page("larder")
        assert isinstance(page, LarderPage)
        QTest.mouseClick(page.bring_in, Qt.MouseButton.LeftButton)
        found = page.findChildren(PriceWindow)[-1]
        settled(qtbot, found)
        return found

    return bring_in


def settled(qtbot: QtBot, shown: PriceWindow) -> None:
    qtbot.waitUntil(shown.wait.isHidden, timeout=20_000)


def column(shown: PriceWindow, at: int) -> list[str]:
    return [str(shown.fates.index(row, at).data()) for row in range(shown.fates.rowCount())]


def choose(shown: PriceWindow, name: str, title: str) -> None:
    """Choose a column as a person does who has opened its list."""
    box = shown.mapper.choices[name]
    at = next(at for at in range(box.count()) if box.itemText(at).startswith(title))
    box.setCurrentIndex(at)
    box.activated.emit(at)


def test_a_good_list_is_shown_and_taken_as_one_change(begin: Begin, window: MainWindow, qtbot: QtBot) -> None:
    before = window.desk.binder
    shown = begin(GOOD)
    assert [shown.mapper.choices[name].currentText() for name in ("food", "price", "store")] == [
        "A: food",
        "C: price",
        "– not in the list",
    ]
    assert column(shown, FATE) == ["+ new", "+ new"]
    assert column(shown, STANDS)[0] == "Tahini · 16 oz · 8.25 · 2026-03-01"
    assert "2 prices are taken" in shown.summary.text()
    assert shown.take.isEnabled()
    with qtbot.waitSignal(window.desk.changed):
        QTest.mouseClick(shown.take, Qt.MouseButton.LeftButton)
    assert sorted(quote.price for quote in window.desk.binder.quotes.values() if quote.source == "prices.csv") == [
        199,
        825,
    ]
    qtbot.waitUntil(lambda: not window.page("larder").findChildren(PriceWindow))
    assert window.desk.bridge.document.undo_label == "Import 2 prices"
    window.desk.bridge.undo()
    assert window.desk.binder == before


def test_a_refused_row_holds_up_the_list_until_it_is_left_out(begin: Begin, qtbot: QtBot, window: MainWindow) -> None:
    shown = begin(MIXED)
    assert column(shown, FATE) == ["◣ refused", "◣ refused", "+ new", "+ new"]
    assert "No such food" in column(shown, SAYS)[0]
    assert not shown.take.isEnabled()
    assert "2 rows are refused" in shown.summary.text()
    shown.good_rows.click()
    settled(qtbot, shown)
    assert shown.take.isEnabled()
    with qtbot.waitSignal(window.desk.changed):
        shown.take.click()
    assert sum(quote.source == "prices.csv" for quote in window.desk.binder.quotes.values()) == 2


def test_a_rows_sentence_is_said_whole_where_the_table_has_no_room(begin: Begin) -> None:
    shown = begin(MIXED)
    assert shown.row_says.text() == ""
    shown.table.selectRow(1)
    assert shown.row_says.text() == "Row 5: “abc” is not a price: write a number such as 3.49."
    shown.only.setCurrentIndex(1)
    shown.only.activated.emit(1)
    assert shown.row_says.text() == ""


def test_rows_of_one_fate_are_looked_at_alone(begin: Begin) -> None:
    shown = begin(MIXED)
    offered = [shown.only.itemText(at) for at in range(shown.only.count())]
    assert offered == ["All 4 rows", "+ new: 2", "◣ refused: 2"]
    shown.only.setCurrentIndex(2)
    shown.only.activated.emit(2)
    assert column(shown, FATE) == ["◣ refused", "◣ refused"]


def test_columns_without_headings_are_chosen_by_hand(begin: Begin, qtbot: QtBot) -> None:
    shown = begin("16 oz,8.25,Tahini\n1 lb,1.99,Onion\n")
    assert not shown.take.isEnabled()
    assert "none of its columns is called “food”" in shown.summary.text()
    assert column(shown, STANDS) == ["16 oz · 8.25 · Tahini", "1 lb · 1.99 · Onion"]
    assert not shown.only.isEnabled()
    for name, title in (("food", "C"), ("pack size", "A"), ("price", "B")):
        choose(shown, name, title)
        settled(qtbot, shown)
    assert column(shown, FATE) == ["+ new", "+ new"]
    assert shown.take.isEnabled()


def test_prices_without_a_date_are_of_the_day_typed(begin: Begin, qtbot: QtBot, window: MainWindow) -> None:
    shown = begin("food,pack size,price\nTahini,16 oz,8.25\n")
    shown.day.setText("2026-02-03")
    shown.day.editingFinished.emit()
    settled(qtbot, shown)
    with qtbot.waitSignal(window.desk.changed):
        shown.take.click()
    (quote,) = [one for one in window.desk.binder.quotes.values() if one.source == "prices.csv"]
    assert quote.on.isoformat() == "2026-02-03"


def test_a_day_that_is_none_is_said_and_not_taken(begin: Begin, qtbot: QtBot) -> None:
    shown = begin("food,pack size,price\nTahini,16 oz,8.25\n")
    before = shown.question
    shown.day.setText("some day")
    shown.day.editingFinished.emit()
    assert "2026-11-06" in shown._day_wrong.text()
    assert shown.question == before
    shown.day.setText("")
    shown.day.editingFinished.emit()
    settled(qtbot, shown)
    assert column(shown, FATE) == ["◣ refused"]


def test_what_is_no_price_list_is_said(begin: Begin) -> None:
    shown = begin("")
    assert "it is empty" in shown.summary.text()
    assert not shown.take.isEnabled()
    shown.close()


def test_a_sheet_without_cells_leaves_no_rows_of_another_in_sight(
    window: MainWindow, tmp_path: Path, qtbot: QtBot
) -> None:
    book = openpyxl.Workbook()
    cells, _empty = book.active, book.create_sheet("Notes")
    assert cells is not None
    for row in (("food", "size", "price"), ("Tahini", "16 oz", 8.25)):
        cells.append(row)
    book.save(tmp_path / "prices.xlsx")
    window.show_page("larder")
    page = window.page("larder")
    assert isinstance(page, LarderPage)
    shown = page.import_from(tmp_path / "prices.xlsx")
    assert shown is not None
    settled(qtbot, shown)
    assert shown.fates.rowCount() == 1
    for at, rows, says in ((1, 0, "it is empty"), (0, 1, "1 price is taken")):
        shown.sheets.setCurrentIndex(at)
        shown.sheets.activated.emit(at)
        settled(qtbot, shown)
        assert (shown.fates.rowCount(), shown.take.isEnabled()) == (rows, bool(rows))
        assert says in shown.summary.text()
    shown.close()


def test_reading_can_be_stopped_and_begun_again(begin: Begin, qtbot: QtBot) -> None:
    shown = begin(GOOD)
    assert shown.again.isHidden()
    shown.wait.begin("Reading")
    QTest.mouseClick(shown.wait.stop, Qt.MouseButton.LeftButton)
    assert shown.wait.isHidden()
    assert "stopped" in shown.summary.text()
    QTest.mouseClick(shown.again, Qt.MouseButton.LeftButton)
    settled(qtbot, shown)
    assert shown.again.isHidden()
    assert shown.summary.text() == "2 prices are taken."
    assert shown.take.isEnabled()


def test_a_price_of_tomorrow_is_refused(begin: Begin) -> None:
    shown = begin("food,pack size,price,date\nTahini,16 oz,8.25,2999-01-01\n")
    assert column(shown, FATE) == ["◣ refused"]
    assert "still to come" in column(shown, SAYS)[0]


def test_a_store_that_is_not_known_is_offered_to_be_added(begin: Begin, window: MainWindow, qtbot: QtBot) -> None:
    shown = begin("food,store,pack size,price,date\nTahini,Hill farm,16 oz,8.25,2026-03-01\n")
    assert not shown.take.isEnabled()
    assert shown.new_stores.isVisible()
    assert shown.new_stores.text() == "Add the &store “Hill farm”"
    shown.new_stores.click()
    settled(qtbot, shown)
    assert shown.take.isEnabled()
    with qtbot.waitSignal(window.desk.changed):
        shown.take.click()
    assert "Hill farm" in {store.name for store in window.desk.binder.stores.values()}


def test_where_all_stores_are_known_none_is_offered(begin: Begin) -> None:
    assert not begin(MIXED).new_stores.isVisible()
