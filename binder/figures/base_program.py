"""Choosing between ways to a form: a linear program, in whole numbers where batches ask for them, solved by OR-Tools.

It is set up once for a network and solved again for each demand: setting it up takes longer than solving it.
"""

from __future__ import annotations

import threading
from typing import TYPE_CHECKING, Any

from binder.figures.base_network import Network, Process, Runs, UnsolvedError

if TYPE_CHECKING:
    from collections.abc import Mapping

_SLACK = 1e-7
"""Relative room left to the first aim while the second is sought."""

_TIE = 1e-5
"""How much more a later process weighs in the second aim, so that equal plans come out the same each time."""

_KEPT = 8
"""Programs kept for each thread; the solvers cannot be shared between threads."""

_kept = threading.local()


def program_of(network: Network, *, whole: bool = True) -> Program:
    """The program of a network, with its least amounts and whole batches or (not `whole`) as if there were none.

    Its methods raise UnsolvedError where the solver gives no answer.
    """
    kept: dict[tuple[Network, bool], Program] = _kept.__dict__.setdefault("programs", {})
    key = (network, whole and network.in_batches)
    if key not in kept:
        if len(kept) >= _KEPT:
            del kept[next(iter(kept))]
        kept[key] = Program(network, whole=key[1])
    return kept[key]


class Program:
    """Variables are grams a process takes; each form must be made at least as much as it is used and taken on."""

    def __init__(self, network: Network, *, whole: bool) -> None:
        from ortools.linear_solver import pywraplp

        self._network, self._whole = network, whole
        self._solver = pywraplp.Solver.CreateSolver("SCIP" if whole else "GLOP")
        self._exactly = pywraplp.MPSolverParameters()
        self._exactly.SetDoubleParam(pywraplp.MPSolverParameters.RELATIVE_MIP_GAP, 0.0)  # it would stop at 0.01 %
        self._unbounded = self._solver.infinity()
        self._optimal = self._solver.OPTIMAL
        self._caps: dict[str, tuple[Any, Any]] = {}
        self._runs: dict[str, Any] = {process.key: self._run(process) for process in network.processes}
        self._times = self._solver.NumVar(0.0, 0.0, "times")
        self._given = {form for process in network.processes for form, _ratio in process.gives}
        self._needs = self._balances()
        self._base = self._solver.Constraint(-self._unbounded, self._unbounded, "base")
        self._base_taken = [
            (self._runs[process.key], share)
            for process in network.processes
            for form, share in process.inputs
            if form == network.base
        ]
        for run, share in self._base_taken:
            self._base.SetCoefficient(run, share)

    def _run(self, process: Process) -> Any:  # noqa: ANN401 - the solver has no types
        run = self._solver.NumVar(0.0, self._unbounded, process.key)
        if self._whole and process.batch is not None:
            count = self._solver.IntVar(0, self._unbounded, f"batches of {process.key}")
            self._solver.Add(run == process.batch * count)
        if self._whole and process.least is not None:
            used = self._solver.BoolVar(f"{process.key} is run")
            self._solver.Add(run >= process.least * used)
            cap = self._solver.Constraint(-self._unbounded, 0.0)
            cap.SetCoefficient(run, 1.0)
            self._caps[process.key] = (cap, used)
        return run

    def _balances(self) -> dict[str, Any]:
        """A constraint for each form that is made or taken: made less taken is what is wanted, or more."""
        needs: dict[str, Any] = {}
        for process in self._network.processes:
            for form, ratio in (*process.gives, *((form, -share) for form, share in process.inputs)):
                if form != self._network.base:
                    if form not in needs:
                        needs[form] = self._solver.Constraint(0.0, self._unbounded, form)
                    run = self._runs[process.key]
                    needs[form].SetCoefficient(run, needs[form].GetCoefficient(run) + ratio)
        return needs

    def least(self, wanted: Mapping[str, float]) -> float:
        """The least grams of base that meet `wanted` (grams by form). Forms nothing gives are left out of account."""
        self._ask(wanted)
        self._limit_runs(_most_wanted(self._network, wanted))
        return self._least_of(self._base_taken) + wanted.get(self._network.base, 0.0)

    def worth(self, wanted: Mapping[str, float]) -> dict[str, float]:
        """Grams of base that the last gram wanted of each form takes. Of a program without batches only."""
        self.least(wanted)
        duals = {form: float(need.dual_value()) for form, need in self._needs.items() if form in self._given}
        return {self._network.base: 1.0, **duals}

    def runs(self, wanted: Mapping[str, float]) -> Runs:
        """The runs that meet `wanted` with the least base, and of those with the least made in all."""
        taken = self.least(wanted) - wanted.get(self._network.base, 0.0)
        self._base.SetUb(taken + _SLACK * max(1.0, taken))
        self._least_of([(run, 1.0 + _TIE * place) for place, run in enumerate(self._runs.values())])
        found = {key: float(run.solution_value()) for key, run in self._runs.items()}
        taken = sum(share * float(run.solution_value()) for run, share in self._base_taken)
        base = taken + wanted.get(self._network.base, 0.0)
        return Runs({key: grams for key, grams in found.items() if grams > _SLACK}, base)

    def furthest(self, wanted: Mapping[str, float], more: Mapping[str, float], *, base: float, most: float) -> float:
        """How many times `more`, up to `most`, can be met beside `wanted` from `base` grams; 0 where not even that."""
        own = self._network.base
        self._ask(wanted)
        self._limit_runs(_most_from(self._network, base))
        self._base.SetUb(base - wanted.get(own, 0.0))
        self._times.SetBounds(0.0, most)
        for form, need in (*self._needs.items(), (own, self._base)):
            need.SetCoefficient(self._times, (1.0 if form == own else -1.0) * more.get(form, 0.0))
        objective = self._solver.Objective()
        objective.Clear()
        objective.SetCoefficient(self._times, 1.0)
        objective.SetMaximization()
        return float(self._times.solution_value()) if self._solver.Solve(self._exactly) == self._optimal else 0.0

    def _ask(self, wanted: Mapping[str, float]) -> None:
        for form, need in self._needs.items():
            need.SetLb(wanted.get(form, 0.0) if form in self._given else 0.0)
        self._base.SetUb(self._unbounded)
        self._times.SetBounds(0.0, 0.0)

    def _limit_runs(self, most: Mapping[str, float]) -> None:
        """What is not used takes nothing; what is used takes what it never needs to exceed."""
        for key, (cap, used) in self._caps.items():
            cap.SetCoefficient(used, -most[key])

    def _least_of(self, runs: list[tuple[Any, float]]) -> float:
        """The smallest sum of some runs, each with its weight."""
        objective = self._solver.Objective()
        objective.Clear()
        for run, weight in runs:
            objective.SetCoefficient(run, weight)
        objective.SetMinimization()
        if self._solver.Solve(self._exactly) != self._optimal:
            raise UnsolvedError(self._network)
        return float(objective.Value())


def _most_wanted(network: Network, wanted: Mapping[str, float]) -> dict[str, float]:
    """Grams that each process never needs to exceed: as if it alone served all that its outcomes are wanted for."""
    needed = dict(wanted)
    most: dict[str, float] = {}
    for process in network.processes:
        run = max((needed.get(form, 0.0) / ratio for form, ratio in process.gives), default=0.0)
        most[process.key] = run + (process.least or 0.0) + (process.batch or 0.0)
        for part, share in process.inputs:
            needed[part] = needed.get(part, 0.0) + share * most[process.key]
    return most


def _most_from(network: Network, base: float) -> dict[str, float]:
    """Grams that each process can take at most where there are so many grams of base."""
    there_is = {network.base: base}
    most: dict[str, float] = {}
    for process in reversed(network.processes):
        most[process.key] = min(there_is.get(form, 0.0) / share for form, share in process.inputs)
        for form, ratio in process.gives:
            there_is[form] = there_is.get(form, 0.0) + ratio * most[process.key]
    return most
