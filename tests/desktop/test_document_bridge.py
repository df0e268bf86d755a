"""Qt's side of the open document."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QThread
from pytestqt.qtbot import QtBot

from binder.desktop.document_bridge import DocumentBridge
from binder.desktop.news_watch import NewsWatch
from binder.desktop.task_runner import TaskRunner
from binder.kitchen.binder import Binder
from binder.kitchen.edits.foods import remove_food
from binder.kitchen.edits.shoots import set_shoot
from binder.storage.document import OpenDocument


def bridge_on(binder: Binder) -> DocumentBridge:
    return DocumentBridge(OpenDocument.in_memory(binder))


def test_a_change_is_announced_once(chickpeas: Binder, qtbot: QtBot) -> None:
    bridge = bridge_on(chickpeas)
    with qtbot.waitSignal(bridge.changed) as caught:
        assert bridge.make(set_shoot(chickpeas.shoots["day"], cap=1))
    assert caught.args[0].label == "Edit One kilogram of chickpeas"
    assert bridge.binder.shoots["day"].cap == 1


def test_a_change_that_cannot_be_made_is_said(chickpeas: Binder, qtbot: QtBot) -> None:
    bridge = bridge_on(chickpeas)
    with qtbot.assertNotEmitted(bridge.changed), qtbot.waitSignal(bridge.failed) as caught:
        assert not bridge.make(remove_food(chickpeas, chickpeas.foods["tahini"]))
    assert "tahini" in caught.args[0]


def test_undo_and_redo_give_what_they_changed(chickpeas: Binder, qtbot: QtBot) -> None:
    bridge = bridge_on(chickpeas)
    bridge.make(set_shoot(chickpeas.shoots["day"], cap=1))
    undone = bridge.undo()
    assert undone is not None
    assert [edit.id for edit in undone.edits] == ["day"]
    assert bridge.redo() is not None
    assert bridge.redo() is None


def test_going_back_to_how_it_was_opened_is_a_change(chickpeas: Binder, qtbot: QtBot) -> None:
    bridge = bridge_on(chickpeas)
    bridge.make(set_shoot(chickpeas.shoots["day"], cap=1))
    assert bridge.go_back_to_opened()
    assert bridge.binder == chickpeas


def test_a_file_that_has_gone_is_said_once(chickpeas: Binder, qtbot: QtBot, tmp_path: Path) -> None:
    path = tmp_path / "gone.binder"
    bridge = DocumentBridge(OpenDocument.create(path, chickpeas))
    watch = NewsWatch(bridge, bridge)
    said: list[str] = []
    bridge.failed.connect(said.append)
    path.unlink()
    watch.look()
    assert len(said) == 1
    assert "gone.binder" in said[0]
    watch.stop()
    bridge.document.close()


def test_a_large_change_is_made_beside_the_window_and_announced_in_it(
    chickpeas: Binder, qtbot: QtBot, tmp_path: Path
) -> None:
    bridge, tasks = DocumentBridge(OpenDocument.create(tmp_path / "day.binder", chickpeas)), TaskRunner()
    said: list[str] = []
    seen: list[Binder] = []
    threads: list[bool] = []
    bridge.changed.connect(lambda _change: threads.append(QThread.isMainThread()))
    bridge.failed.connect(said.append)
    with qtbot.waitSignal(bridge.changed):
        bridge.make_beside(set_shoot(chickpeas.shoots["day"], cap=1), tasks, said.append, seen.append)
        assert not bridge.make(set_shoot(chickpeas.shoots["day"], cap=2))
        assert bridge.catch_up()
    assert said == ["A large change is being written. Wait until it is.", ""]
    assert (bridge.binder.shoots["day"].cap, threads) == (1, [True])
    assert seen == [bridge.binder]
    for move in (bridge.undo_beside, bridge.redo_beside, bridge.undo_beside):
        with qtbot.waitSignal(bridge.changed):
            move(tasks, said.append)
    assert bridge.binder == chickpeas
    assert bridge.make(set_shoot(chickpeas.shoots["day"], cap=3))
    tasks.close()
    bridge.document.close()


def test_a_large_change_that_cannot_be_made_is_said(chickpeas: Binder, qtbot: QtBot) -> None:
    bridge, tasks = bridge_on(chickpeas), TaskRunner()
    said: list[str] = []
    with qtbot.assertNotEmitted(bridge.changed), qtbot.waitSignal(tasks.finished):
        bridge.make_beside(remove_food(chickpeas, chickpeas.foods["tahini"]), tasks, said.append)
    assert len(said) == 1
    assert "tahini" in said[0]
    assert bridge.binder == chickpeas
    tasks.close()
