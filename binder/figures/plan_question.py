"""A plan to be found, in plain numbers: tasks, what they need, what must lie between them. Times are whole minutes."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True)
class Task:
    """Something that takes `minutes` without a break, and all that while so much of each resource in `needs`.

    It begins at `earliest` or later and ends by `latest` (None: whenever). `either` names resources of which it takes
    one place of any one (two ovens). `state` is what such a resource, or one in `needs`, must be at (an oven at 220).
    `group` is what a tool must be washed between.
    """

    key: str
    minutes: int
    needs: Mapping[str, int] = field(default_factory=dict)
    either: tuple[str, ...] = ()
    places: int = 1
    state: int = 0
    earliest: int = 0
    latest: int | None = None
    group: str = ""

    def uses(self, resource: str) -> int:
        """How much of a resource it takes, or may take."""
        return self.needs.get(resource, self.places if resource in self.either else 0)


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
    """Two runs of tasks, each from its first to its last, that do not interleave: `minutes` lie between them."""

    first: tuple[str, str]
    second: tuple[str, str]
    minutes: int = 0


@dataclass(frozen=True)
class PlanQuestion:
    """All that a plan must keep. `pinned` tasks begin at a fixed minute."""

    tasks: tuple[Task, ...]
    resources: tuple[Resource, ...]
    gaps: tuple[Gap, ...] = ()
    absences: tuple[Absence, ...] = ()
    aparts: tuple[Apart, ...] = ()
    pinned: Mapping[str, int] = field(default_factory=dict)
    horizon: int | None = None

    def task(self, key: str) -> Task:
        """The task called `key`."""
        return next(task for task in self.tasks if task.key == key)

    @property
    def last_minute(self) -> int:
        """A minute by which everything surely has ended, if anything can."""
        if self.horizon is not None:
            return self.horizon
        begun = [absence.end for absence in self.absences] + [task.earliest for task in self.tasks]
        begun += list(self.pinned.values())
        work = sum(task.minutes for task in self.tasks) + sum(max(0, gap.least) for gap in self.gaps)
        changes = len(self.tasks) * sum(resource.change for resource in self.resources)
        return max(begun, default=0) + work + changes + sum(apart.minutes for apart in self.aparts)


@dataclass(frozen=True)
class Aims:
    """What a plan is for, in this order: `ends` end as early as may be, `late` begin as late as may be (by weight)."""

    ends: tuple[str, ...] = ()
    late: Mapping[str, int] = field(default_factory=dict)


@dataclass(frozen=True)
class Plan:
    """When each task begins. `end` is when the last of the aimed-at tasks ends; no plan can have it before `bound`.

    `taken` says which resource a task took where it had a choice.
    """

    starts: Mapping[str, int]
    end: int
    bound: int
    proven: bool
    taken: Mapping[str, str] = field(default_factory=dict)


PlanProgress = Callable[[Plan], bool]
"""Told each better plan; answers whether to go on."""
