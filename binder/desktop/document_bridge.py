"""The open document as the window sees it: changes go in, one announcement comes out."""

from __future__ import annotations

from typing import TYPE_CHECKING, Protocol

from PySide6.QtCore import QObject, Signal

from binder.desktop.errors import sentence_for
from binder.desktop.task_runner import Lane, Outcome
from binder.kitchen.binder import every_record
from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from binder.desktop.task_runner import Task, TaskRunner
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.storage.document import Origin

WRITING = "large change"
"""The subject of writing one, in the task runner."""

LETTING_GO = "letting go"
"""The subject of forgetting what was there before: no longer held by anyone, it would go in the window's thread."""


class StillWritingError(BinderError):
    """Something that must wait until a large change is written."""

    def __init__(self) -> None:
        super().__init__(_("A large change is being written. Wait until it is."))


class Document(Protocol):
    """What the window needs of an open document; `storage.document.OpenDocument` is one."""

    @property
    def binder(self) -> Binder:
        """The binder as it is now."""

    @property
    def path(self) -> Path | None:
        """The file it is kept in; None where it is kept in none."""

    @property
    def read_only(self) -> bool:
        """Whether its file is write-protected, so that every change will be refused."""

    @property
    def undo_label(self) -> str | None:
        """What undo would take back; None where there is nothing."""

    @property
    def redo_label(self) -> str | None:
        """What redo would do again; None where there is nothing."""

    @property
    def undo_size(self) -> int:
        """How large the change is that undo would take back, in characters of its entry in the journal."""

    @property
    def redo_size(self) -> int:
        """How large the change is that redo would do again."""

    def make(self, change: Change) -> Change:
        """Make a change and keep it. Raises BinderError, and then nothing has changed."""

    def undo(self) -> Change | None:
        """Take the last change back; gives what is different now."""

    def redo(self) -> Change | None:
        """Do the change again that was taken back last; gives what is different now."""

    def listen(self, listener: Callable[[Change, Origin], None]) -> None:
        """Have `listener` called with each change, whoever made it."""

    def catch_up(self) -> bool:
        """Take in what others have changed meanwhile."""

    def save_copy_as(self, path: Path) -> None:
        """Write the binder to another file and stay in this one."""

    def move_to(self, path: Path) -> None:
        """Write the binder to another file and go on in that."""

    def go_back_to_opened(self) -> Change:
        """Go back to how the binder was when it was opened, as a change that can be undone."""

    def close(self) -> None:
        """Let go of the file."""


class DocumentBridge(QObject):
    """Qt's side of one document at a time."""

    changed = Signal(object)
    """The change that has just been made, undone or taken in from others."""
    opened = Signal()
    """Another document is shown."""
    failed = Signal(str)
    """An edit that was not done, in a sentence."""

    def __init__(self, document: Document, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._document = document
        self._writing = False
        self._unannounced: list[Change] = []
        document.listen(self._announce)

    @property
    def document(self) -> Document:
        """The document."""
        return self._document

    @property
    def binder(self) -> Binder:
        """The binder as it is now."""
        return self._document.binder

    def take(self, document: Document) -> None:
        """Show another document and let go of the one before.

        Raises StillWritingError while a large change of that is being written; the other is then closed again.
        """
        if self._writing:
            document.close()
            raise StillWritingError
        before, self._document = self._document, document
        before.close()
        document.listen(self._announce)
        self.opened.emit()

    def make(self, change: Change) -> bool:
        """Make a change; where it cannot be made, say so. Whether it was made."""
        return self._attempt(lambda: self._document.make(change))

    def make_beside(
        self,
        change: Change,
        tasks: TaskRunner,
        done: Callable[[str], object],
        ahead: Callable[[Binder], object] | None = None,
    ) -> None:
        """Make a change that takes longer than a frame; `done` is told what kept it from being made, or nothing.

        Until then nothing else is changed, and the news of others wait. `ahead` works out, before it is announced, what
        will be shown of the binder.
        """
        self.write_beside(lambda: self._document.make(change), tasks, done, ahead)

    def undo_beside(
        self, tasks: TaskRunner, done: Callable[[str], object], ahead: Callable[[Binder], object] | None = None
    ) -> None:
        """Take a large change back beside the window, as `make_beside`."""
        self.write_beside(self._document.undo, tasks, done, ahead)

    def redo_beside(
        self, tasks: TaskRunner, done: Callable[[str], object], ahead: Callable[[Binder], object] | None = None
    ) -> None:
        """Do a large change again beside the window, as `make_beside`."""
        self.write_beside(self._document.redo, tasks, done, ahead)

    def write_beside(
        self,
        write: Callable[[], object],
        tasks: TaskRunner,
        done: Callable[[str], object],
        ahead: Callable[[Binder], object] | None = None,
    ) -> None:
        """Do something that writes much of the document, as `make_beside`; while another is under way, say that."""
        from binder.kitchen.bulk import let_go, uncollected

        if self._writing:
            self.failed.emit(StillWritingError().says)
            return
        held: list[object] = []

        def work(_task: Task) -> None:
            held.append(self._document.binder)
            held.extend(every_record(self._document.binder))
            with uncollected():
                write()
                if ahead is not None:
                    ahead(self._document.binder)

        def finish(outcome: object) -> None:
            if not isinstance(outcome, Outcome) or outcome.subject != WRITING:
                return
            tasks.finished.disconnect(finish)
            self._writing = False
            announced, self._unannounced = self._unannounced, []
            for change in announced:
                self.changed.emit(change)
            done("" if outcome.error is None else sentence_for(outcome.error))
            for change in announced:
                held.extend((change, *change.edits))
            tasks.run(LETTING_GO, lambda _task: let_go(held), lane=Lane.LONG, soon=True)
            outcome.raise_unforeseen()

        self._writing = True
        tasks.finished.connect(finish)
        tasks.run(WRITING, work, lane=Lane.LONG)

    def undo(self) -> Change | None:
        """Take the last change back and give what that changed."""
        return self._moved(self._document.undo)

    def redo(self) -> Change | None:
        """Do the last undone change again and give what that changed."""
        return self._moved(self._document.redo)

    def go_back_to_opened(self) -> bool:
        """Go back to how the binder was opened."""
        return self._attempt(self._document.go_back_to_opened)

    def catch_up(self) -> bool:
        """Take in what others have changed. Whether the file could be asked."""
        return self._writing or self._attempt(self._document.catch_up)

    def _moved(self, move: Callable[[], Change | None]) -> Change | None:
        results: list[Change | None] = []
        self._attempt(lambda: results.append(move()))
        return results[0] if results else None

    def _attempt(self, action: Callable[[], object]) -> bool:
        if self._writing:
            self.failed.emit(StillWritingError().says)
            return False
        try:
            action()
        except (BinderError, OSError) as error:
            self.failed.emit(sentence_for(error))
            return False
        return True

    def _announce(self, change: Change, origin: Origin) -> None:
        """What is written beside the window is announced when that is done, by the window's own thread."""
        if self._writing:
            self._unannounced.append(change)
        else:
            self.changed.emit(change)
