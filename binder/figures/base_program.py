"""Choosing between ways to a form.

A linear program, with whole numbers where batches ask for them, solved by OR-Tools.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from binder.figures.base_network import Network, Process, Runs

if TYPE_CHECKING:
    from collections.abc import Mapping

_SLACK = 1e-7
"""Relative room left to the first aim while the second is sought."""


class UnsolvedError(RuntimeError):
    """The solver gave no answer to a program that always has one: a defect, not something a user can mend."""


def chosen_runs(network: Network, wanted: Mapping[str, float]) -> Runs:
    """The runs that meet `wanted` with the least base, and of those with the least made in all.

    Variables are grams a process takes; each form must be made at least as much as it is used and taken on. A least
    amount
    or a whole batch makes it a program with whole numbers.
    """
    program = _Program(network, wanted)
    base = program.minimise(program.base_taken())
    program.keep(program.base_taken(), base)
    program.minimise(program.all_made())
    return Runs(program.grams(), program.base_used(wanted))


class _Program:
    def __init__(self, network: Network, wanted: Mapping[str, float]) -> None:
        from ortools.linear_solver import pywraplp

        self.network = network
        whole = any(process.least or process.batch for process in network.processes)
        self.solver = pywraplp.Solver.CreateSolver("SCIP" if whole else "GLOP")
        self.unbounded = self.solver.infinity()
        self.most = _most(network, wanted)
        self.runs: dict[str, Any] = {process.key: self._run(process) for process in network.processes}
        for form in {*network.forms, *(form for process in network.processes for form, _ratio in process.gives)}:
            self._balance(form, wanted.get(form, 0.0))

    def _run(self, process: Process) -> Any:  # noqa: ANN401 - the solver has no types
        run = self.solver.NumVar(0.0, self.unbounded, process.key)
        if process.batch is not None:
            count = self.solver.IntVar(0, self.unbounded, f"batches of {process.key}")
            self.solver.Add(run == process.batch * count)
        if process.least is not None:
            used = self.solver.BoolVar(f"{process.key} is run")
            self.solver.Add(run >= process.least * used)
            self.solver.Add(run <= self.most[process.key] * used)
        return run

    def _balance(self, form: str, wanted: float) -> None:
        given = [
            ratio * self.runs[process.key]
            for process in self.network.processes
            for key, ratio in process.gives
            if key == form
        ]
        taken = [self.runs[process.key] for process in self.network.processes if process.takes == form]
        if form != self.network.base and given:
            self.solver.Add(sum(given) - sum(taken) >= wanted)
        elif form != self.network.base and taken:
            self.solver.Add(sum(taken) <= 0.0)

    def base_taken(self) -> Any:  # noqa: ANN401
        return sum(self.runs[process.key] for process in self.network.processes if process.takes == self.network.base)

    def all_made(self) -> Any:  # noqa: ANN401
        return sum(self.runs.values())

    def minimise(self, aim: Any) -> float:  # noqa: ANN401
        self.solver.Minimize(aim)
        if self.solver.Solve() != self.solver.OPTIMAL:
            raise UnsolvedError(self.network)
        return float(self.solver.Objective().Value())

    def keep(self, aim: Any, value: float) -> None:  # noqa: ANN401
        self.solver.Add(aim <= value + _SLACK * max(1.0, value))

    def grams(self) -> dict[str, float]:
        found = {key: run.solution_value() for key, run in self.runs.items()}
        return {key: grams for key, grams in found.items() if grams > _SLACK}

    def base_used(self, wanted: Mapping[str, float]) -> float:
        taken = sum(
            self.runs[process.key].solution_value()
            for process in self.network.processes
            if process.takes == self.network.base
        )
        return float(taken + wanted.get(self.network.base, 0.0))


def _most(network: Network, wanted: Mapping[str, float]) -> dict[str, float]:
    """Grams that each process never needs to exceed.

    As much as if it alone served all that its outcomes are wanted for.
    """
    needed = dict(wanted)
    most: dict[str, float] = {}
    for process in network.processes:
        run = max((needed.get(form, 0.0) / ratio for form, ratio in process.gives), default=0.0)
        most[process.key] = run + (process.least or 0.0) + (process.batch or 0.0)
        needed[process.takes] = needed.get(process.takes, 0.0) + most[process.key]
    return most
