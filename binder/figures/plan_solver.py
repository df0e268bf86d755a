"""CP-SAT set to work on a model: by a single worker whose search is the same every time, or by many that race."""

from __future__ import annotations

import threading
import time
from contextlib import contextmanager
from dataclasses import dataclass
from enum import Enum
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

_RACING = 8
"""More than a small machine has cores: CP-SAT's workers differ in kind, and a plan is found sooner with all kinds."""

_SECONDS_BETWEEN_LOOKS = 0.05
"""How often a search looks whether it is still wanted."""


class Outcome(Enum):
    """What a search has come to."""

    BEST = "best"
    FOUND = "found"
    NONE = "none"
    OPEN = "open"


@dataclass(frozen=True)
class Work:
    """How long a search may take: `seconds` by the clock, and `work` of CP-SAT's own measure (None: no limit).

    A limit of work is reached at the same point of the search on any machine. Without one many workers race. `kind`
    names the single worker's way to search, `gap` the part of the best there could be that need not be found.
    """

    seconds: float
    work: float | None = None
    kind: str = ""
    gap: float = 0.0


def solved(
    model: Any,  # noqa: ANN401 - a model of the solver, which comes without types
    work: Work,
    *,
    going_on: Callable[[], bool],
    tell: Callable[[Any], bool] = lambda _values: True,
) -> tuple[Outcome, Any]:
    """What a search comes to, and the solver that has its values; `tell` hears of each better one, and may end it."""
    solver = _solver(work)
    with _stopped_unless(going_on, solver):
        return _outcome(solver.solve(model, _teller(tell))), solver


def _solver(work: Work) -> Any:  # noqa: ANN401
    from ortools.sat.python import cp_model

    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = max(0.01, work.seconds)
    solver.parameters.num_workers = _RACING if work.work is None else 1
    solver.parameters.random_seed = 1
    solver.parameters.relative_gap_limit = work.gap
    # The solver's own answer to Ctrl-C outlives the search it was for, and then ends the program.
    solver.parameters.catch_sigint_signal = False
    if work.work is not None:
        solver.parameters.max_deterministic_time = work.work
    if work.kind:
        solver.parameters.subsolvers.append(work.kind)
    return solver


def _outcome(status: Any) -> Outcome:  # noqa: ANN401
    from ortools.sat.python import cp_model

    known = {
        cp_model.OPTIMAL: Outcome.BEST,
        cp_model.FEASIBLE: Outcome.FOUND,
        cp_model.INFEASIBLE: Outcome.NONE,
    }
    return known.get(status, Outcome.OPEN)


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


def _teller(tell: Callable[[Any], bool]) -> Any:  # noqa: ANN401
    """A callback that tells each better plan, and stops the search where it is not wanted any more."""
    from ortools.sat.python import cp_model

    class Teller(cp_model.CpSolverSolutionCallback):
        def on_solution_callback(self) -> None:
            if not tell(self):
                self.stop_search()

    return Teller()


def seconds_until(moment: float) -> float:
    """Seconds from now to a moment of the monotonic clock; never negative."""
    return max(0.0, moment - time.monotonic())
