"""Work that takes longer than a frame: one thread, with progress, a way to stop it, and no stale results."""

from __future__ import annotations

import sys
import threading
import time
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from enum import StrEnum
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt, Signal

from binder.desktop.window_first import WindowFirst
from binder.kitchen.errors import BinderError
from binder.kitchen.turns import give_way

if TYPE_CHECKING:
    from collections.abc import Callable

_SECONDS_BETWEEN_REPORTS = 0.1

_SECONDS_OF_A_TURN = 0.0001
"""How long work may go on while the window's thread waits for its turn: a fiftieth of what Python gives.

Each call into Qt gives the turn away, so a repaint waits for it many times over. With five milliseconds the slowest of
a hundred answers beside work took 92 to 354 ms, with one 24 to 142 (two cores, the chickpea sample); with a tenth of
one, a page beside the import of prices was painted in half the time of that. What is left of it `WindowFirst` ends.
"""


class Lane(StrEnum):
    """Work in one lane is done one piece after another; what takes long has its own lane, and holds up no figure."""

    FIGURES = "figures"
    LONG = "long"


class StoppedError(Exception):
    """Raised inside work that has been told to stop."""


@dataclass
class Task:
    """One piece of work. It calls `report` now and then, which stops it where it was cancelled or overtaken."""

    subject: str
    generation: int
    announce: Callable[[object], None]
    cancelled: threading.Event = field(default_factory=threading.Event)
    _said: float = 0.0

    def report(self, share: float) -> None:
        """Say how far the work is (0 to 1), ten times a second at most. Raises StoppedError where it is to stop."""
        if self.cancelled.is_set():
            raise StoppedError
        give_way()
        now = time.monotonic()
        if now - self._said >= _SECONDS_BETWEEN_REPORTS:
            self._said = now
            self.announce(Progress(self.subject, self.generation, min(max(share, 0.0), 1.0)))


@dataclass(frozen=True)
class _Queued:
    """Work that is to begin in a lane."""

    task: Task
    work: Callable[[Task], object]
    lane: Lane


@dataclass(frozen=True)
class Progress:
    """How far a piece of work is."""

    subject: str
    generation: int
    share: float


@dataclass(frozen=True)
class Outcome:
    """What came of a piece of work: a result, or the error it ended with."""

    subject: str
    generation: int
    result: object = None
    error: Exception | None = None

    def raise_unforeseen(self) -> None:
        """Raise an error that nobody can mend: once a person has been told, it belongs in the log."""
        if self.error is not None and not isinstance(self.error, BinderError | OSError):
            raise self.error


class TaskRunner(QObject):
    """Runs one piece of work after another in each lane. Newer work on a subject overtakes what is under way on it."""

    finished = Signal(object)
    """An Outcome that has not been overtaken."""
    progressed = Signal(object)
    """A Progress of work that has not been overtaken."""
    _reported = Signal(object)
    _waiting = Signal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        sys.setswitchinterval(min(sys.getswitchinterval(), _SECONDS_OF_A_TURN))
        self.window_first = WindowFirst(self)
        self._pools: dict[Lane, ThreadPoolExecutor] = {}
        self._current: dict[str, Task] = {}
        self._generation = 0
        self._reported.connect(self._pass_on)
        self._waiting.connect(self._submit, Qt.ConnectionType.QueuedConnection)

    def run(
        self, subject: str, work: Callable[[Task], object], *, lane: Lane = Lane.FIGURES, soon: bool = False
    ) -> None:
        """Start work on a subject; what was under way on it is stopped and its result dropped.

        `soon`: only once the window has done what it is doing, so that the two do not get in each other's way.
        """
        self.cancel(subject)
        self._generation += 1
        task = Task(subject, self._generation, self._reported.emit)
        self._current[subject] = task
        queued = _Queued(task, work, lane)
        self._waiting.emit(queued) if soon else self._submit(queued)

    def _submit(self, queued: object) -> None:
        if not isinstance(queued, _Queued) or queued.task.cancelled.is_set():
            return
        if queued.lane not in self._pools:
            prefix = f"binder-{queued.lane}"
            self._pools[queued.lane] = ThreadPoolExecutor(max_workers=1, thread_name_prefix=prefix)
        self._pools[queued.lane].submit(self._work, queued.task, queued.work)

    def cancel(self, subject: str) -> None:
        """Stop what is under way on a subject."""
        task = self._current.pop(subject, None)
        if task is not None:
            task.cancelled.set()

    def busy(self, subject: str) -> bool:
        """Whether work on a subject is under way."""
        return subject in self._current

    def close(self) -> None:
        """Stop everything and wait until the threads have ended."""
        for subject in list(self._current):
            self.cancel(subject)
        self.window_first.stop()
        for pool in self._pools.values():
            pool.shutdown(wait=True, cancel_futures=True)
        self._pools = {}

    def _work(self, task: Task, work: Callable[[Task], object]) -> None:
        if task.cancelled.is_set():
            return
        try:
            outcome = Outcome(task.subject, task.generation, result=work(task))
        except StoppedError:
            return
        except Exception as error:  # noqa: BLE001 - it is handed to whoever asked for the work
            outcome = Outcome(task.subject, task.generation, error=error)
        self._reported.emit(outcome)

    def _pass_on(self, report: object) -> None:
        if not isinstance(report, Outcome | Progress):
            return
        task = self._current.get(report.subject)
        if task is None or task.generation != report.generation:
            return
        if isinstance(report, Progress):
            self.progressed.emit(report)
        else:
            del self._current[report.subject]
            self.window_first.take_turn()
            self.finished.emit(report)
