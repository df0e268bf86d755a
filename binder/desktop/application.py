"""Starts the window: the application, its face and colours, the desk, and the binder to show first."""

from __future__ import annotations

import sys
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtGui import QIcon
from PySide6.QtWidgets import QApplication, QStyleFactory

from binder.desktop.appearance import Wardrobe
from binder.desktop.desk import Desk
from binder.desktop.dialogs import Dialogs, RealDialogs
from binder.desktop.document_bridge import DocumentBridge
from binder.desktop.main_window import MainWindow
from binder.desktop.task_runner import TaskRunner
from binder.desktop.typeface import register_face
from binder.desktop.window_settings import WindowSettings
from binder.kitchen.binder import Binder
from binder.kitchen.errors import BinderError
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


def make_window(wardrobe: Wardrobe, around: Surroundings, path: Path | None = None) -> MainWindow:
    """The window on a binder: the one asked for, else the one opened last, else the first sample, else an empty one."""
    bridge = DocumentBridge(around.shelf.unkept(Binder()))
    desk = Desk(bridge, around.dialogs, TaskRunner(), around.settings)
    window = MainWindow(desk, around.shelf, wardrobe)
    bridge.setParent(window)
    desk.setParent(window)
    desk.tasks.setParent(window)
    if path is not None:
        window.open_path(path)
    else:
        _open_first(window, around)
    return window


def _open_first(window: MainWindow, around: Surroundings) -> None:
    for candidate in (*around.settings.recent[:1], *around.shelf.samples()[:1]):
        try:
            window.files.open_path(candidate)
        except (BinderError, OSError):
            continue
        return


def start(path: Path | None = None) -> int:
    """Open the window and stay until it is closed. Returns the exit code."""
    from binder.desktop.kept_shelf import KeptShelf

    application = QApplication.instance() or QApplication(sys.argv[:1])
    assert isinstance(application, QApplication)  # noqa: S101 - nothing else makes one
    settings = WindowSettings()
    wardrobe = dress_application(application, settings)
    window = make_window(wardrobe, Surroundings(KeptShelf(), RealDialogs(), settings), path)
    window.reporter.install()
    window.show()
    window.focus_page()
    return application.exec()
