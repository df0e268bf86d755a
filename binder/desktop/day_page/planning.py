"""The plan of the day as it follows the binder: made anew a moment after an edit that touches it, usable meanwhile."""

from __future__ import annotations

import threading
from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QObject, QTimer, Signal

from binder.desktop.day_page.planning_work import Asked, Hearing, plan_for
from binder.desktop.day_page.trouble import Trouble, trouble_of
from binder.desktop.task_runner import Outcome, Progress, StoppedError, Task

if TYPE_CHECKING:
    from collections.abc import Callable

    from binder.desktop.desk import Desk
    from binder.figures.day_plan import DayPlan

_SUBJECT = "day plan"
_A_MOMENT = 350
"""Milliseconds after an edit: several in a row are planned once."""


class Planning(QObject):
    """One for each desk: see `planning_of`. It works only while someone attends to it."""

    changed = Signal()
    """The plan, what clashes, or whether a plan is looked for, is another."""
    progressed = Signal()
    """The search has gone on."""
    _begun = Signal(object)
    _better = Signal(object, object)

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self._desk = desk
        self.work: Callable[[Asked, Hearing], DayPlan | None] = plan_for
        self.explain = trouble_of
        self.plan: DayPlan | None = None
        self.trouble: Trouble | None = None
        self.stale = False
        self.searching = False
        self.share = 0.0
        self._about: str | None = None
        self._attending: set[int] = set()
        self._behind = True
        self._enough = threading.Event()
        self._moment = QTimer(self)
        self._moment.setObjectName("a moment before planning")
        self._moment.setSingleShot(True)
        self._moment.setInterval(_A_MOMENT)
        self._moment.timeout.connect(self._start)
        self._begun.connect(self._take_begun)
        self._better.connect(self._take_better)
        desk.changed.connect(self._follow)
        desk.tasks.finished.connect(self._finish)
        desk.tasks.progressed.connect(self._progress)

    def attend(self, who: QObject, *, present: bool) -> None:
        """Someone looks at the plan, or does no longer. Where nobody does, nothing is planned."""
        if present:
            self._attending.add(id(who))
            if self._behind:
                self._look_anew()
        else:
            self._attending.discard(id(who))
            if not self._attending:
                self._moment.stop()
                self._behind = self._behind or self._desk.tasks.busy(_SUBJECT)
                self._desk.tasks.cancel(_SUBJECT)
                self.searching = False

    @property
    def busy(self) -> bool:
        """Whether a plan is being looked for, or about to be."""
        return self._moment.isActive() or self._desk.tasks.busy(_SUBJECT)

    def stop(self) -> None:
        """Look no further: the best plan so far is taken."""
        self._enough.set()

    def again(self) -> None:
        """Look for a plan again."""
        self._start()

    def _follow(self) -> None:
        if not self._attending:
            self._behind = True
        elif self._shoot != self._about:
            self._look_anew()
        else:
            self._moment.start()

    def _look_anew(self) -> None:
        """Begin at once; a plan of another shoot is not shown meanwhile."""
        self._behind = False
        if self._shoot != self._about:
            self._about, self.plan, self.trouble = self._shoot, None, None
        self._start()

    @property
    def _shoot(self) -> str | None:
        shoot = self._desk.shoot
        return shoot.id if shoot is not None else None

    def _start(self) -> None:
        self._moment.stop()
        self._desk.tasks.cancel(_SUBJECT)
        self.share, self.searching = 0.0, False
        if self._about is None:
            self.plan, self.trouble, self.stale = None, None, False
        else:
            self._enough = threading.Event()
            self._desk.tasks.run(_SUBJECT, self._work_on(Asked(self._desk.binder, self._about, self.plan)))
        self.changed.emit()

    def _work_on(self, asked: Asked) -> Callable[[Task], tuple[DayPlan | None, Trouble | None]]:
        """The work, with the binder as it is now: a value, that another thread may read."""
        work, explain, enough = self.work, self.explain, self._enough
        begun, better = self._begun, self._better

        def plan_it(task: Task) -> tuple[DayPlan | None, Trouble | None]:
            def going_on() -> bool:
                return not task.cancelled.is_set() and not enough.is_set()

            def share(part: float) -> None:
                task.announce(Progress(task.subject, task.generation, part))

            hearing = Hearing(
                begun=lambda: begun.emit(task),
                better=lambda plan: better.emit(task, plan),
                share=share,
                going_on=going_on,
            )
            plan = work(asked, hearing)
            if task.cancelled.is_set():
                raise StoppedError
            trouble = explain(asked, going_on) if plan is None and not enough.is_set() else None
            return plan, trouble

        return plan_it

    def _is_current(self, task: object) -> bool:
        return isinstance(task, Task) and not task.cancelled.is_set() and self._desk.tasks.busy(_SUBJECT)

    def _take_begun(self, task: object) -> None:
        """What is asked differs from what the plan answers: it is stale from here on."""
        if self._is_current(task):
            self.stale, self.searching = self.plan is not None, True
            self.changed.emit()

    def _take_better(self, task: object, plan: object) -> None:
        if self._is_current(task):
            self.plan, self.trouble, self.stale = cast("DayPlan", plan), None, False
            self.changed.emit()

    def _progress(self, progress: object) -> None:
        if isinstance(progress, Progress) and progress.subject == _SUBJECT and progress.share > self.share:
            self.share = progress.share
            self.progressed.emit()

    def _finish(self, outcome: object) -> None:
        if not isinstance(outcome, Outcome) or outcome.subject != _SUBJECT:
            return
        self.searching = False
        if outcome.error is not None:
            self.changed.emit()
            raise outcome.error
        plan, trouble = cast("tuple[DayPlan | None, Trouble | None]", outcome.result)
        if plan is not None or not self._enough.is_set():
            self.stale = plan is None and self.plan is not None and trouble is not None
            self.plan = self.plan if self.stale else plan
        self.trouble = trouble
        self.changed.emit()


def planning_of(desk: Desk) -> Planning:
    """The planning of a desk, begun when it is first asked for."""
    found = desk.findChild(Planning)
    return found if isinstance(found, Planning) else Planning(desk)
