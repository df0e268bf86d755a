"""Finding a plan with CP-SAT: as little broken as may be, then the earliest end, then the latest beginnings."""

from __future__ import annotations

import threading
import time
from contextlib import contextmanager
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from binder.figures.plan_model import PlanModel

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from binder.figures.plan_question import Aims, Plan, PlanProgress, PlanQuestion

_WORKERS = 8
"""More than a small machine has cores: CP-SAT's workers differ in kind, and a plan is found sooner with all kinds."""

_SECONDS_BETWEEN_LOOKS = 0.05
"""How often a search looks whether it is still wanted."""

_LATE_ENOUGH = 0.01
"""Beginnings within this part of the latest there could be are not worth another second."""

_SECONDS_WITHOUT_BETTER = 1.5
"""Where beginnings have not become later for so long, they are late enough too."""

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
    question: PlanQuestion, *, seconds: float, going_on: Callable[[], bool] | None = None
) -> bool | None:
    """Whether there is a plan at all; None where that is not settled in time."""
    from ortools.sat.python import cp_model

    rules = PlanModel(question)
    solver = _solver(seconds)
    with _stopped_unless(going_on or (lambda: True), solver):
        found = solver.solve(rules.model)
    if found in {cp_model.OPTIMAL, cp_model.FEASIBLE}:
        return True
    return False if found == cp_model.INFEASIBLE else None


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
        self.question, self.aims, self.progress = question, aims, progress
        self.going_on = going_on
        self.ends_at = time.monotonic() + seconds
        self.stopped, self.better_at = False, time.monotonic()
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
        plan = self._solve("breaks", lambda plan: replace(plan, bound=0, proven=False))
        if plan is not None:
            self.rules.model.add(sum(self.rules.over.values()) <= sum(plan.broken.values()))
            self.rules.begin_from(plan)

    def end_early(self) -> Plan | None:
        """The plan whose aimed-at tasks end earliest."""
        self.rules.model.minimize(self.end)
        return self._solve("end" if self.aims.late else "", lambda plan: plan)

    def begin_late(self, early: Plan) -> Plan:
        """The same end, with everything else begun as late as it can be."""
        rules = self.rules
        rules.model.add(self.end <= early.end)
        early_by = sum(weight * (early.end - rules.starts[key]) for key, weight in self.aims.late.items())
        rules.model.minimize(early_by)
        rules.begin_from(early)

        def kept(plan: Plan) -> Plan:
            return replace(plan, end=early.end, bound=early.bound, proven=early.proven)

        self.better_at = time.monotonic()
        return self._solve("", kept, worth_a_wait=False) or early

    def _solve(self, part: str, finish: Callable[[Plan], Plan], *, worth_a_wait: bool = True) -> Plan | None:
        from ortools.sat.python import cp_model

        if not self.wanted():
            return None
        left = max(0.01, self.ends_at - time.monotonic())
        solver = _solver(left * _PARTS.get(part, 1.0), gap=0.0 if worth_a_wait else _LATE_ENOUGH)
        teller = _teller(self, finish)
        with _stopped_unless(lambda: self.wanted() and (worth_a_wait or not self._stalls()), solver):
            found = solver.solve(self.rules.model, teller)
        if found not in {cp_model.OPTIMAL, cp_model.FEASIBLE}:
            return None
        return finish(self.read(solver, proven=found == cp_model.OPTIMAL))

    def tell(self, plan: Plan) -> bool:
        """Pass on a better plan; whether to go on."""
        self.better_at = time.monotonic()
        if self.progress is not None and not self.progress(plan):
            self.stopped = True
        return not self.stopped

    def _stalls(self) -> bool:
        return time.monotonic() - self.better_at > _SECONDS_WITHOUT_BETTER

    def read(self, values: Any, *, proven: bool) -> Plan:  # noqa: ANN401 - a solver or its callback, without types
        """The plan that a solver stands at."""
        bound = values.best_objective_bound
        return self.rules.plan(values.value, end=values.value(self.end), bound=bound, proven=proven)


def _solver(seconds: float, *, gap: float = 0.0) -> Any:  # noqa: ANN401
    from ortools.sat.python import cp_model

    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = seconds
    solver.parameters.num_workers = _WORKERS
    solver.parameters.random_seed = 1
    solver.parameters.relative_gap_limit = gap
    return solver


@contextmanager
def _stopped_unless(going_on: Callable[[], bool], solver: Any) -> Iterator[None]:  # noqa: ANN401
    """Stop a search where it is no longer wanted, also while it has found nothing to tell."""
    over = threading.Event()

    def look() -> None:
        while not over.wait(_SECONDS_BETWEEN_LOOKS):
            if not going_on():
                solver.stop_search()

    watcher = threading.Thread(target=look, name="binder-plan-watch", daemon=True)
    watcher.start()
    try:
        yield
    finally:
        over.set()
        watcher.join()


def _teller(search: _Search, finish: Callable[[Plan], Plan]) -> Any:  # noqa: ANN401
    """A callback that tells each better plan, and stops the search where it is not wanted any more."""
    from ortools.sat.python import cp_model

    class Teller(cp_model.CpSolverSolutionCallback):
        def on_solution_callback(self) -> None:
            if not search.tell(finish(search.read(self, proven=False))):
                self.stop_search()

    return Teller()
