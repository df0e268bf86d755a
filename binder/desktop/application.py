"""Starts the window: the application, its face and colours, the desk, and the binder to show first."""

from __future__ import annotations

import sys
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtGui import QIcon
from PySide6.QtWidgets import QApplication, QStyleFactory

from binder.desktop.appearance import Wardrobe
from binder.desktop.collecting import GarbageCollector
from binder.desktop.desk import Desk
from binder.desktop.dialogs import Dialogs, RealDialogs
from binder.desktop.document_bridge import DocumentBridge
from binder.desktop.first_opening import FirstOpening, open_first
from binder.desktop.getting_ready import GettingReady
from binder.desktop.main_window import MainWindow
from binder.desktop.no_document import NoDocument
from binder.desktop.task_runner import TaskRunner
from binder.desktop.typeface import register_face
from binder.desktop.window_settings import WindowSettings
from binder.kitchen.paths import resources_folder

if TYPE_CHECKING:
    from pathlib import Path

    from binder.desktop.shelf import Shelf


@dataclass(frozen=True)
class Surroundings:
    """What the window is given from outside, so that a test can give other things."""

    shelf: Shelf
    dialogs: Dialogs
    settings: WindowSettings


def dress_application(application: QApplication, settings: WindowSettings) -> Wardrobe:
    """Give the application its name, style, face and colours."""
    application.setApplicationName("Binder")
    application.setWindowIcon(QIcon(str(resources_folder() / "icons" / "binder.svg")))
    application.setStyle(QStyleFactory.create("Fusion"))
    register_face()
    return Wardrobe(application, settings)


def frame_window(wardrobe: Wardrobe, around: Surroundings) -> MainWindow:
    """The window before it shows a binder."""
    bridge = DocumentBridge(NoDocument())
    desk = Desk(bridge, around.dialogs, TaskRunner(), around.settings)
    window = MainWindow(desk, around.shelf, wardrobe)
    for part in (bridge, desk, desk.tasks):
        part.setParent(window)
    return window


def make_window(wardrobe: Wardrobe, around: Surroundings, path: Path | None = None) -> MainWindow:
    """The window on the binder at `path`, or on the one it opens first."""
    window = frame_window(wardrobe, around)
    open_first(window, around.shelf, path)
    return window


def start(path: Path | None = None) -> int:
    """Open the window and stay until it is closed. Returns the exit code."""
    from binder.desktop.kept_shelf import KeptShelf

    application = QApplication.instance() or QApplication(sys.argv[:1])
    assert isinstance(application, QApplication)  # noqa: S101 - nothing else makes one
    settings, shelf = WindowSettings(), KeptShelf()
    wardrobe = dress_application(application, settings)
    GarbageCollector(application)
    window = frame_window(wardrobe, Surroundings(shelf, RealDialogs(), settings))
    window.reporter.install()
    window.show()
    window.activateWindow()
    FirstOpening(window, shelf, path)
    GettingReady(window.files, window.desk.tasks, window)
    return application.exec()
