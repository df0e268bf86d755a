"""Figures written to a file that someone chooses: made beside the window, written whole, and said when it is there."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from binder.desktop.errors import sentence_for
from binder.desktop.task_runner import Lane, Outcome
from binder.kitchen.errors import BinderError
from binder.kitchen.whole_file import write_whole
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from PySide6.QtWidgets import QWidget

    from binder.desktop.desk import Desk
    from binder.desktop.task_runner import Task

PDF, WORKBOOK, CSV, TEXT = ".pdf", ".xlsx", ".csv", ".txt"


def kinds_text(*endings: str) -> str:
    """Kinds of file as a file dialog names them."""
    names = {
        PDF: _("PDF, for printing"),
        WORKBOOK: _("Excel workbook"),
        CSV: _("CSV table"),
        TEXT: _("Plain text, for a message"),
    }
    return ";;".join(f"{names[ending]} (*{ending})" for ending in endings)


class UnknownKindError(BinderError):
    """A file of a kind that something is not written as."""

    def __init__(self, path: Path, endings: str) -> None:
        super().__init__(_("“{file}” ends in none of {kinds}.").format(file=path.name, kinds=endings))


class Saver(QObject):
    """Asks for a file, has its bytes made, writes them. `subject` is its own in the task runner."""

    def __init__(self, desk: Desk, subject: str, parent: QWidget) -> None:
        super().__init__(parent)
        self._desk, self._subject, self._window = desk, f"saving {subject}", parent
        desk.tasks.finished.connect(self._finish)

    def save(self, title: str, stem: str, makers: dict[str, Callable[[], bytes]]) -> bool:
        """Ask where; `makers` make the bytes of each kind of file, by its ending. Whether a file was chosen."""
        kinds = kinds_text(*makers)
        path = self._desk.dialogs.file_to_make(self._window, title, f"{stem}{next(iter(makers))}", kinds)
        if path is None:
            return False
        make = makers.get(path.suffix.casefold())
        if make is None:
            self._desk.said.emit(UnknownKindError(path, ", ".join(makers)).says)
            return False
        self._desk.tasks.run(self._subject, _writing(path, make), lane=Lane.LONG, soon=True)
        return True

    def _finish(self, outcome: object) -> None:
        if not isinstance(outcome, Outcome) or outcome.subject != self._subject:
            return
        if outcome.error is None:
            self._desk.said.emit(_("Written: {file}").format(file=outcome.result))
            return
        self._desk.said.emit(sentence_for(outcome.error))
        outcome.raise_unforeseen()


def _writing(path: Path, make: Callable[[], bytes]) -> Callable[[Task], Path]:
    def work(_task: Task) -> Path:
        write_whole(path, make())
        return path

    return work
