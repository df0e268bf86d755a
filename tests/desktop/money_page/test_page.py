"""The page of money in the window: a repair is one press and one undo; claims, lines and prices are edited in place."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from binder.desktop.actions import without_access_key
from binder.desktop.main_window import MainWindow
from binder.desktop.money_page.claim_rows import SUM
from binder.desktop.money_page.page import MoneyPage
from binder.exchange.json_document import read_json
from binder.figures.cost import Verdict, dish_cost
from binder.figures.missing import Place
from binder.figures.price import chosen_pack
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.claim import ClaimKind
from binder.kitchen.edits.buying import tick
from binder.kitchen.edits.money import add_budget_line, add_claim
from binder.kitchen.edits.shoots import add_shoot, set_dish, set_shoot
from binder.kitchen.paths import samples_folder
from tests.desktop.conftest import Answers, MakeWindow
from tests.desktop.editing import shown, type_over

SOON = 20_000


def money_page(window: MainWindow, qtbot: QtBot) -> MoneyPage:
    window.show_page("money")
    page = window.page("money")
    assert isinstance(page, MoneyPage)
    settle(page, qtbot)
    return page


def settle(page: MoneyPage, qtbot: QtBot) -> None:
    """Until nothing is being worked out any more."""
    subjects = ("budget", "judged", "what if", "sides")
    qtbot.waitUntil(lambda: not any(page.desk.tasks.busy(one) for one in subjects), timeout=SOON)


@pytest.fixture
def page(window: MainWindow, qtbot: QtBot) -> MoneyPage:
    return money_page(window, qtbot)


@pytest.mark.parametrize("sample", ["chickpeas", "four_birds"])
def test_the_samples_show_their_money(window_on: MakeWindow, qtbot: QtBot, sample: str) -> None:
    binder = read_json(samples_folder() / f"{sample}.json")
    page = money_page(window_on(binder), qtbot)
    assert page.budget.sheet_model.rowCount() > 10
    assert page.chart.sheet_model.rowCount() > 5
    assert page.caps.table.sheet_model.rowCount() == len(binder.dishes) + 1


def test_the_first_repair_of_the_sample_is_one_press_and_one_undo(window_on: MakeWindow, qtbot: QtBot) -> None:
    sample = read_json(samples_folder() / "chickpeas.json")
    window = window_on(sample)
    page = money_page(window, qtbot)
    dish = page.caps.dish
    assert dish is not None
    assert dish_cost(sample, dish).verdict is Verdict.OVER
    assert page.caps.ways.title.text() == "Midnight Mousse is over its cap. Any one of these brings it under:"
    QTest.mouseClick(page.caps.ways.buttons[0], Qt.MouseButton.LeftButton)
    assert dish_cost(window.desk.binder, dish).verdict is Verdict.WITHIN
    assert not page.caps.ways.isVisible()
    assert shown(page.caps.table, f"dishes:{dish}", "headroom").endswith("to spare")
    QTest.keyClick(window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert window.desk.binder == sample
    settle(page, qtbot)
    window.show_page("money")
    assert page.caps.dish == dish
    assert page.caps.ways.buttons[0].isEnabled()


def test_every_repair_of_the_sample_does_what_it_says(window_on: MakeWindow, qtbot: QtBot) -> None:
    sample = read_json(samples_folder() / "chickpeas.json")
    window = window_on(sample)
    page = money_page(window, qtbot)
    dish = page.caps.dish or ""
    for number in range(len(page.caps.ways.buttons)):
        page.caps.ways.buttons[number].click()
        assert dish_cost(window.desk.binder, dish).verdict is Verdict.WITHIN
        window.actions_.run("undo")
        window.show_page("money")
        settle(page, qtbot)


def test_a_dish_within_its_cap_has_no_ways_but_its_costs(page: MoneyPage, qtbot: QtBot) -> None:
    page.caps.table.select_key("dishes:dish_1")
    assert not page.caps.ways.isVisible()
    assert page.caps.costs.sheet_model.rowCount() > 3
    page.desk.make(set_dish(page.desk.binder, page.desk.binder.dishes["dish_1"], cap=1))
    settle(page, qtbot)
    assert "no single change brings it under" in page.caps.ways.title.text()


def test_a_claim_is_typed_judged_and_taken_back(window: MainWindow, page: MoneyPage, qtbot: QtBot) -> None:
    window.begin("money", "claim")
    QTest.keyClicks(window.focusWidget(), "Every plate under $2")
    QTest.keyClick(window.focusWidget(), Qt.Key.Key_Return)
    QTest.keyClick(window.focusWidget(), Qt.Key.Key_Escape)
    settle(page, qtbot)
    claim = next(iter(window.desk.binder.claims.values()))
    assert shown(page.claims, f"claims:{claim.id}", "margin") == "holds"
    type_over(page.claims, f"terms:{claim.id}", "target", "1.80")
    settle(page, qtbot)
    assert shown(page.claims, f"claims:{claim.id}", "margin") == "does not hold"
    window.actions_.run("undo")
    assert window.shown == "money"
    settle(page, qtbot)
    assert shown(page.claims, f"claims:{claim.id}", "margin") == "holds"


def test_the_sum_of_a_claim_unfolds_by_its_link(window: MainWindow, page: MoneyPage, qtbot: QtBot) -> None:
    window.desk.make(add_claim(page.desk.binder, page.desk.shoot, "Under", ClaimKind.PORTION_UNDER, target=200.0)[0])  # type: ignore[arg-type]
    settle(page, qtbot)
    claim = next(iter(window.desk.binder.claims))
    before = page.claims.sheet_model.rowCount()
    page.claims.place_asked.emit(Place(SUM, claim))
    assert page.claims.sheet_model.rowCount() > before + 5
    assert page.claims.sheet_model.row_numbered(f"{SUM}:{claim}#total") is not None
    page.claims.place_asked.emit(Place(SUM, claim))
    assert page.claims.sheet_model.rowCount() == before


def test_a_cost_beside_the_food_is_typed_and_seen_in_the_sum(window: MainWindow, page: MoneyPage) -> None:
    window.begin("money", "budget line")
    QTest.keyClicks(window.focusWidget(), "gas bottle, 2 × 4.50")
    QTest.keyClick(window.focusWidget(), Qt.Key.Key_Return)
    QTest.keyClick(window.focusWidget(), Qt.Key.Key_Escape)
    assert shown(page.budget, "total", "planned") == "$100.22"
    assert shown(page.head, "shoots:day", "room") == "$10.22 over"
    window.actions_.run("undo")
    assert window.shown == "money"
    assert shown(page.budget, "total", "planned") == "$91.22"


def test_what_is_found_and_checked_leads_here(window: MainWindow, page: MoneyPage, qtbot: QtBot) -> None:
    window.desk.make(add_budget_line(page.desk.binder, page.desk.shoot, "gas")[0])  # type: ignore[arg-type]
    line = next(iter(window.desk.binder.budget_lines))
    window.show_page("larder")
    window.go_to(Place("budget_lines", line))
    assert window.shown == "money"
    assert page.budget.selected_keys() == [f"budget_lines:{line}"]


def test_a_risen_price_is_only_asked(window: MainWindow, page: MoneyPage, qtbot: QtBot, chickpeas: Binder) -> None:
    page.what_if.line.field.setText("10")
    settle(page, qtbot)
    assert shown(page.what_if.table, "what if:dish_3", "state") == "$0.01 over"
    assert window.desk.binder is not None
    assert window.desk.binder == chickpeas
    assert without_access_key(window.actions_["undo"].text()) == "Undo"
    page.what_if.line.field.setText("a lot")
    assert page.what_if.line.wrong.isVisible()
    assert not page.what_if.table.isVisible()
    page.what_if.line.field.setText("")
    assert not page.what_if.line.wrong.isVisible()


def test_prices_of_receipts_go_into_the_book_by_one_change(window: MainWindow, page: MoneyPage, qtbot: QtBot) -> None:
    assert page.to_buying.isVisible()
    assert not page.take_prices.isVisible()
    binder, day = window.desk.binder, window.desk.shoot
    assert day is not None
    bought = tick(
        binder, day, binder.foods["tahini"], pack=binder.packs["pack_tahini"], count=1, planned=749, paid=799, on=day.on
    )
    window.desk.make(bought)
    ticked = window.desk.binder
    assert page.take_prices.isVisible()
    page.take_prices.click()
    priced = chosen_pack(window.desk.binder, "tahini")
    assert getattr(priced, "price", None) == 799
    assert not page.take_prices.isEnabled()
    assert page.take_prices.toolTip() == "The book has these prices already."
    window.actions_.run("undo")
    assert window.desk.binder == ticked


def test_two_shoots_stand_side_by_side_once_there_are_two(page: MoneyPage, qtbot: QtBot) -> None:
    assert not page.beside.line.isVisible()
    page.desk.make(add_shoot(page.desk.binder, "Second day")[0])
    settle(page, qtbot)
    assert page.beside.line.isVisible()
    assert page.beside.other.currentText() == "Second day"
    assert shown(page.beside.table, "total", "left") == "$91.22"


def test_a_shoot_on_terms_that_take_long_is_stale_until_it_is_there(
    window_on: MakeWindow, qtbot: QtBot, chickpeas: Binder
) -> None:
    tied = apply(chickpeas, set_shoot(chickpeas.shoots["day"], most_stores=2))
    window = window_on(tied)
    window.show_page("money")
    page = window.page("money")
    assert isinstance(page, MoneyPage)
    assert page.desk.tasks.busy("budget")
    assert shown(page.head, "shoots:day", "planned") == "…"
    settle(page, qtbot)
    assert shown(page.head, "shoots:day", "planned") == "$91.22"


def test_without_a_shoot_the_page_says_where_to_begin(window_on: MakeWindow, qtbot: QtBot) -> None:
    window = window_on(Binder())
    window.show_page("money")
    assert not window.page("money").begin("claim")


@pytest.mark.parametrize(
    ("sheet", "ending"), [("budget", ".pdf"), ("claims", ".pdf"), ("wrap", ".pdf"), ("wrap", ".xlsx")]
)
def test_the_money_is_saved_as_a_file(
    window: MainWindow, page: MoneyPage, answers: Answers, qtbot: QtBot, tmp_path: Path, sheet: str, ending: str
) -> None:
    desk, menu = window.desk, page.saving.actions
    assert [menu[one].isEnabled() for one in ("budget", "claims", "wrap")] == [True, False, False]
    shoot = desk.binder.shoots["day"]
    assert desk.make(add_claim(desk.binder, shoot, "All under ninety", ClaimKind.ALL_UNDER, target=9000.0)[0])
    assert desk.make(tick(desk.binder, shoot, desk.binder.foods["tahini"]))
    settle(page, qtbot)
    answers.file = tmp_path / f"money{ending}"
    with qtbot.waitSignal(desk.said, timeout=SOON) as said:
        menu[sheet].trigger()
    assert str(answers.file) in said.args[0]
    assert answers.file.read_bytes().startswith(b"%PDF" if ending == ".pdf" else b"PK")
