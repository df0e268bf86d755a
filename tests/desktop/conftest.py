"""What tests of the window work with: our face and style, a binder worth looking at, and answers for dialogs."""

from __future__ import annotations

import gc
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path

import pytest
from PySide6.QtCore import QCoreApplication, QEvent
from PySide6.QtPdf import QPdfDocument
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from binder.desktop.appearance import Wardrobe
from binder.desktop.application import Surroundings, dress_application, make_window
from binder.desktop.document_bridge import Document
from binder.desktop.main_window import MainWindow
from binder.desktop.printing import Wanted
from binder.desktop.window_settings import WindowSettings
from binder.kitchen.binder import Binder
from binder.kitchen.errors import BinderError
from binder.storage.document import OpenDocument
from tests.desktop.chickpea_day import chickpea_day


@dataclass
class Answers:
    """Dialogs that answer what a test has put in, and remember what they were asked."""

    file: Path | None = None
    place: int | None = None
    asked: list[str] = field(default_factory=list)
    printed: list[int] = field(default_factory=list)
    wanted: list[Wanted] = field(default_factory=list)

    def file_to_open(self, window: QWidget) -> Path | None:
        self.asked.append("open")
        return self.file

    def price_list_to_read(self, window: QWidget) -> Path | None:
        self.asked.append("price list")
        return self.file

    def file_to_make(self, window: QWidget, title: str, suggestion: str, kinds: str) -> Path | None:
        self.asked.append(suggestion)
        return self.file

    def folder(self, window: QWidget, title: str) -> Path | None:
        self.asked.append(title)
        return self.file

    def choice(self, window: QWidget, title: str, question: str, choices: Sequence[str]) -> int | None:
        self.asked.append(question)
        return self.place

    def print_pages(self, window: QWidget, pages: QPdfDocument, wanted: Wanted) -> bool:
        self.printed.append(len(wanted.pages(pages.pageCount())))
        self.wanted.append(wanted)
        return True


@dataclass
class MemoryShelf:
    """A shelf of binders in memory."""

    kept: dict[Path, Binder] = field(default_factory=dict)
    exported: list[Path] = field(default_factory=list)
    broken: str = ""
    """What is said of any file, as if it could not be opened."""

    def prepare(self) -> None:
        pass

    def open(self, path: Path) -> Document:
        if self.broken:
            raise BinderError(self.broken)
        return OpenDocument.in_memory(self.kept[path])

    def read_damaged(self, path: Path) -> tuple[Document, Sequence[str]]:
        return self.open(path), ("a step",)

    def make(self, path: Path, binder: Binder) -> Document:
        return OpenDocument.in_memory(binder)

    def unkept(self, binder: Binder) -> Document:
        return OpenDocument.in_memory(binder)

    def export_json(self, binder: Binder, path: Path) -> None:
        self.exported.append(path)

    def back_up(self, document: Document) -> None:
        pass

    def backups(self, path: Path) -> list[Path]:
        return []

    def open_backup(self, path: Path) -> Document:
        return self.open(path)

    def samples(self) -> list[Path]:
        return [path for path in self.kept if path.suffix == ".json"]


@pytest.fixture(autouse=True)
def garbage_is_looked_for_here() -> Iterator[None]:
    """As in the window that is started: no worker's thread takes apart what a test before it left of its window."""
    gc.disable()
    yield
    gc.collect(1)
    gc.enable()


@pytest.fixture(scope="session")
def chickpeas() -> Binder:
    """The chickpea day; a value, so that one serves every test."""
    return chickpea_day()


@pytest.fixture
def settings(tmp_path: Path) -> WindowSettings:
    return WindowSettings(tmp_path)


@pytest.fixture
def wardrobe(qapp: QApplication, settings: WindowSettings) -> Iterator[Wardrobe]:
    qapp.setCursorFlashTime(0)
    made = dress_application(qapp, settings)
    yield made
    made.deleteLater()
    QCoreApplication.sendPostedEvents(made, QEvent.Type.DeferredDelete)


@pytest.fixture
def answers() -> Answers:
    return Answers()


@pytest.fixture
def shelf(chickpeas: Binder) -> MemoryShelf:
    return MemoryShelf({Path("chickpeas_on_camera.json"): chickpeas})


MakeWindow = Callable[[Binder], MainWindow]


@pytest.fixture
def window_on(
    qtbot: QtBot, wardrobe: Wardrobe, answers: Answers, shelf: MemoryShelf, settings: WindowSettings
) -> Iterator[MakeWindow]:
    """Makes a window on a binder, as high and wide as a small laptop's screen."""
    made: list[MainWindow] = []

    def make(binder: Binder) -> MainWindow:
        shelf.kept[Path("asked.binder")] = binder
        window = make_window(wardrobe, Surroundings(shelf, answers, settings), Path("asked.binder"))
        window.resize(1440, 900)
        window.show()
        qtbot.waitExposed(window)
        made.append(window)
        return window

    yield make
    for window in made:
        window.close()
        window.deleteLater()
        QCoreApplication.sendPostedEvents(window, QEvent.Type.DeferredDelete)


@pytest.fixture
def window(window_on: MakeWindow, chickpeas: Binder) -> MainWindow:
    """A window on the chickpea day."""
    return window_on(chickpeas)
