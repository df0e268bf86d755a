"""Planning a day, away from the window: the best plan for a binder as it is now, on from where the day stands.

Plain Python.
"""

from __future__ import annotations

import time
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from binder.figures.day_plan import DayPlan, found_near, planned
from binder.figures.day_question import DayQuestion, day_question
from binder.figures.day_replan import BrokenHold, replan
from binder.figures.plan_program import find_plan

if TYPE_CHECKING:
    from collections.abc import Callable
    from datetime import datetime

    from binder.figures.day_clash import DayClash
    from binder.kitchen.binder import Binder

SECONDS = 20.0
"""The longest a plan is looked for. It is shown as soon as there is one, and bettered meanwhile."""

_SECONDS_BETWEEN = 0.5
"""How often a better plan is shown, and how far the search is, while it goes on."""


@dataclass(frozen=True)
class Answer:
    """A plan, and the question of the whole day that it answers; None where there is nothing to plan.

    `broken` are the holds that a day running late breaks, `says` what else it changes; `clash` is why there is no plan,
    where that is known already.
    """

    plan: DayPlan | None
    question: DayQuestion | None
    broken: tuple[BrokenHold, ...] = ()
    says: tuple[str, ...] = ()
    clash: DayClash | None = None


@dataclass(frozen=True)
class Asked:
    """What is to be planned: a shoot of a binder, `now`, running `late` minutes late. `before` is the answer so far."""

    binder: Binder
    shoot: str
    now: datetime | None = None
    late: float = 0.0
    before: Answer | None = None

    @property
    def near(self) -> DayPlan | None:
        """The plan so far."""
        return self.before.plan if self.before is not None else None


@dataclass(frozen=True)
class Hearing:
    """Who hears of a search: each better plan, how far it is (0 to 1), that it has begun; and whether to go on."""

    begun: Callable[[], None]
    better: Callable[[DayPlan], None]
    share: Callable[[float], None]
    going_on: Callable[[], bool]


def plan_for(asked: Asked, hearing: Hearing) -> Answer:
    """The best plan. One that answers the question already is only said anew, with the names of now."""
    question = day_question(asked.binder, asked.shoot)
    if question is None:
        return Answer(None, None)
    before = asked.before
    if before is not None and before.plan is not None and not asked.late and answers(before, question):
        return replace(before, plan=said_anew(before.plan, question), question=question)
    hearing.begun()
    search = _Search(hearing)
    if asked.near is not None and asked.now is not None and under_way(asked.near, asked.now):
        return _planned_on(asked, asked.near, asked.now, question, search)
    found = find_plan(
        question.question,
        question.aims,
        seconds=SECONDS,
        progress=lambda plan: search.tell(lambda: planned(question, plan, fewest=False)),
        going_on=search.going_on,
        hint=None if asked.near is None else found_near(question, asked.near),
    )
    return Answer(None if found is None else planned(question, found), question)


def _planned_on(asked: Asked, near: DayPlan, now: datetime, question: DayQuestion, search: _Search) -> Answer:
    """The rest of a day that has begun."""
    found = replan(
        asked.binder,
        asked.shoot,
        near,
        now,
        asked.late,
        seconds=SECONDS,
        progress=lambda plan: search.tell(lambda: plan),
        going_on=search.going_on,
    )
    if found is None:
        return Answer(None, question)
    return Answer(found.plan, question, found.broken, found.says, found.clash)


def under_way(plan: DayPlan, now: datetime) -> bool:
    """Whether the first of a plan has begun and not all of it is over."""
    ends = [one.end for one in plan.activities if one.end > one.start]
    return plan.activities[0].start < now < max(ends, default=now)


def answers(answer: Answer, question: DayQuestion) -> bool:
    """Whether an answer was given to this very question."""
    asked = answer.question
    return asked is not None and (asked.question, asked.aims, asked.clock.origin) == (
        question.question,
        question.aims,
        question.clock.origin,
    )


def said_anew(plan: DayPlan, question: DayQuestion) -> DayPlan:
    """The same plan with the names, people and appliances of now."""
    asked = replace(
        plan.asked, work=question.work, kitchen=question.kitchen, clock=question.clock, binder=question.binder
    )
    already = {one.activity.key: one.people for one in plan.activities if one.people}
    return planned(asked, plan.found, fewest=False, already=already)


class _Search:
    """Passes on how a search goes, as often as anyone can follow."""

    def __init__(self, hearing: Hearing) -> None:
        self._hearing = hearing
        self._since = time.monotonic()
        self._told, self._shared = 0.0, 0.0

    def tell(self, plan: Callable[[], DayPlan]) -> bool:
        """A better plan, put in words only where it is passed on; the first is passed on at once."""
        now = time.monotonic()
        if now - self._told >= _SECONDS_BETWEEN:
            self._told = now
            self._hearing.better(plan())
        return self._hearing.going_on()

    def going_on(self) -> bool:
        """Whether anyone still wants a better plan."""
        now = time.monotonic()
        if now - self._shared >= _SECONDS_BETWEEN:
            self._shared = now
            self._hearing.share(min(1.0, (now - self._since) / SECONDS))
        return self._hearing.going_on()
