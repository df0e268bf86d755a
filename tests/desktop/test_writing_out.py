"""A small binder is written at once; a large one beside the window, in which nothing is changed meanwhile."""

from __future__ import annotations

import threading
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from binder.desktop import writing_out
from binder.desktop.document_bridge import WRITING, StillWritingError
from binder.desktop.main_window import MainWindow
from binder.desktop.writing_out import has_many_records, write_out
from binder.kitchen.binder import Binder
from binder.kitchen.edits.shoots import set_shoot
from binder.kitchen.errors import BinderError
from tests.desktop.conftest import Answers

FULL = "The disk is full. Choose another."


@pytest.fixture
def large(monkeypatch: pytest.MonkeyPatch) -> None:
    """Every binder counts as large."""
    monkeypatch.setattr(writing_out, "_LARGE", 0)


def fails() -> None:
    raise BinderError(FULL)


def test_a_sample_is_not_large(chickpeas: Binder, monkeypatch: pytest.MonkeyPatch) -> None:
    assert not has_many_records(chickpeas)
    monkeypatch.setattr(writing_out, "_LARGE", len(chickpeas.foods))
    assert has_many_records(chickpeas)


def test_a_small_one_is_written_at_once(window: MainWindow) -> None:
    threads: list[int] = []
    write_out(window.desk, lambda: threads.append(threading.get_ident()), lambda: threads.append(0))
    assert threads == [threading.get_ident(), 0]
    with pytest.raises(BinderError, match=FULL):
        write_out(window.desk, fails, lambda: threads.append(1))
    assert 1 not in threads


@pytest.mark.usefixtures("large")
def test_a_large_one_is_written_beside_the_window_and_not_changed(window: MainWindow, qtbot: QtBot) -> None:
    shoot, begun, threads, refused = window.desk.shoot, threading.Event(), list[int](), list[str]()
    assert shoot is not None
    window.desk.bridge.failed.connect(refused.append)

    def write() -> None:
        threads.append(threading.get_ident())
        begun.wait(10)

    write_out(window.desk, write, lambda: threads.append(0))
    assert not window.desk.make(set_shoot(shoot, name="Meanwhile"))
    write_out(window.desk, write, lambda: threads.append(1))
    begun.set()
    qtbot.waitUntil(lambda: not window.desk.tasks.busy(WRITING))
    assert threads[0] != threading.get_ident()
    assert threads[1:] == [0]
    assert refused == [StillWritingError().says] * 2
    assert window.desk.make(set_shoot(shoot, name="Afterwards"))


@pytest.mark.usefixtures("large")
def test_why_a_large_one_could_not_be_written_is_said(window: MainWindow, qtbot: QtBot) -> None:
    done: list[int] = []
    with qtbot.waitSignal(window.desk.said, check_params_cb=lambda says: says == FULL):
        write_out(window.desk, fails, lambda: done.append(1))
    assert done == []


@pytest.mark.usefixtures("large")
def test_a_large_one_goes_back_to_how_it_was_opened(window: MainWindow, qtbot: QtBot) -> None:
    before, shoot = window.desk.binder, window.desk.shoot
    assert shoot is not None
    window.desk.make(set_shoot(shoot, name="Another"))
    with qtbot.waitSignal(window.desk.changed):
        window.actions_.run("go_back")
    assert window.desk.binder == before


@pytest.mark.usefixtures("large")
def test_a_large_one_is_exported_and_that_is_said(
    window: MainWindow, answers: Answers, qtbot: QtBot, tmp_path: Path
) -> None:
    answers.file = tmp_path / "all.json"
    with qtbot.waitSignal(window.desk.said, check_params_cb=lambda says: "all.json" in says):
        window.actions_.run("export_json")
