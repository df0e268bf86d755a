"""Opens the screen for the set, once for each window."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.set_view.set_window import SetWindow

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from binder.desktop.desk import Desk


def open_on_set(desk: Desk, window: QWidget) -> SetWindow:
    """Show the day on the set as large as the screen; one that is open comes to the front."""
    found = [one for one in window.findChildren(SetWindow) if one.isVisible()]
    shown = found[0] if found else SetWindow(desk, window)
    shown.showFullScreen()
    shown.activateWindow()
    return shown
