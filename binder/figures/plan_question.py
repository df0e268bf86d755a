"""A plan to be found, in plain numbers: tasks, what they need, what must lie between them. Times are whole minutes."""

from __future__ import annotations

import functools
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True)
class OneOf:
    """`amount` of any one of `resources`: two ovens that would both do, several pairs of hands."""

    resources: tuple[str, ...]
    amount: int = 1


@dataclass(frozen=True)
class Task:
    """Something that takes `minutes` without a break, and all that while so much of each resource in `needs`.

    It begins at `earliest` or later (`because` names the demand that this comes from) and ends by `latest` (None:
    whenever). Of each entry in `one_of` it takes one
    resource besides. `state` is what such a resource must be at (an oven at 220). `group` is what a tool must be washed
    between. What it takes it keeps when its minutes are over, until the last of the tasks in `until` begins: what has
    been chilled stays in the fridge. Tasks that have begun keep nothing.
    """

    key: str
    minutes: int
    needs: Mapping[str, int] = field(default_factory=dict)
    one_of: tuple[OneOf, ...] = ()
    state: int = 0
    earliest: int = 0
    because: str = ""
    latest: int | None = None
    group: str = ""
    until: tuple[str, ...] = ()

    def may_use(self, resource: str) -> bool:
        """Whether it takes, or may take, some of a resource."""
        return self.needs.get(resource, 0) > 0 or any(resource in choice.resources for choice in self.one_of)


@dataclass(frozen=True)
class Resource:
    """People, burners, an oven, a tool, the camera: `capacity` of it at any moment.

    A resource with states holds two tasks at once only where their states differ by `tolerance` at most, and takes
    `change` minutes from one to another; a tool takes `change` minutes between tasks of different groups.
    """

    key: str
    capacity: int = 1
    has_states: bool = False
    tolerance: int = 0
    change: int = 0

    def goes_together(self, one: Task, other: Task) -> bool:
        """Whether two tasks may use it at once, or one right after the other."""
        if self.has_states:
            return abs(one.state - other.state) <= self.tolerance
        return not self.change or one.group == other.group


RUNNING_ORDER = "running order"
"""The key of gaps that put one run of tasks after another only because someone wants that order."""


@dataclass(frozen=True)
class Gap:
    """Minutes from the end of one task to the beginning of another: at least `least`, at most `most` (None: any).

    `key` names the demand that it comes from, for whoever has to give way.
    """

    before: str
    after: str
    least: int = 0
    most: int | None = None
    key: str = ""


@dataclass(frozen=True)
class Absence:
    """Minutes from `start` to `end` in which `amount` of a resource is not there: a night, a lunch. `key` names why."""

    resource: str
    start: int
    end: int
    amount: int
    key: str = ""


@dataclass(frozen=True)
class Apart:
    """Runs of tasks, each from its first to its last, that do not interleave: `minutes` lie between any two."""

    runs: tuple[tuple[str, str], ...]
    minutes: int = 0


@dataclass(frozen=True)
class PlanQuestion:
    """All that a plan must keep.

    `pinned` tasks begin at a fixed minute, whatever their own times say; those in `begun` are facts besides: no gap
    leads to them any more, and what they break among themselves is broken. The resources of a pool do the same work
    (the crew): to say so only helps to find plans.
    """

    tasks: tuple[Task, ...]
    resources: tuple[Resource, ...]
    gaps: tuple[Gap, ...] = ()
    absences: tuple[Absence, ...] = ()
    aparts: tuple[Apart, ...] = ()
    pinned: Mapping[str, int] = field(default_factory=dict)
    begun: frozenset[str] = frozenset()
    pools: tuple[tuple[str, ...], ...] = ()
    horizon: int | None = None

    @functools.cached_property
    def by_key(self) -> Mapping[str, Task]:
        """The tasks by their keys."""
        return {task.key: task for task in self.tasks}

    @functools.cached_property
    def last_minute(self) -> int:
        """A minute by which everything surely has ended, if anything can."""
        if self.horizon is not None:
            return self.horizon
        begun = [absence.end for absence in self.absences] + [task.earliest for task in self.tasks]
        begun += list(self.pinned.values())
        work = sum(task.minutes for task in self.tasks) + sum(max(0, gap.least) for gap in self.gaps)
        changes = len(self.tasks) * sum(resource.change for resource in self.resources)
        return max(begun, default=0) + work + changes + sum(apart.minutes * len(apart.runs) for apart in self.aparts)


@dataclass(frozen=True)
class Aims:
    """What a plan is for, in this order.

    Gaps whose key is in `give_way` may be longer than their most, together by as few minutes as may be; then `ends` end
    as early as may be (all tasks, where there are none); then `late` begin as late as may be (by weight).
    """

    ends: tuple[str, ...] = ()
    late: Mapping[str, int] = field(default_factory=dict)
    give_way: frozenset[str] = frozenset()


@dataclass(frozen=True)
class Plan:
    """When each task begins. `end` is when the last of the aimed-at tasks ends; no plan can have it before `bound`.

    `taken` says for each task which resource it took of each of its choices, in their order; `broken` by how many
    minutes each gap that gave way is too long.
    """

    starts: Mapping[str, int]
    end: int
    bound: int
    proven: bool
    taken: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    broken: Mapping[Gap, int] = field(default_factory=dict)


PlanProgress = Callable[[Plan], bool]
"""Told each better plan; answers whether to go on."""


def taken_away(question: PlanQuestion, resource: Resource) -> tuple[tuple[int, int, int], ...]:
    """When how much of a resource is not there, as (from, to, amount) that do not overlap; never more than there is.

    What has begun takes its part as absences do.
    """
    changes: dict[int, int] = {}
    for start, end, amount in _takers(question, resource):
        changes[start] = changes.get(start, 0) + amount
        changes[end] = changes.get(end, 0) - amount
    found: list[tuple[int, int, int]] = []
    amount, since = 0, 0
    for minute in sorted(changes):
        gone = min(amount, resource.capacity)
        if gone > 0 and minute > since:
            joins = found and found[-1][1:] == (since, gone)
            found[-1:] = [(found[-1][0], minute, gone)] if joins else [*found[-1:], (since, minute, gone)]
        amount, since = amount + changes[minute], minute
    return tuple(found)


def _takers(question: PlanQuestion, resource: Resource) -> list[tuple[int, int, int]]:
    away = [(one.start, one.end, one.amount) for one in question.absences if one.resource == resource.key]
    for key in sorted(question.begun):
        task, start = question.by_key[key], question.pinned[key]
        amount = task.needs.get(resource.key, 0)
        away += [(start, start + task.minutes, amount)] if amount and task.minutes else []
    return [one for one in away if one[1] > one[0]]
