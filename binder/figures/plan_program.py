"""Finding a plan with CP-SAT: as little broken as may be, then the earliest end, then the latest beginnings.

One question has one plan, however often it is asked: each aim is first sought by a single worker, whose search is the
same every time, within a limit of work. Only what that leaves open goes to many workers that race; of plans that are
as good, they and a search that ran out of time may find now one and now another.
"""

from __future__ import annotations

import time
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from binder.figures.plan_model import PlanModel
from binder.figures.plan_solver import Outcome, Work, seconds_until, solved

if TYPE_CHECKING:
    from collections.abc import Callable

    from binder.figures.plan_question import Aims, Plan, PlanProgress, PlanQuestion

_ALONE = (("fixed", 0.3, 0.7), ("no_lp", 2.0, 0.6))
"""Single workers in the order they are given an aim: their way to search, how much work, what part of the time left.
The first finds good days soonest; the second settles the published instances (it has four seconds on one core)."""

_GLANCE = 0.05
"""The work of a single worker where it is only asked whether there is a plan."""

_LATE = Work(seconds=0.0, work=0.25, kind="max_lp", gap=0.01)
"""Late beginnings: sums of many are what this kind of worker is quick with; near the latest is late enough."""

_PARTS = {"breaks": 0.4, "end": 0.6}
"""The part of the time there still is that goes to each aim; the last has what is left."""


def find_plan(
    question: PlanQuestion,
    aims: Aims,
    *,
    seconds: float = 10.0,
    progress: PlanProgress | None = None,
    going_on: Callable[[], bool] | None = None,
    hint: Plan | None = None,
) -> Plan | None:
    """The best plan found in `seconds`, or None where there is none (or none was found in time).

    `progress` is told each better plan; the search ends with the best so far where it answers no, or where `going_on`
    does.
    """
    search = _Search(question, aims, seconds=seconds, progress=progress, going_on=going_on)
    if hint is not None:
        search.rules.begin_from(hint)
    if aims.give_way:
        search.break_least()
    found = search.end_early()
    if found is None or not aims.late or not search.wanted():
        return found
    return search.begin_late(found)


def can_be_planned(
    question: PlanQuestion, *, seconds: float, going_on: Callable[[], bool] = lambda: True
) -> bool | None:
    """Whether there is a plan at all; None where that is not settled in time."""
    model, ends_at = PlanModel(question).model, time.monotonic() + seconds
    outcome, _solver = solved(model, Work(seconds, _GLANCE, "fixed"), going_on=going_on)
    if outcome is Outcome.OPEN and going_on():
        outcome, _solver = solved(model, Work(seconds_until(ends_at)), going_on=going_on)
    return None if outcome is Outcome.OPEN else outcome is not Outcome.NONE


class _Search:
    """One search for a plan, aim after aim, within its time."""

    def __init__(
        self,
        question: PlanQuestion,
        aims: Aims,
        *,
        seconds: float,
        progress: PlanProgress | None,
        going_on: Callable[[], bool] | None,
    ) -> None:
        self.aims, self.progress, self.going_on = aims, progress, going_on
        self.ends_at = time.monotonic() + seconds
        self.stopped = False
        self.rules = PlanModel(question, give_way=aims.give_way)
        self.end = self.rules.model.new_int_var(0, max(0, self.rules.last), "end")
        for key in aims.ends or tuple(self.rules.starts):
            self.rules.model.add(self.end >= self.rules.end_of(key))

    def wanted(self) -> bool:
        """Whether anyone still wants a better plan."""
        return not self.stopped and (self.going_on is None or self.going_on())

    def break_least(self) -> None:
        """Let gaps give way by as few minutes in all as may be, and no more from here on."""
        self.rules.model.minimize(sum(self.rules.over.values()))
        plan = self._best("breaks", lambda plan: replace(plan, bound=0, proven=False))
        if plan is not None:
            self.rules.model.add(sum(self.rules.over.values()) <= sum(plan.broken.values()))
            self.rules.begin_from(plan)

    def end_early(self) -> Plan | None:
        """The plan whose aimed-at tasks end earliest."""
        self.rules.model.minimize(self.end)
        return self._best("end" if self.aims.late else "", lambda plan: plan)

    def begin_late(self, early: Plan) -> Plan:
        """The same end, with everything else begun as late as it can be."""
        rules = self.rules
        rules.model.add(self.end <= early.end)
        early_by = sum(weight * (early.end - rules.starts[key]) for key, weight in self.aims.late.items())
        rules.model.minimize(early_by)
        rules.begin_from(early)

        def kept(plan: Plan) -> Plan:
            return replace(plan, end=early.end, bound=early.bound, proven=early.proven)

        _outcome, late = self._solve(replace(_LATE, seconds=seconds_until(self.ends_at)), kept)
        return late or early

    def _best(self, part: str, finish: Callable[[Plan], Plan]) -> Plan | None:
        """The best plan for an aim: by a worker alone, and then, where that leaves it open, by those that race."""
        ends_at = time.monotonic() + _PARTS.get(part, 1.0) * seconds_until(self.ends_at)
        best: Plan | None = None
        for kind, work, of_time in _ALONE:
            outcome, best = self._better(best, Work(of_time * seconds_until(ends_at), work, kind), finish)
            if outcome in {Outcome.BEST, Outcome.NONE} or not self.wanted():
                return best
        return self._better(best, Work(seconds_until(ends_at)), finish)[1]

    def _better(self, best: Plan | None, work: Work, finish: Callable[[Plan], Plan]) -> tuple[Outcome, Plan | None]:
        """A search that begins from the best so far; no bound that was known is forgotten."""
        if best is not None:
            self.rules.begin_from(best)
        outcome, found = self._solve(work, finish)
        if best is None or found is None:
            return outcome, found or best
        return outcome, replace(found, bound=max(found.bound, best.bound))

    def _solve(self, work: Work, finish: Callable[[Plan], Plan]) -> tuple[Outcome, Plan | None]:
        if not self.wanted():
            return Outcome.OPEN, None

        def tell(values: Any) -> bool:  # noqa: ANN401 - a callback of the solver, without types
            return self._tell(finish(self._read(values, proven=False)))

        outcome, solver = solved(self.rules.model, work, going_on=self.wanted, tell=tell)
        if outcome not in {Outcome.BEST, Outcome.FOUND}:
            return outcome, None
        return outcome, finish(self._read(solver, proven=outcome is Outcome.BEST))

    def _tell(self, plan: Plan) -> bool:
        """Pass on a better plan; whether to go on."""
        if self.progress is not None and not self.progress(plan):
            self.stopped = True
        return not self.stopped

    def _read(self, values: Any, *, proven: bool) -> Plan:  # noqa: ANN401
        """The plan that a solver stands at."""
        bound = values.best_objective_bound
        return self.rules.plan(values.value, end=values.value(self.end), bound=bound, proven=proven)
