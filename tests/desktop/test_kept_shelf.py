"""The window on real files: kept at once, undone after a restart, shared with others."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QCoreApplication, QEvent
from pytestqt.qtbot import QtBot

from binder.desktop.appearance import Wardrobe
from binder.desktop.application import Surroundings, frame_window, make_window
from binder.desktop.first_opening import FirstOpening
from binder.desktop.kept_shelf import KeptShelf
from binder.desktop.main_window import MainWindow
from binder.desktop.window_settings import WindowSettings
from binder.exchange.json_document import read_json, write_json
from binder.kitchen.binder import Binder
from binder.kitchen.edits.shoots import add_shoot, set_shoot
from binder.storage.document import OpenDocument
from tests.desktop.conftest import Answers


@pytest.fixture
def around(settings: WindowSettings, answers: Answers, tmp_path: Path) -> Surroundings:
    return Surroundings(KeptShelf(tmp_path / "backups"), answers, settings)


@pytest.fixture
def day_file(tmp_path: Path, chickpeas: Binder) -> Path:
    path = tmp_path / "day.binder"
    OpenDocument.create(path, chickpeas).close()
    return path


class Windows:
    """Windows that are closed at the end."""

    def __init__(self, wardrobe: Wardrobe, around: Surroundings) -> None:
        self._wardrobe, self._around = wardrobe, around
        self.made: list[MainWindow] = []

    def open(self, path: Path | None) -> MainWindow:
        self.made.append(make_window(self._wardrobe, self._around, path))
        return self.made[-1]

    def frame(self) -> MainWindow:
        self.made.append(frame_window(self._wardrobe, self._around))
        return self.made[-1]

    def close(self) -> None:
        for window in self.made:
            window.close()
            window.deleteLater()
            QCoreApplication.sendPostedEvents(window, QEvent.Type.DeferredDelete)
        self.made.clear()


@pytest.fixture
def windows(qtbot: QtBot, wardrobe: Wardrobe, around: Surroundings) -> Iterator[Windows]:
    made = Windows(wardrobe, around)
    yield made
    made.close()


def test_an_edit_is_kept_at_once_and_undone_tomorrow(windows: Windows, day_file: Path, chickpeas: Binder) -> None:
    window = windows.open(day_file)
    assert window.windowTitle() == "Chickpea day – Binder"
    window.desk.make(set_shoot(window.desk.binder.shoots["day"], cap=99))
    windows.close()
    again = windows.open(day_file)
    assert again.desk.binder.shoots["day"].cap == 99
    assert again.actions_.run("undo")
    assert again.desk.binder == chickpeas


def test_what_another_window_changes_is_taken_in(windows: Windows, day_file: Path) -> None:
    one, other = windows.open(day_file), windows.open(day_file)
    other.desk.make(set_shoot(other.desk.binder.shoots["day"], name="Renamed by the other"))
    one.news.look()
    assert one.desk.binder.shoots["day"].name == "Renamed by the other"


def test_the_binder_opened_last_is_opened_first(windows: Windows, day_file: Path) -> None:
    windows.open(day_file)
    windows.close()
    assert windows.open(None).files.path == day_file


def test_without_any_the_first_sample_is_shown(windows: Windows) -> None:
    window = windows.open(None)
    assert window.files.path is None
    assert window.desk.binder.shoots
    assert not window.frame.strip.says


def test_a_file_that_is_no_binder_is_said_and_a_sample_shown(windows: Windows, tmp_path: Path) -> None:
    path = tmp_path / "notes.binder"
    path.write_text("milk, eggs")
    window = windows.open(path)
    assert "notes.binder" in window.frame.strip.says
    assert window.shown == "shoot"
    assert path.read_text() == "milk, eggs"


def test_a_new_binder_is_a_file(windows: Windows, answers: Answers, tmp_path: Path) -> None:
    window = windows.open(None)
    answers.file = tmp_path / "mine.binder"
    assert window.actions_.run("new")
    assert window.files.path == answers.file
    assert not window.desk.binder.shoots
    assert answers.file.exists()


def test_a_sample_is_kept_by_saving_a_copy(windows: Windows, answers: Answers, tmp_path: Path) -> None:
    window = windows.open(None)
    window.desk.make(set_shoot(window.desk.shoot, name="Ours now"))  # type: ignore[arg-type]
    answers.file = tmp_path / "ours.binder"
    assert window.actions_.run("copy_binder")
    windows.close()
    assert windows.open(answers.file).desk.shoot.name == "Ours now"  # type: ignore[union-attr]


def test_a_json_document_is_opened_and_written(
    windows: Windows, answers: Answers, tmp_path: Path, chickpeas: Binder
) -> None:
    path = tmp_path / "day.json"
    write_json(chickpeas, path)
    window = windows.open(path)
    assert window.desk.binder == chickpeas
    answers.file = tmp_path / "out.json"
    assert window.actions_.run("export_json")
    assert read_json(answers.file) == chickpeas


def test_the_frame_is_there_before_the_binder(
    windows: Windows, around: Surroundings, day_file: Path, qtbot: QtBot
) -> None:
    window = windows.frame()
    window.show()
    FirstOpening(window, around.shelf, day_file)
    assert window.shown == ""
    assert not window.desk.make(add_shoot(Binder(), "Too soon")[0])
    assert "still being opened" in window.frame.strip.says
    with qtbot.waitSignal(window.files.opened, timeout=10_000):
        pass
    assert window.shown == "shoot"
    assert window.files.path == day_file


def test_a_backup_of_the_day_is_opened_and_stays_as_it_is(
    windows: Windows, answers: Answers, day_file: Path, chickpeas: Binder
) -> None:
    window = windows.open(day_file)
    window.desk.make(set_shoot(window.desk.binder.shoots["day"], cap=1))
    answers.place = 0
    assert window.actions_.run("backups")
    assert window.desk.binder == chickpeas
    assert window.files.path is None
    window.desk.make(set_shoot(window.desk.binder.shoots["day"], cap=2))
    windows.close()
    again = windows.open(day_file)
    assert again.desk.binder.shoots["day"].cap == 1
    again.actions_.run("backups")
    assert again.desk.binder == chickpeas


def test_what_can_be_read_of_a_damaged_binder_is_shown_with_what_was_lost(
    windows: Windows, answers: Answers, day_file: Path
) -> None:
    content = bytearray(day_file.read_bytes())
    content[len(content) // 2 : len(content) // 2 + 4096] = bytes(4096)
    day_file.write_bytes(content)
    window = windows.open(day_file)
    assert "damaged" in window.frame.strip.says
    answers.file = day_file
    assert window.actions_.run("open_damaged")
    assert window.desk.binder.foods
    assert window.frame.strip.says.startswith("Lost: ")
    assert window.frame.strip.says.endswith("Save a copy to keep what was read.")
    assert day_file.read_bytes() == content
