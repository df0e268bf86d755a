"""A figure that follows the binder: worked out at once where that is quick, else beside the window, stale meanwhile."""

from __future__ import annotations

from typing import TYPE_CHECKING, Generic, TypeVar, cast

from PySide6.QtCore import QObject, Signal

from binder.desktop.latest import Latest
from binder.desktop.task_runner import Outcome, Task
from binder.figures.under_way import telling

if TYPE_CHECKING:
    from collections.abc import Callable

    from binder.desktop.task_runner import TaskRunner
    from binder.kitchen.binder import Binder

T = TypeVar("T")


class WorkedOut(QObject, Generic[T]):
    """`figure` is worked out of a binder and the id of the record it is about, by `subject` of the task runner."""

    changed = Signal()
    """The figure, or whether it is stale, is another."""

    def __init__(
        self,
        tasks: TaskRunner,
        subject: str,
        figure: Callable[[Binder, str], T],
        is_quick: Callable[[Binder, str], bool],
        parent: QObject,
    ) -> None:
        super().__init__(parent)
        self._tasks, self._subject, self._figure, self._is_quick = tasks, subject, figure, is_quick
        self._about: str | None = None
        self.latest: Latest[T] = Latest()
        tasks.finished.connect(self._finish)

    def follow(self, binder: Binder, about: str | None) -> None:
        """Work out the figure of a record; a figure of another record is never shown meanwhile."""
        self._tasks.cancel(self._subject)
        if about != self._about:
            self._about, self.latest.value = about, None
        if about is None:
            self.latest.stale = False
        elif self._is_quick(binder, about):
            self.latest.value, self.latest.stale = self._figure(binder, about), False
        else:
            self.latest.stale = True
            self._tasks.run(self._subject, self._work(binder, about), soon=True)
        self.changed.emit()

    def stop(self) -> None:
        """Wait no longer: what was known before stays, stale, until it is followed again."""
        self._tasks.cancel(self._subject)

    def _work(self, binder: Binder, about: str) -> Callable[[Task], tuple[str, T]]:
        """The work, with the binder as it is now: a value, that another thread may read."""
        figure = self._figure

        def work(task: Task) -> tuple[str, T]:
            task.report(0.0)
            with telling(task.report):
                return about, figure(binder, about)

        return work

    def _finish(self, outcome: object) -> None:
        if not isinstance(outcome, Outcome) or outcome.subject != self._subject:
            return
        if outcome.error is not None:
            raise outcome.error
        self._take(cast("tuple[str, T]", outcome.result))

    def _take(self, result: tuple[str, T]) -> None:
        about, value = result
        if about == self._about:
            self.latest.value, self.latest.stale = value, False
            self.changed.emit()
