"""Binders read from their files; a large one beside the window: a book of fifty thousand prices takes two seconds."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from binder.desktop.errors import sentence_for
from binder.desktop.task_runner import Lane, Outcome, StoppedError
from binder.kitchen.binder import Binder
from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable
    from pathlib import Path

    from binder.desktop.desk import Desk
    from binder.desktop.document_bridge import Document
    from binder.desktop.shelf import Shelf
    from binder.desktop.task_runner import Task

_LARGE = 2_000_000
"""Bytes of a file that takes longer to read and check than anyone fails to notice; the samples have a tenth."""


@dataclass(frozen=True)
class Opened:
    """A document that is open, and what is to be said of it; empty where there is nothing to say."""

    document: Document
    says: str = ""


def opened(shelf: Shelf, path: Path) -> Opened:
    """The document in a file, once a backup of it is kept. Raises BinderError or OSError where it cannot be opened."""
    document = shelf.open(path)
    if document.read_only:
        says = _("This file is write-protected: no edit can be kept. Save a copy as another file to edit it.")
        return Opened(document, says)
    try:
        shelf.back_up(document)
    except (BinderError, OSError) as error:
        return Opened(document, sentence_for(error))
    return Opened(document)


def first_opened(shelf: Shelf, path: Path | None, recent: Iterable[Path]) -> Opened:
    """The binder at `path`, or where none is asked for the one opened last; else the first sample, else an empty one.

    Where the one asked for could not be opened, that is what is said.
    """
    refused = ""
    candidates = [*([path] if path is not None else list(recent)[:1]), *shelf.samples()[:1]]
    for candidate in candidates:
        try:
            found = opened(shelf, candidate)
        except (BinderError, OSError) as error:
            refused = sentence_for(error) if candidate == path else refused
        else:
            return Opened(found.document, refused or found.says)
    return Opened(shelf.unkept(Binder()), refused)


def is_large(path: Path) -> bool:
    """Whether a file is one to read beside the window."""
    try:
        return path.stat().st_size > _LARGE
    except OSError:
        return False


class Opening(QObject):
    """Reads files one after another beside the window; what it was about to show goes on until then."""

    begun = Signal(str)
    """What is being opened, in words."""
    done = Signal(object)
    """An Opened."""
    failed = Signal(str)
    """Why a file could not be opened."""

    def __init__(self, desk: Desk, shelf: Shelf, parent: QObject) -> None:
        super().__init__(parent)
        self._desk, self._shelf, self._count = desk, shelf, 0
        desk.tasks.finished.connect(self._finish)

    def open(self, path: Path) -> None:
        """Begin to open a file; each has a subject of its own, so that none overtakes another."""
        self._count += 1
        self.begun.emit(_("Opening {file}").format(file=path.stem))
        self._desk.tasks.run(f"{_SUBJECT}{self._count}", _reading(self._shelf, path), lane=Lane.LONG, soon=True)

    def _finish(self, outcome: object) -> None:
        if not isinstance(outcome, Outcome) or not outcome.subject.startswith(_SUBJECT):
            return
        if isinstance(outcome.result, Opened):
            self.done.emit(outcome.result)
        elif outcome.error is not None:
            self.failed.emit(sentence_for(outcome.error))
            outcome.raise_unforeseen()


_SUBJECT = "opening file "


def _reading(shelf: Shelf, path: Path) -> Callable[[Task], Opened]:
    def work(task: Task) -> Opened:
        found = opened(shelf, path)
        closed_if_stopped(task, found)
        return found

    return work


def closed_if_stopped(task: Task, found: Opened) -> None:
    """Close a document again that no one waits for any more. Raises StoppedError then."""
    try:
        task.report(1.0)
    except StoppedError:
        found.document.close()
        raise
