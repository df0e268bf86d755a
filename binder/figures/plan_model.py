"""A plan's rules as CP-SAT takes them: a variable for each beginning, a choice for each resource taken."""

from __future__ import annotations

from itertools import combinations, product
from typing import TYPE_CHECKING, Any

from binder.figures.plan_question import Apart, Gap, Plan, PlanQuestion, Resource, Task, taken_away

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator, Sequence

Var = Any
"""A variable or an interval of the solver, which comes without types."""

_ROUNDED = 1e-6


class PlanModel:
    """The rules of one question. Aims are added by whoever solves it."""

    def __init__(self, question: PlanQuestion, *, give_way: frozenset[str] = frozenset()) -> None:
        from ortools.sat.python import cp_model

        self.model = cp_model.CpModel()
        self.question, self.last = question, question.last_minute
        self.starts: dict[str, Var] = {task.key: self._start_of(task) for task in question.tasks}
        self.intervals: dict[str, Var] = {task.key: self._interval(task) for task in question.tasks}
        self.taken: dict[tuple[str, int], dict[str, Var]] = {}
        self.over: dict[Gap, Var] = {}
        for task in question.tasks:
            self._choose(task)
        for gap in question.gaps:
            self._leave_a_gap(gap, gives_way=gap.key in give_way)
        for apart in question.aparts:
            self._keep_apart(apart)
        for resource in question.resources:
            self._share(resource)
        for pool in question.pools:
            self._share_pool(pool)

    def end_of(self, key: str) -> Var:
        """When a task ends."""
        return self.starts[key] + self.question.by_key[key].minutes

    def begin_from(self, plan: Plan) -> None:
        """Look near a plan that is known, which may be one of another question."""
        self.model.clear_hints()  # type: ignore[no-untyped-call]
        for key, start in plan.starts.items():
            if key in self.starts:
                self.model.add_hint(self.starts[key], start)
        for (key, at), choices in self.taken.items():
            took = plan.taken.get(key, ())
            for resource, var in choices.items() if at < len(took) and took[at] in choices else ():
                self.model.add_hint(var, resource == took[at])

    def plan(self, value: Callable[[Var], int], *, end: int, bound: float, proven: bool) -> Plan:
        """The plan that the solver's values stand for."""
        taken = {
            task.key: tuple(self._took(value, task, at) for at in range(len(task.one_of)))
            for task in self.question.tasks
            if task.one_of
        }
        broken = {gap: value(over) for gap, over in self.over.items()}
        return Plan(
            starts={key: value(start) for key, start in self.starts.items()},
            end=end,
            bound=min(end, _rounded_up(bound)),
            proven=proven,
            taken=taken,
            broken={gap: minutes for gap, minutes in broken.items() if minutes > 0},
        )

    def _took(self, value: Callable[[Var], int], task: Task, at: int) -> str:
        choices = self.taken.get((task.key, at))
        if choices is None:
            return task.one_of[at].resources[0]
        return next(resource for resource, var in choices.items() if value(var))

    def _start_of(self, task: Task) -> Var:
        pinned = self.question.pinned.get(task.key)
        if pinned is not None:
            return self.model.new_int_var(pinned, pinned, task.key)
        latest = (self.last if task.latest is None else min(task.latest, self.last)) - task.minutes
        if latest < task.earliest:
            self.model.add_bool_or([])
        return self.model.new_int_var(task.earliest, max(task.earliest, latest), task.key)

    def _interval(self, task: Task) -> Var:
        return self.model.new_fixed_size_interval_var(self.starts[task.key], task.minutes, task.key)

    def _choose(self, task: Task) -> None:
        """One resource of each choice that is one."""
        for at, choice in enumerate(task.one_of):
            if len(choice.resources) > 1:
                found = {key: self.model.new_bool_var(f"{task.key} takes {key}") for key in choice.resources}
                self.taken[task.key, at] = found
                self.model.add_exactly_one(found.values())

    def _leave_a_gap(self, gap: Gap, *, gives_way: bool) -> None:
        if gap.after in self.question.begun:
            return
        between = self.starts[gap.after] - self.end_of(gap.before)
        self.model.add(between >= gap.least)
        if gap.most is not None and gives_way:
            self.over[gap] = self.model.new_int_var(0, max(0, self.last), gap.key)
            self.model.add(between <= gap.most + self.over[gap])
        elif gap.most is not None:
            self.model.add(between <= gap.most)

    def _keep_apart(self, apart: Apart) -> None:
        """One run wholly before the other, but for those that are facts.

        As spans that do not overlap it gives the better bound, as a choice for each two the quicker search.
        """
        facts = [run for run in apart.runs if self.question.begun.issuperset(run)]
        planned = [run for run in apart.runs if run not in facts]
        self.model.add_no_overlap([self._span(run, apart.minutes) for run in planned])
        for one, other in [*combinations(planned, 2), *product(facts, planned)]:
            first = self.model.new_bool_var(f"{one[0]} before {other[0]}")
            for (_begin, last), (begin, _last), chosen in ((one, other, first), (other, one, ~first)):
                self.model.add(self.starts[begin] >= self.end_of(last) + apart.minutes).only_enforce_if(chosen)

    def _span(self, run: tuple[str, str], minutes: int) -> Var:
        """From the beginning of a run's first task to so many minutes past the end of its last."""
        first, last = run
        long = self.model.new_int_var(0, max(0, self.last) + minutes, f"{first} to {last}")
        return self.model.new_interval_var(self.starts[first], long, self.end_of(last) + minutes, f"{first} to {last}")

    def _share(self, resource: Resource) -> None:
        """No more of a resource is used at once than there is."""
        users = [task for task in self.question.tasks if task.minutes and task.may_use(resource.key)]
        planned = [task for task in users if task.key not in self.question.begun]
        if not planned:
            return
        used = [*self._uses(planned, resource.key), *self._gone(resource)]
        self._fit_into(used, resource.capacity)
        if resource.change or resource.has_states:
            self._change_over(resource, users)

    def _share_pool(self, pool: Sequence[str]) -> None:
        """The same over resources that do the same work. It follows from the others, and helps to find plans."""
        resources = [one for one in self.question.resources if one.key in pool]
        planned = [task for task in self.question.tasks if task.minutes and task.key not in self.question.begun]
        used = [
            (interval, amount)
            for task in planned
            for choice in task.one_of
            if set(choice.resources) <= set(pool)
            for interval, amount in [(self.intervals[task.key], choice.amount)]
        ]
        gone = [one for resource in resources for one in self._gone(resource)]
        if used:
            self._fit_into([*used, *gone], sum(resource.capacity for resource in resources))

    def _uses(self, tasks: Iterable[Task], key: str) -> Iterator[tuple[Var, int]]:
        """When tasks use some of a resource, and how much of it."""
        for task in tasks:
            if task.needs.get(key):
                yield self._use(task, key), task.needs[key]
            for at, choice in enumerate(task.one_of):
                if key in choice.resources:
                    yield self._use(task, key, self.taken.get((task.key, at), {}).get(key)), choice.amount

    def _use(self, task: Task, key: str, taken: Var | None = None) -> Var:
        """The task's time at a resource, with what it keeps it for; absent where it has taken another one."""
        until = [one for one in task.until if one not in self.question.begun]
        if not until and taken is None:
            return self.intervals[task.key]
        start, there, name = self.starts[task.key], True if taken is None else taken, f"{task.key} at {key}"
        if not until:
            return self.model.new_optional_fixed_size_interval_var(start, task.minutes, there, name)
        size = self.model.new_int_var(task.minutes, max(task.minutes, self.last), name)
        return self.model.new_optional_interval_var(start, size, self._last_beginning(until), there, name)

    def _last_beginning(self, tasks: Sequence[str]) -> Var:
        if len(tasks) == 1:
            return self.starts[tasks[0]]
        last = self.model.new_int_var(0, max(0, self.last), f"the last of {', '.join(tasks)}")
        self.model.add_max_equality(last, [self.starts[one] for one in tasks])
        return last

    def _gone(self, resource: Resource) -> Iterator[tuple[Var, int]]:
        for start, end, amount in taken_away(self.question, resource):
            yield self.model.new_fixed_size_interval_var(start, end - start, f"no {resource.key}"), amount

    def _fit_into(self, used: Sequence[tuple[Var, int]], capacity: int) -> None:
        intervals, amounts = [interval for interval, _amount in used], [amount for _interval, amount in used]
        if capacity == 1 and all(amount == 1 for amount in amounts):
            self.model.add_no_overlap(intervals)
        else:
            self.model.add_cumulative(intervals, amounts, capacity)

    def _change_over(self, resource: Resource, users: Sequence[Task]) -> None:
        """Two tasks that do not go together lie apart by the time it takes to change from one to the other."""
        for one, other in combinations(users, 2):
            both_begun = one.key in self.question.begun and other.key in self.question.begun
            if both_begun or resource.goes_together(one, other):
                continue
            first = self.model.new_bool_var(f"{one.key} before {other.key} at {resource.key}")
            here = [*self._taking(one, resource), *self._taking(other, resource)]
            for before, after, chosen in ((one, other, first), (other, one, ~first)):
                ready = self.end_of(before.key) + resource.change
                self.model.add(self.starts[after.key] >= ready).only_enforce_if([chosen, *here])

    def _taking(self, task: Task, resource: Resource) -> list[Var]:
        """What is true where a task takes a resource; nothing where it always does."""
        if task.needs.get(resource.key):
            return []
        return [
            self.taken[task.key, at][resource.key]
            for at, choice in enumerate(task.one_of)
            if resource.key in choice.resources and (task.key, at) in self.taken
        ]


def _rounded_up(bound: float) -> int:
    """The least whole minute a bound allows."""
    return int(-(-(bound - _ROUNDED) // 1))
