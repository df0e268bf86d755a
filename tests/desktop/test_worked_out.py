"""A figure worked out beside the window: stale meanwhile, never of another record, never older than the last asked."""

from __future__ import annotations

import threading
from collections.abc import Iterator

import pytest
from PySide6.QtCore import QObject
from pytestqt.qtbot import QtBot

from binder.desktop.task_runner import TaskRunner
from binder.desktop.worked_out import WorkedOut
from binder.kitchen.binder import Binder


@pytest.fixture
def tasks() -> Iterator[TaskRunner]:
    runner = TaskRunner()
    yield runner
    runner.close()


def test_what_is_quick_is_there_at_once(tasks: TaskRunner, qtbot: QtBot) -> None:
    owner = QObject()
    worked = WorkedOut(tasks, "figure", lambda _binder, about: about.upper(), lambda _binder, _about: True, owner)
    with qtbot.waitSignal(worked.changed):
        worked.follow(Binder(), "day")
    assert (worked.latest.value, worked.latest.stale) == ("DAY", False)


def test_what_is_slow_is_stale_until_it_is_there(tasks: TaskRunner, qtbot: QtBot) -> None:
    owner, free = QObject(), threading.Event()
    counts = iter(range(10))

    def figure(_binder: Binder, about: str) -> str:
        free.wait(5)
        return f"{about} {next(counts)}"

    worked = WorkedOut(tasks, "figure", figure, lambda _binder, _about: False, owner)
    worked.follow(Binder(), "day")
    assert shown(worked) == (None, True)
    free.set()
    qtbot.waitUntil(lambda: not worked.latest.stale)
    assert shown(worked) == ("day 0", False)
    free.clear()
    worked.follow(Binder(), "day")
    assert shown(worked) == ("day 0", True)
    worked.follow(Binder(), "other day")
    assert shown(worked) == (None, True), "a figure of another record is not shown"
    free.set()
    qtbot.waitUntil(lambda: not worked.latest.stale)
    assert str(worked.latest.value).startswith("other day")


def shown(worked: WorkedOut[str]) -> tuple[str | None, bool]:
    return (worked.latest.value, worked.latest.stale)


def test_nothing_to_follow_is_nothing_to_wait_for(tasks: TaskRunner, qtbot: QtBot) -> None:
    owner = QObject()
    worked = WorkedOut(tasks, "figure", lambda _binder, about: about, lambda _binder, _about: False, owner)
    worked.follow(Binder(), None)
    assert (worked.latest.value, worked.latest.stale) == (None, False)
