"""While the window shows something new, work beside it waits; afterwards it does not."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QEvent, QObject
from PySide6.QtWidgets import QApplication, QLabel
from pytestqt.qtbot import QtBot

from binder.desktop.task_runner import TaskRunner
from binder.desktop.window_first import WindowFirst
from binder.kitchen import turns


@pytest.fixture
def first(qapp: QApplication) -> Iterator[WindowFirst]:
    parent = QObject(qapp)
    made = WindowFirst(parent)
    yield made
    made.stop()
    parent.deleteLater()


def window_goes_first() -> bool:
    return turns._first.thread is not None


def test_a_turn_lasts_until_nothing_more_waits_for_the_window(first: WindowFirst, qtbot: QtBot) -> None:
    assert not window_goes_first()
    first.take_turn()
    assert window_goes_first()
    qtbot.waitUntil(lambda: not window_goes_first())


def test_a_window_is_repainted_in_a_turn(first: WindowFirst, qtbot: QtBot) -> None:
    window = QLabel("flour")
    qtbot.addWidget(window)
    first.watch(window)
    QApplication.sendEvent(window, QEvent(QEvent.Type.UpdateRequest))
    assert window_goes_first()


def test_what_else_comes_to_a_window_takes_no_turn(first: WindowFirst, qtbot: QtBot) -> None:
    window = QLabel("flour")
    qtbot.addWidget(window)
    first.watch(window)
    QApplication.sendEvent(window, QEvent(QEvent.Type.StatusTip))
    assert not window_goes_first()


def test_an_outcome_is_shown_in_a_turn_and_a_closed_runner_leaves_none(qapp: QApplication, qtbot: QtBot) -> None:
    tasks, seen = TaskRunner(), list[bool]()
    tasks.finished.connect(lambda _outcome: seen.append(window_goes_first()))
    with qtbot.waitSignal(tasks.finished):
        tasks.run("sum", lambda _task: 1)
    tasks.window_first.take_turn()
    tasks.close()
    assert (seen, window_goes_first()) == ([True], False)
