"""Finding a plan: constraint programming with CP-SAT, first for an early end, then for late beginnings."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from binder.figures.plan_question import Aims, Apart, Gap, Plan, PlanProgress, PlanQuestion, Resource, Task

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

_WORKERS = 8
"""More than a small machine has cores: CP-SAT's workers differ in kind, and a plan is found sooner with all kinds."""


def find_plan(
    question: PlanQuestion,
    aims: Aims,
    *,
    seconds: float = 10.0,
    progress: PlanProgress | None = None,
    hint: Mapping[str, int] | None = None,
) -> Plan | None:
    """The best plan found in `seconds`, or None where there is none (or none was found in time).

    The end is made as early as may be first; the second half of the time goes to late beginnings, that end kept.
    """
    program = _Program(question)
    if hint:
        program.begin_from(hint)
    early = program.minimise_end(aims, seconds=seconds * (0.6 if aims.late else 1.0), progress=progress)
    if early is None or not aims.late:
        return early
    return program.begin_late(aims, early, seconds=seconds * 0.4)


def can_be_planned(question: PlanQuestion, *, seconds: float) -> bool | None:
    """Whether there is a plan at all; None where that is not settled in time."""
    program = _Program(question)
    return program.has_any(seconds)


class _Program:
    def __init__(self, question: PlanQuestion) -> None:
        from ortools.sat.python import cp_model

        self.cp_model: Any = cp_model
        self.model = cp_model.CpModel()
        self.question, self.last = question, question.last_minute
        self.starts: dict[str, Any] = {}
        self.intervals: dict[str, Any] = {}
        for task in question.tasks:
            self._place(task)
        self.taken = {(task.key, key): self.model.new_bool_var(key) for task in question.tasks for key in task.either}
        for task in question.tasks:
            if task.either:
                self.model.add_exactly_one(self.taken[task.key, key] for key in task.either)
        for gap in question.gaps:
            self._leave_a_gap(gap)
        for apart in question.aparts:
            self._keep_apart(apart)
        for resource in question.resources:
            self._share(resource)

    def _place(self, task: Task) -> None:
        latest = (self.last if task.latest is None else task.latest) - task.minutes
        pinned = self.question.pinned.get(task.key)
        if pinned is not None:
            start = self.model.new_int_var(pinned, pinned, task.key)
        else:
            start = self.model.new_int_var(task.earliest, max(task.earliest, latest), task.key)
            if latest < task.earliest:
                self.model.add_bool_or([])
        self.starts[task.key] = start
        self.intervals[task.key] = self.model.new_fixed_size_interval_var(start, task.minutes, task.key)

    def _leave_a_gap(self, gap: Gap) -> None:
        end = self.starts[gap.before] + self.question.task(gap.before).minutes
        self.model.add(self.starts[gap.after] >= end + gap.least)
        if gap.most is not None:
            self.model.add(self.starts[gap.after] <= end + gap.most)

    def _keep_apart(self, apart: Apart) -> None:
        """One run wholly before the other."""
        first = self.model.new_bool_var(f"{apart.first[0]} before {apart.second[0]}")
        for (_begin, last), (begin, _last), chosen in (
            (apart.first, apart.second, first),
            (apart.second, apart.first, ~first),
        ):
            end = self.starts[last] + self.question.task(last).minutes
            self.model.add(self.starts[begin] >= end + apart.minutes).only_enforce_if(chosen)

    def _share(self, resource: Resource) -> None:
        users = [task for task in self.question.tasks if task.uses(resource.key) > 0]
        if not users:
            return
        intervals = [self._interval_at(task, resource) for task in users]
        demands = [task.uses(resource.key) for task in users]
        for absence in self.question.absences:
            if absence.resource == resource.key:
                size = absence.end - absence.start
                intervals.append(self.model.new_fixed_size_interval_var(absence.start, size, resource.key))
                demands.append(min(absence.amount, resource.capacity))
        if resource.capacity == 1 and all(demand == 1 for demand in demands):
            self.model.add_no_overlap(intervals)
        else:
            self.model.add_cumulative(intervals, demands, resource.capacity)
        if resource.change or resource.has_states:
            self._change_over(resource, users)

    def _interval_at(self, task: Task, resource: Resource) -> Any:  # noqa: ANN401 - the solver has no types
        """The task's time at a resource; absent where it takes another one."""
        taken = self.taken.get((task.key, resource.key))
        if taken is None:
            return self.intervals[task.key]
        start = self.starts[task.key]
        return self.model.new_optional_fixed_size_interval_var(
            start, task.minutes, taken, f"{task.key} at {resource.key}"
        )

    def _change_over(self, resource: Resource, users: Sequence[Task]) -> None:
        """Two tasks that do not go together lie apart by the time it takes to change from one to the other."""
        for at, one in enumerate(users):
            for other in users[at + 1 :]:
                if go_together(resource, one, other):
                    continue
                first = self.model.new_bool_var(f"{one.key} before {other.key}")
                here = [
                    self.taken[key] for key in ((one.key, resource.key), (other.key, resource.key)) if key in self.taken
                ]
                self._after(one, other, resource.change).only_enforce_if([first, *here])
                self._after(other, one, resource.change).only_enforce_if([~first, *here])

    def _after(self, one: Task, other: Task, minutes: int) -> Any:  # noqa: ANN401
        return self.model.add(self.starts[other.key] >= self.starts[one.key] + one.minutes + minutes)

    def begin_from(self, starts: Mapping[str, int]) -> None:
        """Look near a plan that is known."""
        self.model.clear_hints()  # type: ignore[no-untyped-call]
        for key, start in starts.items():
            if key in self.starts:
                self.model.add_hint(self.starts[key], start)

    def minimise_end(self, aims: Aims, *, seconds: float, progress: PlanProgress | None) -> Plan | None:
        """The plan whose aimed-at tasks end earliest."""
        self.end = self.model.new_int_var(0, self.last, "end")
        for key in aims.ends or tuple(self.starts):
            self.model.add(self.end >= self.starts[key] + self.question.task(key).minutes)
        self.model.minimize(self.end)
        solver, found = self._solve(seconds, progress)
        if found not in (self.cp_model.OPTIMAL, self.cp_model.FEASIBLE):
            return None
        return self._plan(solver, bound=round(solver.best_objective_bound), proven=found == self.cp_model.OPTIMAL)

    def has_any(self, seconds: float) -> bool | None:
        """Whether there is a plan at all; None where that is not settled in time."""
        _solver, found = self._solve(seconds, None)
        if found in (self.cp_model.OPTIMAL, self.cp_model.FEASIBLE):
            return True
        return False if found == self.cp_model.INFEASIBLE else None

    def begin_late(self, aims: Aims, early: Plan, *, seconds: float) -> Plan:
        """The same end, with everything else begun as late as it can be."""
        self.model.add(self.end <= early.end)
        self.model.maximize(sum(weight * self.starts[key] for key, weight in aims.late.items()))
        self.begin_from(early.starts)
        solver, found = self._solve(seconds, None)
        if found not in (self.cp_model.OPTIMAL, self.cp_model.FEASIBLE):
            return early
        late = self._plan(solver, bound=early.bound, proven=early.proven)
        return Plan(late.starts, early.end, early.bound, early.proven, late.taken)

    def _solve(self, seconds: float, progress: PlanProgress | None) -> tuple[Any, Any]:
        solver = self.cp_model.CpSolver()
        solver.parameters.max_time_in_seconds = seconds
        solver.parameters.num_workers = _WORKERS
        solver.parameters.random_seed = 1
        callback = _teller(self.cp_model, self.starts, self.end, progress) if progress else None
        return solver, solver.solve(self.model, callback)

    def _plan(self, solver: Any, *, bound: int, proven: bool) -> Plan:  # noqa: ANN401
        starts = {key: solver.value(start) for key, start in self.starts.items()}
        taken = {task: resource for (task, resource), var in self.taken.items() if solver.value(var)}
        return Plan(starts, solver.value(self.end), bound, proven, taken)


def go_together(resource: Resource, one: Task, other: Task) -> bool:
    """Whether two tasks may use a resource at once, or one right after the other."""
    if resource.has_states:
        return abs(one.state - other.state) <= resource.tolerance
    return one.group == other.group


def _teller(cp_model: Any, starts: Mapping[str, Any], end: Any, progress: PlanProgress) -> Any:  # noqa: ANN401
    """A callback that tells each better plan and stops the search where it is not wanted any more."""

    class Teller(cp_model.CpSolverSolutionCallback):  # type: ignore[misc]
        def on_solution_callback(self) -> None:
            found = {key: self.value(start) for key, start in starts.items()}
            plan = Plan(found, self.value(end), round(self.best_objective_bound), proven=False)
            if not progress(plan):
                self.stop_search()

    return Teller()
