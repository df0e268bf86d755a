"""A window of its own for one table."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QVBoxLayout, QWidget

from binder.desktop.sheet.sheet_view import SheetView
from binder.desktop.spacing import characters, space

if TYPE_CHECKING:
    from binder.desktop.desk import Desk
    from binder.desktop.sheet.sheet import Sheet


class SheetWindow(QDialog):
    """Shows a table, and follows the binder while it is open."""

    def __init__(self, sheet: Sheet, desk: Desk, parent: QWidget) -> None:
        super().__init__(parent)
        self._desk = desk
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(sheet.name)
        self.sheet = SheetView(sheet, desk.make, self)
        layout = QVBoxLayout(self)
        layout.addWidget(self.sheet)
        self.resize(characters(self.font(), 70), space(self, 75))
        desk.changed.connect(self._follow)
        self._follow()

    def _follow(self) -> None:
        self.sheet.show_sight(self._desk.sight())
