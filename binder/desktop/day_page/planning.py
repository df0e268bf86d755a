"""The plan of the day as it follows the binder: made anew a moment after an edit that touches it, usable meanwhile."""

from __future__ import annotations

import threading
from dataclasses import replace
from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QObject, QTimer, Signal

from binder.desktop.day_page.day_clock import WallClock, wall_now
from binder.desktop.day_page.planning_work import Answer, Asked, Hearing, plan_for
from binder.desktop.day_page.trouble import Trouble, trouble_of
from binder.desktop.task_runner import Lane, Outcome, Progress, StoppedError, Task

if TYPE_CHECKING:
    from collections.abc import Callable

    from binder.desktop.desk import Desk
    from binder.figures.day_plan import DayPlan
    from binder.figures.day_replan import BrokenHold

    Work = Callable[[Asked, Hearing], Answer]
    Explain = Callable[[Asked, Answer, Callable[[Trouble], None], Callable[[], bool]], Trouble | None]
    Result = tuple[Answer, Trouble | None]

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
        self.clock: WallClock = wall_now
        self.work: Work = plan_for
        self.explain: Explain = trouble_of
        self.answer: Answer | None = None
        self.trouble: Trouble | None = None
        self.stale = False
        self.searching = False
        self.share = 0.0
        self._about: str | None = None
        self._late = 0.0
        self._on_time: Answer | None = None
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

    # What is known

    @property
    def plan(self) -> DayPlan | None:
        """The best plan so far."""
        return self.answer.plan if self.answer is not None else None

    @property
    def broken(self) -> tuple[BrokenHold, ...]:
        """The holds that the plan breaks, because the day runs late."""
        return self.answer.broken if self.answer is not None else ()

    @property
    def busy(self) -> bool:
        """Whether a plan is being looked for, or about to be."""
        return self._moment.isActive() or self._desk.tasks.busy(_SUBJECT)

    @property
    def can_be_on_time_again(self) -> bool:
        """Whether there is a plan from before the day was said to be late."""
        return self._on_time is not None

    # What is asked for

    def attend(self, who: QObject, *, present: bool) -> None:
        """Someone looks at the plan, or does no longer. Where nobody does, nothing is planned."""
        if present:
            self._attending.add(id(who))
            if self._behind:
                self._look_anew()
        else:
            self._attending.discard(id(who))
            if not self._attending:
                self._behind = self._behind or self.busy
                self._moment.stop()
                self._desk.tasks.cancel(_SUBJECT)
                self.searching = False

    def stop(self) -> None:
        """Look no further: the best plan so far is taken."""
        self._enough.set()

    def run_late(self, minutes: float) -> None:
        """Plan on from now, running so many minutes late."""
        if self.plan is not None and minutes > 0:
            self._on_time = self._on_time or self.answer
            self._late = minutes
            self._start()

    def be_on_time_again(self) -> None:
        """Go back to the plan before the day was said to be late."""
        if self._on_time is not None:
            self.answer, self._on_time, self._late = self._on_time, None, 0.0
            self._start()

    # Following the binder

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
            self._about, self.answer, self.trouble = self._shoot, None, None
            self._late, self._on_time = 0.0, None
        self._start()

    @property
    def _shoot(self) -> str | None:
        shoot = self._desk.shoot
        return shoot.id if shoot is not None else None

    def _start(self) -> None:
        self._moment.stop()
        self._desk.tasks.cancel(_SUBJECT)
        self.share, self.searching = 0.0, False
        shoot = self._desk.binder.shoots.get(self._about or "")
        if shoot is None:
            self.answer, self.trouble, self.stale = None, None, False
        else:
            self._enough = threading.Event()
            now = self.clock(shoot.zone)
            asked = Asked(self._desk.binder, shoot.id, now, self._late, self.answer)
            self._desk.tasks.run(_SUBJECT, self._work_on(asked), lane=Lane.LONG)
        self.changed.emit()

    def _work_on(self, asked: Asked) -> Callable[[Task], Result]:
        """The work, with the binder as it is now: a value, that another thread may read."""
        work, explain, enough = self.work, self.explain, self._enough
        begun, better = self._begun, self._better

        def plan_it(task: Task) -> Result:
            def going_on() -> bool:
                return not task.cancelled.is_set() and not enough.is_set()

            hearing = Hearing(
                begun=lambda: begun.emit(task),
                better=lambda plan: better.emit(task, plan),
                share=lambda part: task.announce(Progress(task.subject, task.generation, part)),
                going_on=going_on,
            )
            answer = work(asked, hearing)
            if task.cancelled.is_set():
                raise StoppedError
            if answer.plan is not None or enough.is_set():
                return answer, None
            return answer, explain(asked, answer, lambda trouble: better.emit(task, trouble), going_on)

        return plan_it

    def _is_current(self, task: object) -> bool:
        return isinstance(task, Task) and not task.cancelled.is_set() and self._desk.tasks.busy(_SUBJECT)

    def _take_begun(self, task: object) -> None:
        """What is asked differs from what the plan answers: it is stale from here on."""
        if self._is_current(task):
            self.stale, self.searching, self.trouble = self.plan is not None, True, None
            self.changed.emit()

    def _take_better(self, task: object, found: object) -> None:
        """A better plan, or more of what is known of why there is none."""
        if not self._is_current(task):
            return
        if isinstance(found, Trouble):
            self.trouble, self.stale = found, self.plan is not None
        else:
            before = self.answer or Answer(None, None)
            self.answer = replace(before, plan=cast("DayPlan", found), question=None, broken=(), says=())
            self.trouble, self.stale = None, False
        self.changed.emit()

    def _progress(self, progress: object) -> None:
        if isinstance(progress, Progress) and progress.subject == _SUBJECT and progress.share > self.share:
            self.share = progress.share
            self.progressed.emit()

    def _finish(self, outcome: object) -> None:
        if not isinstance(outcome, Outcome) or outcome.subject != _SUBJECT:
            return
        self.searching, self._late = False, 0.0
        if outcome.error is not None:
            self.changed.emit()
            raise outcome.error
        answer, self.trouble = cast("Result", outcome.result)
        if answer.plan is not None:
            self.answer, self.stale = answer, False
        elif answer.question is None:
            self.answer, self.stale = None, False
        else:
            self.stale = self.plan is not None and self.trouble is not None
        self.changed.emit()


def planning_of(desk: Desk) -> Planning:
    """The planning of a desk, begun when it is first asked for."""
    found = desk.findChild(Planning)
    return found if isinstance(found, Planning) else Planning(desk)
