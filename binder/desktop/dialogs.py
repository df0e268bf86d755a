"""What the window asks of the person in front of it, behind one protocol, so that tests can answer."""

from __future__ import annotations

import re
from pathlib import Path
from typing import TYPE_CHECKING, Protocol

from PySide6.QtWidgets import QDialog, QFileDialog

from binder.kitchen.paths import user_documents_folder
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Sequence

    from PySide6.QtPdf import QPdfDocument
    from PySide6.QtWidgets import QWidget

    from binder.desktop.printing import Wanted


class Dialogs(Protocol):
    """Questions. Each answer is None where the person thought better of it."""

    def file_to_open(self, window: QWidget) -> Path | None:
        """Which binder to open."""

    def price_list_to_read(self, window: QWidget) -> Path | None:
        """Which price list to bring in."""

    def file_to_make(self, window: QWidget, title: str, suggestion: str, kinds: str) -> Path | None:
        """Where to keep something; the system's own dialog asks before it replaces a file."""

    def folder(self, window: QWidget, title: str) -> Path | None:
        """A folder to write several files into."""

    def choice(self, window: QWidget, title: str, question: str, choices: Sequence[str]) -> int | None:
        """One of several: its place."""

    def print_pages(self, window: QWidget, pages: QPdfDocument, wanted: Wanted) -> bool:
        """Print pages of paper; whether they were sent."""


def binder_files() -> str:
    """The kinds of file that can be opened, as a file dialog names them."""
    return ";;".join([_("Binders (*.binder *.json)"), _("All files (*)")])


def dialog_to_make(window: QWidget, title: str, suggestion: str, kinds: str) -> QFileDialog:
    """A dialog that puts the ending of the kind chosen behind a name without one, before it looks what is there."""
    dialog = QFileDialog(window, title, str(user_documents_folder()), kinds)
    dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
    dialog.setFileMode(QFileDialog.FileMode.AnyFile)

    def follow(kind: str) -> None:
        endings = re.findall(r"\*\.(\w+)", kind)
        if endings:
            dialog.setDefaultSuffix(endings[0])

    follow(dialog.selectedNameFilter())
    dialog.filterSelected.connect(follow)
    dialog.selectFile(Path(suggestion).stem)
    return dialog


class RealDialogs:
    """Asks with the system's dialogs."""

    def file_to_open(self, window: QWidget) -> Path | None:
        chosen, _kind = QFileDialog.getOpenFileName(
            window, _("Open a binder"), str(user_documents_folder()), binder_files()
        )
        return Path(chosen) if chosen else None

    def price_list_to_read(self, window: QWidget) -> Path | None:
        kinds = ";;".join([_("Price lists (*.csv *.tsv *.txt *.xlsx *.xlsm)"), _("All files (*)")])
        chosen, _kind = QFileDialog.getOpenFileName(
            window, _("Bring in a price list"), str(user_documents_folder()), kinds
        )
        return Path(chosen) if chosen else None

    def file_to_make(self, window: QWidget, title: str, suggestion: str, kinds: str) -> Path | None:
        dialog = dialog_to_make(window, title, suggestion, kinds)
        return Path(dialog.selectedFiles()[0]) if dialog.exec() == QDialog.DialogCode.Accepted else None

    def folder(self, window: QWidget, title: str) -> Path | None:
        chosen = QFileDialog.getExistingDirectory(window, title, str(user_documents_folder()))
        return Path(chosen) if chosen else None

    def choice(self, window: QWidget, title: str, question: str, choices: Sequence[str]) -> int | None:
        from PySide6.QtWidgets import QInputDialog

        chosen, taken = QInputDialog.getItem(window, title, question, list(choices), 0, editable=False)
        return list(choices).index(chosen) if taken else None

    def print_pages(self, window: QWidget, pages: QPdfDocument, wanted: Wanted) -> bool:
        from PySide6.QtPrintSupport import QAbstractPrintDialog, QPrintDialog, QPrinter

        from binder.desktop.printing import print_document

        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        printer.setFromTo(1, len(wanted.pages(pages.pageCount())))
        dialog = QPrintDialog(printer, window)
        for option in ("PrintPageRange", "PrintCurrentPage", "PrintCollateCopies"):
            dialog.setOption(QAbstractPrintDialog.PrintDialogOption[option])
        if dialog.exec() != QPrintDialog.DialogCode.Accepted:
            return False
        print_document(printer, pages, wanted)
        return True
