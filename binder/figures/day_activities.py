"""What the tasks of a day's plan stand for, and the tasks of a shoot while they are gathered."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from enum import StrEnum

from binder.figures.plan_question import Apart, Gap, Task
from binder.kitchen.day import PinTarget

HOLD, KEEPS = "hold ", "keeps "
"""What keys of gaps begin with that end with the id of a step whose result, or of a form that, stays fit so long."""


WAIT = "/wait"
"""What the key of a wait ends with; before it stands the key of the step that it follows."""


def wait_after(key: str) -> str:
    """The key of the wait that follows a step, by the key of the step."""
    return f"{key}{WAIT}"


def step_of(key: str) -> str:
    """The key of the step that a wait follows, or of a step itself."""
    return key.removesuffix(WAIT)


class ActivityKind(StrEnum):
    """What an activity of the day is."""

    CONVERSION = "conversion"
    AHEAD = "made ahead"
    PREP = "prep"
    WAIT = "wait"
    FILM = "on camera"
    TALK = "to camera"


FILMED = frozenset({ActivityKind.FILM, ActivityKind.TALK})
"""The kinds that the camera sees."""


@dataclass(frozen=True)
class Activity:
    """What a task of the plan stands for."""

    key: str
    kind: ActivityKind
    name: str
    dish: str | None = None
    build: str | None = None
    step: str | None = None
    conversion: str | None = None

    @property
    def target(self) -> PinTarget:
        """What pins it: a wait goes with its step."""
        return PinTarget(dish=self.dish, build=self.build, step=self.step, conversion=self.conversion)


@dataclass
class DayWork:
    """The tasks of a shoot while they are gathered.

    `filmed` has the first and the last task that the camera sees of each dish. `put_away` are tasks that nothing waits
    for and that need not be done before the wrap: what becomes of a build that another has taken the place of.
    """

    tasks: list[Task] = field(default_factory=list)
    gaps: list[Gap] = field(default_factory=list)
    aparts: list[Apart] = field(default_factory=list)
    activities: dict[str, Activity] = field(default_factory=dict)
    assumed: dict[str, None] = field(default_factory=dict)
    filmed: dict[str, tuple[str, str]] = field(default_factory=dict)
    put_away: list[str] = field(default_factory=list)
    foods: dict[str, tuple[str, ...]] = field(default_factory=dict)

    def add(self, task: Task, activity: Activity) -> None:
        """One more task."""
        self.tasks.append(task)
        self.activities[task.key] = activity

    def after(self, before: str, after: str, least: float, hold: float | None = None, *, key: str = "") -> None:
        """`after` begins `least` minutes after `before` ends, and no more than `hold` minutes later than that."""
        wait = math.ceil(least)
        self.gaps.append(Gap(before, after, wait, None if hold is None else wait + math.floor(hold), key))

    @property
    def pins(self) -> dict[PinTarget, str]:
        """The task that a pin on each target holds."""
        return {one.target: key for key, one in self.activities.items() if one.kind is not ActivityKind.WAIT}


@dataclass(frozen=True)
class Done:
    """What a thread of work has behind it: its task, how long its result must wait and how long it then stays fit.

    `key` names the gap to whatever uses it; `position` is that of its step in the recipe.
    """

    task: str
    wait: float
    hold: float | None
    key: str
    position: int = -1
