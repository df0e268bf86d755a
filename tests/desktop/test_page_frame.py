"""Parts of the frame: dividers, head, finder, strip, folded checks."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QToolButton

from binder.desktop.dividers import Divider
from binder.desktop.main_window import MainWindow
from binder.kitchen.edits.shoots import add_shoot, set_shoot
from tests.desktop.conftest import MakeWindow


def is_folded(window: MainWindow) -> bool:
    return window.checks.is_folded


def test_a_divider_leads_to_its_page(window: MainWindow) -> None:
    divider = window.dividers.findChild(Divider, "larder")
    assert divider is not None
    QTest.mouseClick(divider, Qt.MouseButton.LeftButton)
    assert window.shown == "larder"
    assert divider.isChecked()


def test_the_head_names_the_shoot_its_day_and_its_call(window: MainWindow) -> None:
    assert window.head.says == "One kilogram of chickpeas, Fri, Nov 6, 2026  ·  call 7:00\u202fAM"
    shoot = window.desk.binder.shoots["day"]
    window.desk.make(set_shoot(shoot, on=None, call=None))
    assert window.head.says.endswith("no date yet")


def test_of_several_shoots_one_is_chosen_in_the_head(window: MainWindow) -> None:
    assert not window.head.chooser.isVisible()
    change, other = add_shoot(window.desk.binder, "Pick-ups")
    window.desk.make(change)
    assert window.head.chooser.isVisible()
    assert window.desk.shoot is not None
    assert window.desk.shoot.id == "day"
    at = window.head.chooser.findData(other.id)
    window.head.chooser.setCurrentIndex(at)
    window.head.chooser.activated.emit(at)
    assert window.desk.shoot.id == other.id
    assert not window.foot.says.startswith("worst headroom: $")


def test_the_shoot_looked_at_stays_while_it_is_there(window: MainWindow) -> None:
    change, other = add_shoot(window.desk.binder, "Pick-ups")
    window.desk.make(change)
    window.desk.look_at_shoot(other.id)
    window.actions_.run("undo")
    assert window.desk.shoot is not None
    assert window.desk.shoot.id == "day"


def test_a_message_is_closed(window: MainWindow) -> None:
    window.frame.strip.say("Something.")
    close = window.frame.strip.findChild(QToolButton)
    assert close is not None
    QTest.mouseClick(close, Qt.MouseButton.LeftButton)
    assert window.frame.strip.says == ""


def test_folded_checks_still_say_how_many_need_someone(window: MainWindow) -> None:
    window.actions_.run("checks")
    assert is_folded(window)
    assert window.checks.tally.isVisible()
    assert window.checks.tally.accessibleName() == "Show the checks: 2 checks need you"
    QTest.mouseClick(window.checks.tally, Qt.MouseButton.LeftButton)
    assert not is_folded(window)
    assert window.checks.sheet.isVisible()


def test_the_checks_fold_by_themselves_where_the_window_is_narrow(window: MainWindow) -> None:
    window.resize(900, 700)
    assert is_folded(window)
    assert not window.desk.settings.checks_folded
    window.resize(1500, 900)
    assert not is_folded(window)


def test_folding_is_remembered(window: MainWindow, window_on: MakeWindow) -> None:
    window.actions_.run("checks")
    other = window_on(window.desk.binder)
    assert is_folded(other)


def test_escape_empties_the_finder(window: MainWindow) -> None:
    QTest.keyClicks(window.head.finder, "salt")
    QTest.keyClick(window.head.finder, Qt.Key.Key_Escape)
    assert window.head.finder.text() == ""
    assert not window.head.finder.found


def test_f3_goes_to_the_next_thing_found(window: MainWindow) -> None:
    QTest.keyClicks(window.head.finder, "herb fritters")
    QTest.keyClick(window.head.finder, Qt.Key.Key_Return)
    assert window.shown == "shoot"
    window.actions_.follow(window.available)
    QTest.keyClick(window, Qt.Key.Key_F3)
    assert window.shown == "dishes"
