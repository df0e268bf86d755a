"""The page of the larder in the window."""

from __future__ import annotations

import pytest
from pytestqt.qtbot import QtBot

from binder.desktop.larder_page.page import LarderPage
from binder.desktop.main_window import MainWindow
from binder.desktop.sheet.sheet_view import SheetView
from binder.figures.missing import Place
from binder.kitchen.change import Change
from binder.kitchen.edits.buying import set_bundle
from binder.kitchen.edits.foods import pin_quote, set_food, set_pack
from tests.desktop.editing import column_of


@pytest.fixture
def page(window: MainWindow) -> LarderPage:
    page = window.page("larder")
    assert isinstance(page, LarderPage)
    return page


def undone_at(window: MainWindow, view: SheetView, change: Change) -> tuple[str, str]:
    """The row and the column looked at once a change, made from another page, is undone."""
    window.show_page("dishes")
    window.desk.make(change)
    window.actions_.run("undo")
    assert window.shown == "larder"
    assert view.hasFocus()
    row = view.current_row()
    assert row is not None
    return row.key, view.sheet_model.columns[view.currentIndex().column()].id


@pytest.mark.parametrize(
    ("fields", "row", "column"),
    [
        ({"order_days": 3}, "order_days", "value"),
        ({"yield_source": "weighed"}, "trim_yield", "source"),
        ({"allergens": ("milk",)}, "allergens", "value"),
    ],
)
def test_undo_of_a_fact_looks_at_it(
    window: MainWindow, page: LarderPage, fields: dict[str, object], row: str, column: str
) -> None:
    change = set_food(window.desk.binder.foods["onion"], **fields)
    assert undone_at(window, page.facts, change) == (row, column)
    assert page.title.text() == "onion"


def test_undo_of_a_name_looks_at_the_list(window: MainWindow, page: LarderPage) -> None:
    change = set_food(window.desk.binder.foods["onion"], name="brown onion")
    assert undone_at(window, page.list, change) == ("foods:onion", "name")


def test_undo_of_terms_looks_at_them(window: MainWindow, page: LarderPage) -> None:
    binder = window.desk.binder
    pack, quote = binder.packs["pack_tahini"], binder.quotes["quote_tahini"]
    assert undone_at(window, page.packs, set_pack(binder, pack, deposit=25)) == ("terms:pack_tahini", "store")
    assert undone_at(window, page.packs, set_bundle(binder, quote, packs=3, price=1500)) == (
        "terms:pack_tahini",
        "price",
    )
    assert undone_at(window, page.packs, pin_quote(binder, quote, pinned=True)) == ("packs:pack_tahini", "pinned")


def test_a_price_that_is_gone_to_stands_in_its_packs_row(window: MainWindow, page: LarderPage) -> None:
    window.go_to(Place("quotes", "quote_tahini"))
    row = page.packs.current_row()
    assert row is not None
    assert row.key == "packs:pack_tahini"
    assert page.packs.hasFocus()


def test_nothing_scrolls_sideways_on_a_laptop(window: MainWindow, page: LarderPage, qtbot: QtBot) -> None:
    window.show_page("larder")
    window.resize(1100, 720)
    parts = (page.list, page.packs, page.measures, page.facts)
    qtbot.waitUntil(lambda: all(view.horizontalScrollBar().maximum() == 0 for view in parts))
    assert column_of(page.packs, "pinned") == page.packs.sheet_model.columnCount() - 1
