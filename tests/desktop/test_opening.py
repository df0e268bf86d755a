"""Binders are opened at once or beside the window, and nothing is left open that no one waits for."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QObject
from pytestqt.qtbot import QtBot

from binder.desktop import opening
from binder.desktop.document_bridge import Document, StillWritingError
from binder.desktop.file_doings import FileDoings
from binder.desktop.main_window import MainWindow
from binder.desktop.opening import Opened, first_opened, is_large, opened
from binder.desktop.task_runner import StoppedError, Task
from binder.kitchen.binder import Binder
from binder.kitchen.errors import BinderError
from binder.storage.document import OpenDocument
from tests.desktop.conftest import MemoryShelf

NO_ROOM = "There is no room for a backup."
SAMPLE, OTHER = Path("sample.json"), Path("other.binder")


@dataclass
class Watched(MemoryShelf):
    """A shelf whose documents tell when they are closed; `full`: no backup can be kept."""

    closed: list[Path] = field(default_factory=list)
    full: bool = False
    protected: bool = False

    def open(self, path: Path) -> Document:
        if path not in self.kept:
            raise BinderError(f"{path} is not there.")  # noqa: TRY003
        shelf = self

        class Document(OpenDocument):
            read_only = shelf.protected

            def close(self) -> None:
                shelf.closed.append(path)
                super().close()

        return Document.in_memory(self.kept[path])

    def back_up(self, document: Document) -> None:
        if self.full:
            raise BinderError(NO_ROOM)


@pytest.fixture
def shelf(chickpeas: Binder) -> Watched:
    return Watched({SAMPLE: chickpeas, OTHER: Binder()})


def test_a_document_is_opened_and_kept_a_backup_of(shelf: Watched) -> None:
    assert opened(shelf, OTHER).says == ""
    shelf.full = True
    assert opened(shelf, OTHER).says == NO_ROOM


def test_a_protected_one_is_not_backed_up_but_said(shelf: Watched) -> None:
    shelf.protected = shelf.full = True
    assert opened(shelf, OTHER).says.startswith("This file is write-protected")


@pytest.mark.parametrize(
    ("path", "recent", "found", "says"),
    [
        (OTHER, [SAMPLE], OTHER, ""),
        (None, [OTHER, SAMPLE], OTHER, ""),
        (None, [Path("gone.binder"), OTHER], SAMPLE, ""),
        (None, [], SAMPLE, ""),
        (Path("gone.binder"), [OTHER], SAMPLE, "gone.binder is not there."),
    ],
)
def test_what_is_opened_first(shelf: Watched, path: Path | None, recent: list[Path], found: Path, says: str) -> None:
    first = first_opened(shelf, path, recent)
    assert (first.document.binder, first.says) == (shelf.kept[found], says)


def test_an_empty_binder_where_nothing_can_be_opened() -> None:
    first = first_opened(Watched(), Path("gone.binder"), [])
    assert (first.document.binder, first.says) == (Binder(), "gone.binder is not there.")


def test_only_a_large_file_is_read_beside(tmp_path: Path) -> None:
    small, large = tmp_path / "small", tmp_path / "large"
    small.write_bytes(b"x")
    large.write_bytes(bytes(2_000_001))
    assert (is_large(small), is_large(large), is_large(tmp_path / "gone")) == (False, True, False)


@pytest.fixture
def files(window: MainWindow, shelf: Watched, monkeypatch: pytest.MonkeyPatch) -> FileDoings:
    """Files of a window, on a shelf on which every binder is large."""
    monkeypatch.setattr("binder.desktop.file_doings.is_large", lambda _path: True)
    monkeypatch.setattr(window.files.opening, "_shelf", shelf)
    return window.files


def test_a_large_one_is_shown_once_it_is_read(files: FileDoings, window: MainWindow, qtbot: QtBot) -> None:
    before = window.desk.binder
    with qtbot.waitSignal(files.opened):
        files.open_path(OTHER)
        assert window.head.says.startswith("Opening other")
        assert window.desk.binder is before
    assert window.desk.binder == Binder()


def test_of_two_the_later_stays(files: FileDoings, window: MainWindow, qtbot: QtBot, chickpeas: Binder) -> None:
    with qtbot.waitSignals([files.opened, files.opened]):
        files.open_path(OTHER)
        files.open_path(SAMPLE)
    assert window.desk.binder == chickpeas


def test_why_one_cannot_be_opened_is_said_and_the_head_is_as_before(
    files: FileDoings, window: MainWindow, qtbot: QtBot
) -> None:
    before = window.head.says
    with qtbot.waitSignal(window.desk.said, check_params_cb=lambda says: says == "gone.binder is not there."):
        files.open_path(Path("gone.binder"))
    assert window.head.says == before


def test_what_is_read_for_no_one_is_closed_again(shelf: Watched, qapp: QObject) -> None:
    task = Task("opening", 1, lambda _report: None)
    task.cancelled.set()
    work: Callable[[Task], Any] = opening._reading(shelf, OTHER)
    with pytest.raises(StoppedError):
        work(task)
    assert shelf.closed == [OTHER]


def test_while_a_large_change_is_written_no_other_binder_takes_its_place(
    window: MainWindow, shelf: Watched, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = window.desk.binder
    monkeypatch.setattr(window.desk.bridge, "_writing", True)
    with pytest.raises(StillWritingError):
        window.files.show_opened(Opened(shelf.open(OTHER)))
    assert (window.desk.binder, shelf.closed) == (before, [OTHER])
