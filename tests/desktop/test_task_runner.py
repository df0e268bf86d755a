"""Work off the window's thread: results come back once, stale ones never, and it stops when it is told to."""

from __future__ import annotations

import threading
from collections.abc import Iterator

import pytest
from pytestqt.qtbot import QtBot

from binder.desktop.task_runner import Lane, Outcome, Progress, StoppedError, Task, TaskRunner


@pytest.fixture
def runner(qtbot: QtBot) -> Iterator[TaskRunner]:
    made = TaskRunner()
    yield made
    made.close()


def test_a_result_comes_back_in_the_windows_thread(runner: TaskRunner, qtbot: QtBot) -> None:
    threads: list[int] = []

    def work(_task: Task) -> str:
        threads.append(threading.get_ident())
        return "laid out"

    with qtbot.waitSignal(runner.finished) as caught:
        runner.run("preview", work)
    assert caught.args[0] == Outcome("preview", 1, result="laid out")
    assert threads != [threading.get_ident()]
    assert not runner.busy("preview")


def test_an_error_comes_back_as_one(runner: TaskRunner, qtbot: QtBot) -> None:
    def work(_task: Task) -> None:
        raise ValueError

    with qtbot.waitSignal(runner.finished) as caught:
        runner.run("preview", work)
    assert isinstance(caught.args[0].error, ValueError)


def test_newer_work_overtakes_what_is_under_way(runner: TaskRunner, qtbot: QtBot) -> None:
    begun, go_on = threading.Event(), threading.Event()
    results: list[object] = []
    runner.finished.connect(lambda outcome: results.append(outcome.result))

    def slow(_task: Task) -> str:
        begun.set()
        go_on.wait(5)
        return "stale"

    runner.run("preview", slow)
    assert begun.wait(5)
    with qtbot.waitSignal(runner.finished):
        runner.run("preview", lambda _task: "fresh")
        go_on.set()
    assert results == ["fresh"]


def test_cancelled_work_stops_at_its_next_report(runner: TaskRunner, qtbot: QtBot) -> None:
    begun, stopped = threading.Event(), threading.Event()

    def work(task: Task) -> None:
        begun.set()
        try:
            while True:
                task.report(0.5)
        except StoppedError:
            stopped.set()
            raise

    runner.run("plan", work)
    assert begun.wait(5)
    runner.cancel("plan")
    assert stopped.wait(5)


def test_progress_is_between_nothing_and_all(runner: TaskRunner, qtbot: QtBot) -> None:
    said: list[object] = []
    runner.progressed.connect(said.append)
    with qtbot.waitSignal(runner.finished):
        runner.run("plan", lambda task: task.report(7.0))
    assert said == [Progress("plan", 1, 1.0)]


def test_closing_waits_for_the_thread(qtbot: QtBot) -> None:
    runner = TaskRunner()
    runner.run("preview", lambda _task: None)
    runner.close()
    assert not [thread for thread in threading.enumerate() if thread.name.startswith("binder-task")]


def test_long_work_holds_up_no_figure(runner: TaskRunner, qtbot: QtBot) -> None:
    begun, go_on = threading.Event(), threading.Event()

    def search(_task: Task) -> str:
        begun.set()
        go_on.wait(5)
        return "plan"

    runner.run("plan", search, lane=Lane.LONG)
    assert begun.wait(5)
    with qtbot.waitSignal(runner.finished) as caught:
        runner.run("cost", lambda _task: "cost")
    assert caught.args[0].result == "cost"
    with qtbot.waitSignal(runner.finished) as caught:
        go_on.set()
    assert caught.args[0].result == "plan"
