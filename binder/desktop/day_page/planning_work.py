"""Planning a day, away from the window: the best plan for a binder as it is now. Plain Python."""

from __future__ import annotations

import time
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.day_plan import DayPlan, day_plan, planned
from binder.figures.day_question import DayQuestion, day_question

if TYPE_CHECKING:
    from collections.abc import Callable

    from binder.kitchen.binder import Binder

SECONDS = 20.0
"""The longest a plan is looked for. It is shown as soon as there is one, and bettered meanwhile."""

_SECONDS_BETWEEN = 0.5
"""How often a better plan is shown, and how far the search is, while it goes on."""


@dataclass(frozen=True)
class Asked:
    """What is to be planned: a shoot of a binder, as it is now. `near` is the plan before."""

    binder: Binder
    shoot: str
    near: DayPlan | None = None


@dataclass(frozen=True)
class Hearing:
    """Who hears of a search: each better plan, how far it is (0 to 1), that it has begun; and whether to go on."""

    begun: Callable[[], None]
    better: Callable[[DayPlan], None]
    share: Callable[[float], None]
    going_on: Callable[[], bool]


def plan_for(asked: Asked, hearing: Hearing) -> DayPlan | None:
    """The best plan; None where there is nothing to plan, or no plan was found.

    A plan that answers the question already is only said anew, with the names of now.
    """
    question = day_question(asked.binder, asked.shoot)
    if question is None:
        return None
    if asked.near is not None and answers(asked.near, question):
        return planned(question, asked.near.found)
    hearing.begun()
    search = _Search(hearing)
    return day_plan(
        asked.binder,
        asked.shoot,
        seconds=SECONDS,
        progress=search.tell,
        going_on=search.going_on,
        near=asked.near,
    )


def answers(plan: DayPlan, question: DayQuestion) -> bool:
    """Whether a plan was made for this very question."""
    asked = plan.asked
    return (asked.question, asked.aims, asked.clock.origin) == (question.question, question.aims, question.clock.origin)


class _Search:
    """Passes on how a search goes, as often as anyone can follow."""

    def __init__(self, hearing: Hearing) -> None:
        self._hearing = hearing
        self._since = time.monotonic()
        self._told, self._shared = 0.0, 0.0

    def tell(self, plan: DayPlan) -> bool:
        """A better plan; the first is passed on at once."""
        now = time.monotonic()
        if now - self._told >= _SECONDS_BETWEEN:
            self._told = now
            self._hearing.better(plan)
        return self._hearing.going_on()

    def going_on(self) -> bool:
        """Whether anyone still wants a better plan."""
        now = time.monotonic()
        if now - self._shared >= _SECONDS_BETWEEN:
            self._shared = now
            self._hearing.share(min(1.0, (now - self._since) / SECONDS))
        return self._hearing.going_on()
