"""The screen for the set: ticks by key and by tap are changes, timers ring, late is planned on, all read from afar."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from binder.desktop.day_page.bars import in_order
from binder.desktop.day_page.planning_work import Answer, Asked, Hearing
from binder.desktop.main_window import MainWindow
from binder.desktop.set_view.opening import open_on_set
from binder.desktop.set_view.set_window import SetWindow
from binder.figures.day_replan import BrokenHold
from binder.kitchen.binder import Binder
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.shoot import BuildState
from tests.desktop.conftest import MakeWindow
from tests.desktop.day_page.straight_plan import straight_answer
from tests.desktop.set_view.conftest import TurnedClock


def binder_of(stage: SetWindow) -> Binder:
    return stage.planning._desk.binder


def settle(stage: SetWindow, qtbot: QtBot) -> None:
    qtbot.waitUntil(lambda: not stage.planning.busy)


def until_due(stage: SetWindow, clock: TurnedClock) -> None:
    """Turn the clock to when something must start."""
    plan = stage.planning.plan
    assert plan is not None
    first = next(bar for bar in in_order(stage.bars) if not bar.filmed and bar.activity.build)
    clock.now = plan.asked.wall(first.start)
    stage.show_now()


def test_it_shows_the_clock_and_the_camera(stage: SetWindow, clock: TurnedClock) -> None:
    assert stage.clock.text == "7:00\u202fAM"
    clock.turn(minutes=3)
    stage.show_now()
    assert stage.clock.text == "7:03\u202fAM"
    assert stage.dish.text
    assert stage.coming.due is not None


def test_a_key_ticks_what_must_start_and_the_build_is_under_way(
    stage: SetWindow, clock: TurnedClock, qtbot: QtBot
) -> None:
    until_due(stage, clock)
    row = stage.due.rows[0].due
    assert row is not None
    clock.turn(minutes=2)
    QTest.keyClick(stage, Qt.Key.Key_1)
    pins = binder_of(stage).pins.where("shoot", "day")
    assert [(pin.target, pin.at, pin.done) for pin in pins] == [
        (stage.bars[row.key].target, clock.now.time(), True),
    ]
    assert binder_of(stage).builds[pins[0].build or ""].state is BuildState.UNDER_WAY
    settle(stage, qtbot)
    assert stage.bars[row.key].done
    assert all(one.due is None or one.due.key != row.key for one in stage.due.rows if one.isVisible())
    QTest.keyClick(stage, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert not binder_of(stage).pins.where("shoot", "day")
    assert binder_of(stage).builds[pins[0].build or ""].state is BuildState.PLANNED
    settle(stage, qtbot)


def test_a_tap_does_the_same(stage: SetWindow, clock: TurnedClock, qtbot: QtBot) -> None:
    until_due(stage, clock)
    assert stage.due.rows[0].height() >= 60
    QTest.mouseClick(stage.due.rows[0], Qt.MouseButton.LeftButton)
    assert len(binder_of(stage).pins) == 1
    settle(stage, qtbot)


def test_the_camera_goes_on_with_one_key(stage: SetWindow, clock: TurnedClock, qtbot: QtBot) -> None:
    filmed = [bar for bar in in_order(stage.bars) if bar.filmed]
    plan = stage.planning.plan
    assert plan is not None
    clock.now = plan.asked.wall(filmed[0].start - 1)
    stage.show_now()
    for bar in filmed[:2]:
        QTest.keyClick(stage, Qt.Key.Key_N)
        settle(stage, qtbot)
        assert stage.bars[bar.key].done
        assert stage.step.text.startswith(bar.activity.name)
    assert stage.coming.due is not None
    assert stage.coming.due.key == filmed[2].key


def test_a_swap_out_is_said_to_be_ready_once(stage: SetWindow, qtbot: QtBot) -> None:
    swap = stage.sight.swap_out if stage.sight is not None else None
    assert swap is not None
    QTest.keyClick(stage, Qt.Key.Key_S)
    assert binder_of(stage).builds[swap.build].state is BuildState.READY
    dish = dish_name(binder_of(stage), binder_of(stage).dishes[binder_of(stage).builds[swap.build].dish])
    assert stage.planning._desk.bridge.document.undo_label == f"The swap-out of {dish} is ready"
    settle(stage, qtbot)
    assert not stage.swap_out.isEnabled()


def test_a_timer_rings_until_it_is_heard(stage: SetWindow, clock: TurnedClock) -> None:
    sounds: list[str] = []
    stage.sound = lambda: sounds.append(stage.clock.text)
    plan = stage.planning.plan
    assert plan is not None
    bar = next(bar for bar in in_order(stage.bars) if bar.activity.build and 0 < bar.ready - bar.end < 120)
    clock.now = plan.asked.wall(bar.ready)
    clock.turn(seconds=-1)
    stage.show_now()
    others = len(sounds)
    clock.turn(seconds=1)
    stage.show_now()
    assert len(sounds) == others + 1
    assert any(line.solid for line in stage.timers.shown.lines)
    clock.turn(seconds=1)
    stage.show_now()
    assert len(sounds) == others + 1
    clock.turn(seconds=10)
    stage.show_now()
    assert len(sounds) == others + 2
    QTest.keyClick(stage, Qt.Key.Key_T)
    assert not any(line.solid for line in stage.timers.shown.lines)
    clock.turn(seconds=20)
    stage.show_now()
    assert len(sounds) == others + 2


def test_running_late_is_planned_on_and_says_what_breaks(stage: SetWindow, qtbot: QtBot) -> None:
    lates: list[float] = []

    def late(asked: Asked, hearing: Hearing) -> Answer:
        lates.append(asked.late)
        answer = straight_answer(asked)
        broken = (BrokenHold("a", "b", 15, "Fry of dish 2 would be 25 min old."),)
        return Answer(answer.plan, answer.question, broken, ("Lunch begins at 12:25.",))

    stage.planning.work = late
    assert not stage.late.plan.isEnabled()
    for _press in range(6):
        QTest.keyClick(stage, Qt.Key.Key_Plus)
    QTest.keyClick(stage, Qt.Key.Key_Minus)
    assert stage.late.plan.text() == "Running 25 min late: plan on"
    assert not lates
    QTest.keyClick(stage, Qt.Key.Key_L)
    settle(stage, qtbot)
    assert lates == [25.0]
    assert stage.says.text == "Fry of dish 2 would be 25 min old. And 1 more."
    assert stage.says.isVisible()
    assert stage.late.on_time.isVisible()
    stage.late.on_time.click()
    settle(stage, qtbot)
    assert not stage.late.on_time.isVisible()


def test_it_is_read_from_three_metres_on_a_large_screen_and_says_from_where_on_a_small_one(stage: SetWindow) -> None:
    stage.resize(2560, 1440)
    assert stage.metres == 3.0
    assert not stage.late.near.isVisible()
    stage.resize(1100, 620)
    assert stage.metres < 3.0
    assert stage.late.near.text() == f"read from {stage.metres:.1f} m on this screen"
    assert stage.height() == 620
    bottom = max(part.geometry().bottom() for part in (stage.swap_out, stage.timers, stage.safety))
    assert bottom <= 620


def test_what_does_not_fit_is_counted_and_type_stays_large(stage: SetWindow, clock: TurnedClock) -> None:
    until_due(stage, clock)
    due = stage.sight.due if stage.sight is not None else ()
    many = tuple(due) * 12
    stage.due.show_due(many, None)
    shown = [row for row in stage.due.rows if row.isVisible()]
    assert shown[-1].geometry().bottom() <= stage.due.height()
    assert stage.due.rest.text == f"and {len(many) - len(shown)} more"
    assert shown[0].font().pixelSize() == stage.coming.font().pixelSize()


def test_everything_that_takes_the_keyboard_has_a_name(stage: SetWindow, clock: TurnedClock) -> None:
    until_due(stage, clock)
    every: list[QWidget] = stage.findChildren(QWidget)
    for one in every:
        if one.isVisible() and one.focusPolicy() & Qt.FocusPolicy.TabFocus:
            assert QAccessible.queryAccessibleInterface(one).text(QAccessible.Text.Name).strip(), type(one)
            assert one.height() >= 24


def test_keys_do_nothing_where_there_is_nothing_to_do(window_on: MakeWindow, qtbot: QtBot) -> None:
    window = window_on(Binder())
    stage = SetWindow(window.desk, window, dots=96.0)
    stage.show()
    qtbot.waitExposed(stage)
    for key in (Qt.Key.Key_1, Qt.Key.Key_N, Qt.Key.Key_S, Qt.Key.Key_T, Qt.Key.Key_L, Qt.Key.Key_Plus):
        QTest.keyClick(stage, key)
    QTest.keyClick(stage, Qt.Key.Key_Escape)
    assert not stage.isVisible()


@pytest.mark.parametrize("dark", [False, True])
def test_it_paints_in_both_appearances(stage: SetWindow, clock: TurnedClock, dark: bool) -> None:
    until_due(stage, clock)
    if dark:
        window = stage.parent()
        assert isinstance(window, MainWindow)
        window.actions_.run("dark")
    image = stage.grab().toImage()
    middle = stage.coming.geometry().center().y()
    corner, colours = image.pixelColor(2, 2), {image.pixel(x, middle) for x in range(0, 1900, 3)}
    assert (corner.lightness() < 128) is dark
    assert len(colours) > 2


def test_there_is_one_screen_for_the_set(window: MainWindow) -> None:
    first = open_on_set(window.desk, window)
    assert open_on_set(window.desk, window) is first
    assert first.isFullScreen()
    first.close()
