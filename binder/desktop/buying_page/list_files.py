"""The shopping list taken along: as a file, or as text to paste into a message."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QApplication, QHBoxLayout, QPushButton, QWidget

from binder.desktop.file_doings import file_stem
from binder.desktop.saver import CSV, PDF, TEXT, WORKBOOK, Saver
from binder.desktop.spacing import space
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable

    from binder.desktop.desk import Desk
    from binder.kitchen.binder import Binder


class ListFiles(QWidget):
    """Two buttons beside the parts of the page."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._saver = Saver(desk, "shopping list", self)
        self.keep = QPushButton(_("Save the list..."), self)
        self.keep.setToolTip(_("As an Excel workbook, a CSV table, plain text or a PDF"))
        self.keep.clicked.connect(self.save)
        self.copy = QPushButton(_("Copy as text"), self)
        self.copy.setToolTip(_("To paste into a message"))
        self.copy.clicked.connect(self.copy_text)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(space(self, 1.5))
        layout.addWidget(self.keep)
        layout.addWidget(self.copy)

    def follow(self) -> None:
        """Without a shoot there is no list."""
        self.setVisible(self._desk.shoot is not None)

    def save(self) -> bool:
        """Ask where to write the list, and write it. Whether a file was chosen."""
        shoot = self._desk.shoot
        if shoot is None:
            return False
        stem = file_stem(_("{shoot} shopping list").format(shoot=shoot.name))
        return self._saver.save(_("Where to write the shopping list"), stem, _makers(self._desk.binder, shoot.id))

    def copy_text(self) -> None:
        """Put the list on the clipboard as text."""
        from binder.exchange.shopping_text import shopping_text

        shoot = self._desk.shoot
        if shoot is not None:
            QApplication.clipboard().setText(shopping_text(self._desk.binder, shoot.id))
            self._desk.said.emit(_("The shopping list is on the clipboard: paste it into a message."))


def _makers(binder: Binder, shoot: str) -> dict[str, Callable[[], bytes]]:
    """What makes the bytes of each kind of file, of the binder as it is now."""

    def workbook() -> bytes:
        from binder.exchange.shopping_workbook import shopping_workbook

        return shopping_workbook(binder, shoot)

    def csv_table() -> bytes:
        from binder.exchange.shopping_file import shopping_csv

        return shopping_csv(binder, shoot).encode("utf-8-sig")

    def text() -> bytes:
        from binder.exchange.shopping_text import shopping_text

        return shopping_text(binder, shoot).encode()

    def pdf() -> bytes:
        from binder.paper.print_set import sheet_bytes

        return sheet_bytes(binder, shoot, "shopping")

    return {WORKBOOK: workbook, CSV: csv_table, TEXT: text, PDF: pdf}
