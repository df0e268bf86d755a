"""The page of the base in the window: repairs that can be taken back, editors in place, nodes that lead to them."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QPushButton
from pytestqt.qtbot import QtBot

from binder.desktop.base_page.page import BasePage
from binder.desktop.main_window import MainWindow
from binder.desktop.shoot_page.page import ShootPage
from binder.figures.base import BaseVerdict, base_balance
from binder.figures.missing import Place
from binder.kitchen.binder import Binder
from binder.kitchen.edits.base import set_outcome
from binder.kitchen.edits.foods import set_food
from binder.kitchen.edits.shoots import set_shoot
from tests.desktop.conftest import MakeWindow
from tests.desktop.editing import editor_in, shown, type_over
from tests.kitchen_binder import small_binder
from tests.large_shoot import Size, large_shoot


def base_page(window: MainWindow) -> BasePage:
    window.show_page("base")
    page = window.page("base")
    assert isinstance(page, BasePage)
    return page


@pytest.fixture
def page(window: MainWindow) -> BasePage:
    """The chickpea day, 340 g short."""
    return base_page(window)


def titles(page: BasePage) -> list[str]:
    return [button.text() for button in page.standing.buttons]


def verdict(window: MainWindow) -> BaseVerdict:
    shoot = window.desk.shoot
    balance = base_balance(window.desk.binder, shoot.id) if shoot else None
    assert balance is not None
    return balance.verdict


def test_a_repair_is_one_press_and_one_undo(window: MainWindow, page: BasePage, chickpeas: Binder) -> None:
    assert page.standing.line.text().endswith("short by 340 g")
    assert page.standing.sentence.text().startswith("chickpeas, cooked is what runs out")
    buy = next(button for button in page.standing.buttons if button.text().startswith("Have 340 g more"))
    QTest.mouseClick(buy, Qt.MouseButton.LeftButton)
    assert verdict(window) is BaseVerdict.ENOUGH
    assert titles(page) == []
    window.actions_.run("undo")
    assert window.desk.binder == chickpeas
    assert page.standing.line.text().endswith("short by 340 g")


def test_undo_of_what_this_page_shows_stays_on_it(window: MainWindow, page: BasePage) -> None:
    type_over(page.forms, "foods:chickpeas_cooked", "keeps_days", "4 days")
    type_over(page.conversions, "conversions:cook", "lead", "90 min")
    assert window.desk.binder.conversions["cook"].lead_minutes == 90
    window.actions_.run("undo")
    assert window.shown == "base"
    window.actions_.run("undo")
    assert window.shown == "base"
    assert window.desk.binder.foods["chickpeas_cooked"].keeps_days is None


def test_what_cannot_be_read_is_said_where_it_is_typed(window: MainWindow, page: BasePage) -> None:
    before = window.desk.binder
    type_over(page.conversions, "outcomes:cooked", "ratio", "0")
    assert "something must come of it" in editor_in(page.conversions).note.says
    assert window.desk.binder is before


def test_a_form_in_the_picture_leads_to_its_row_and_a_dish_to_its_strip(window: MainWindow, page: BasePage) -> None:
    page.picture.nodes["chickpeas_cooked"].click()
    row = page.forms.current_row()
    assert row is not None
    assert row.key == "foods:chickpeas_cooked"
    assert page.forms.hasFocus()
    dish = next(node for node in page.picture.nodes.values() if node.text().startswith("3 "))
    dish.click()
    assert window.shown == "shoot"
    shoot = window.page("shoot")
    assert isinstance(shoot, ShootPage)
    assert shoot.order.selected_keys() == ["dishes:dish_3"]


def test_the_trials_are_those_of_the_conversion_chosen(window: MainWindow, page: BasePage) -> None:
    page.conversions.select_key("conversions:cook")
    assert list(page.trial_form.got) == ["chickpeas_cooked", "chickpea_cooking_liquid"]
    page.conversions.select_key("outcomes:soaked")
    assert list(page.trial_form.got) == ["chickpeas_soaked"]


def test_a_trial_is_recorded_from_the_form(window: MainWindow, page: BasePage) -> None:
    page.conversions.select_key("conversions:cook")
    form = page.trial_form
    form.on.setText("2026-10-30")
    form.taken.setText("500 g")
    form.got["chickpeas_cooked"].setText("530 g")
    QTest.keyClick(form.got["chickpeas_cooked"], Qt.Key.Key_Return)
    trial = next(iter(window.desk.binder.trials.values()))
    assert (trial.taken, trial.on.isoformat()) == (500, "2026-10-30")
    assert window.desk.binder.outcomes["cooked"].ratio == pytest.approx(1.06)
    assert shown(page.trials, f"trials:{trial.id}", "ratio") == "1.06"
    assert (form.taken.text(), form.wrong.isVisible()) == ("", False)
    window.actions_.run("undo")
    assert window.shown == "base"
    assert not window.desk.binder.trials


def test_a_trial_that_is_amiss_is_said_beside_its_fields(window: MainWindow, page: BasePage) -> None:
    page.trial_form.taken.setText("2 cups")
    page.trial_form.button.click()
    assert "write a weight" in page.trial_form.wrong.text()
    assert page.trial_form.taken.text() == "2 cups"
    assert not window.desk.binder.trials


def test_places_of_forms_conversions_and_trials_are_shown_here(window: MainWindow) -> None:
    for place in (Place("conversions", "cook"), Place("outcomes", "liquid"), Place("additions", "soak_water")):
        window.show_page("shoot")
        window.go_to(place)
        assert window.shown == "base"
        page = base_page(window)
        row = page.conversions.current_row()
        assert row is not None
        assert row.key == f"{place.table}:{place.id}"


def test_a_conversion_of_no_shoots_base_is_shown_in_the_larder(window_on: MakeWindow) -> None:
    window = window_on(small_binder())
    window.desk.make(set_shoot(window.desk.binder.shoots["day"], base="onion"))
    window.go_to(Place("conversions", "cook"))
    assert window.shown == "larder"


@pytest.mark.parametrize(("action", "row"), [("add_form", "forms"), ("add_conversion", "conversions")])
def test_new_forms_and_conversions_are_begun_from_the_menu(window: MainWindow, action: str, row: str) -> None:
    assert window.actions_.run(action)
    assert window.shown == "base"
    assert editor_in(getattr(base_page(window), row)).isVisible()


def test_recording_a_trial_is_begun_from_the_menu(window: MainWindow) -> None:
    window.actions_.run("record_trial")
    assert base_page(window).trial_form.taken.hasFocus()


def test_without_a_base_one_sentence_and_one_button(window_on: MakeWindow) -> None:
    window = window_on(small_binder())
    window.desk.make(set_shoot(window.desk.binder.shoots["day"], base=None))
    page = base_page(window)
    buttons = [button for button in page.findChildren(QPushButton, "begin") if button.isVisible()]
    assert [button.text() for button in buttons] == ["Choose the base ingredient"]
    buttons[0].click()
    assert window.shown == "shoot"


def test_an_empty_binder_has_the_page_too(window_on: MakeWindow) -> None:
    page = base_page(window_on(Binder()))
    assert any(button.isVisible() for button in page.findChildren(QPushButton, "begin"))


def test_two_ways_are_weighed_beside_the_window_and_editors_follow_at_once(window_on: MakeWindow, qtbot: QtBot) -> None:
    window = window_on(large_shoot(Size(dishes=6, kilograms=400.0)))
    page = base_page(window)
    qtbot.waitUntil(lambda: not window.desk.tasks.busy("base"))
    before = page.standing.line.text()
    assert "left" in before
    outcome = window.desk.binder.outcomes["soak/0"]
    window.desk.make(set_outcome(window.desk.binder, outcome, ratio=1.9))
    assert shown(page.conversions, "outcomes:soak/0", "ratio") == "1.90"
    assert page.standing.line.text() == f"{before}  ·  being worked out again"
    qtbot.waitUntil(lambda: not window.desk.tasks.busy("base"))
    after = page.standing.line.text()
    assert "worked out" not in after
    assert after != before


def test_the_last_of_several_quick_edits_is_the_one_shown(window_on: MakeWindow, qtbot: QtBot) -> None:
    window = window_on(large_shoot(Size(dishes=6, kilograms=400.0)))
    page = base_page(window)
    for kilograms in (300.0, 200.0, 100.0):
        window.desk.make(set_shoot(window.desk.binder.shoots["day"], base_amount=kilograms))
    qtbot.waitUntil(lambda: not window.desk.tasks.busy("base"))
    assert "there is 100 kg" in page.standing.line.text()


def test_more_ways_are_unfolded(window_on: MakeWindow, qtbot: QtBot) -> None:
    window = window_on(large_shoot(Size(dishes=12, kilograms=24.2)))
    page = base_page(window)
    qtbot.waitUntil(lambda: not window.desk.tasks.busy("base"))
    folded = titles(page)
    assert folded[-1].endswith("more ways")
    page.standing.buttons[-1].click()
    assert len(titles(page)) > len(folded)
    assert not titles(page)[-1].endswith("more ways")


def test_names_with_an_ampersand_are_whole_in_buttons_and_nodes(window_on: MakeWindow) -> None:
    window = window_on(small_binder())
    window.desk.make(set_food(window.desk.binder.foods["beans"], name="beans & peas"))
    window.desk.make(set_shoot(window.desk.binder.shoots["day"], base_amount=0.2))
    page = base_page(window)
    assert any("beans && peas" in title for title in titles(page))
    assert "beans & peas" in page.picture.nodes["beans"].accessibleName()
