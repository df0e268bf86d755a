"""The day plan: when everything starts, so that every build is ready and fresh when the camera turns to it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from binder.figures.date_text import moment_text
from binder.figures.day_activities import HOLD, KEEPS, Activity
from binder.figures.day_crew import who_does_what
from binder.figures.day_question import DayQuestion, day_question
from binder.figures.plan_program import find_plan
from binder.figures.plan_question import Plan
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping
    from datetime import datetime

    from binder.kitchen.binder import Binder


@dataclass(frozen=True)
class PlannedActivity:
    """An activity with its times by the clock on the wall, who does it, and what it takes (ids of resources).

    `waits_for` are the keys of the activities that it comes after; `done` says that it has happened.
    """

    activity: Activity
    start: datetime
    end: datetime
    people: tuple[str, ...]
    resources: tuple[str, ...]
    pinned: bool
    done: bool
    waits_for: tuple[str, ...]


@dataclass(frozen=True)
class Holding:
    """What `before` has made, standing ready from `start` until `after` uses it at `end`; fit until `fit_until`."""

    before: str
    after: str
    start: datetime
    end: datetime
    fit_until: datetime | None


@dataclass(frozen=True)
class DayPlan:
    """When everything happens. No plan can wrap before `bound`; `assumed` is what was assumed, in words.

    `asked` and `found` are the question and its answer in plain minutes, for whoever plans on from here.
    """

    activities: tuple[PlannedActivity, ...]
    holdings: tuple[Holding, ...]
    wrap: datetime
    bound: datetime
    proven: bool
    assumed: tuple[str, ...]
    asked: DayQuestion = field(repr=False)
    found: Plan = field(repr=False)

    def says(self) -> str:
        """How good the plan is, in a sentence."""
        binder, on = self.asked.binder, self.asked.clock.on
        wrap, bound = (moment_text(binder, moment, on) for moment in (self.wrap, self.bound))
        if self.proven or self.bound >= self.wrap:
            return _("This plan wraps at {wrap}, and no plan can wrap earlier.").format(wrap=wrap)
        return _("No plan can wrap before {bound}; this one wraps at {wrap}.").format(bound=bound, wrap=wrap)


DayProgress = Callable[[DayPlan], bool]
"""Told each better plan; answers whether to go on."""


def day_plan(
    binder: Binder,
    shoot_id: str,
    *,
    seconds: float = 10.0,
    progress: DayProgress | None = None,
    going_on: Callable[[], bool] | None = None,
    near: DayPlan | None = None,
) -> DayPlan | None:
    """The best plan found in `seconds`; None where the shoot has no date or no plan was found.

    `progress` is told each better plan as it is found; the search ends with the best so far where it or `going_on` says
    no. `near` is a plan to begin from: that of the shoot before it was edited.
    """
    asked = day_question(binder, shoot_id)
    if asked is None:
        return None
    told = None if progress is None else lambda plan: progress(planned(asked, plan, fewest=False))
    found = find_plan(
        asked.question,
        asked.aims,
        seconds=seconds,
        progress=told,
        going_on=going_on,
        hint=None if near is None else found_near(asked, near),
    )
    return None if found is None else planned(asked, found)


def found_near(asked: DayQuestion, near: DayPlan) -> Plan:
    """Where another plan puts the tasks of this one, its minutes counted from this one's origin."""
    moved = asked.clock.at(near.asked.clock.origin)
    return Plan(
        {key: start + moved for key, start in near.found.starts.items()},
        near.found.end + moved,
        0,
        proven=False,
        taken=near.found.taken,
    )


def planned(
    asked: DayQuestion, found: Plan, *, fewest: bool = True, already: Mapping[str, tuple[str, ...]] | None = None
) -> DayPlan:
    """A plan found, as activities on the wall clock in the order they begin.

    `fewest` shares the work out among as few people as can do it; `already` says who has begun what.
    """
    crew = who_does_what(asked.question, asked.kitchen, found, fewest=fewest, already=already)
    waits: dict[str, list[str]] = {}
    for gap in asked.question.gaps:
        waits.setdefault(gap.after, []).append(gap.before)
    activities = [
        _planned(asked, found, key, crew.get(key, ()), tuple(waits.get(key, ()))) for key in asked.work.activities
    ]
    return DayPlan(
        activities=tuple(sorted(activities, key=lambda one: (one.start, one.activity.key))),
        holdings=tuple(_holdings(asked, found)),
        wrap=asked.wall(found.end),
        bound=asked.wall(found.bound),
        proven=found.proven,
        assumed=(*asked.kitchen.assumed, *asked.work.assumed),
        asked=asked,
        found=found,
    )


def _planned(
    asked: DayQuestion, found: Plan, key: str, people: tuple[str, ...], waits_for: tuple[str, ...]
) -> PlannedActivity:
    task, start, crews = asked.question.by_key[key], found.starts[key], {crew.key for crew in asked.kitchen.crews}
    used = [*task.needs, *found.taken.get(key, ())]
    return PlannedActivity(
        activity=asked.work.activities[key],
        start=asked.wall(start),
        end=asked.wall(start + task.minutes),
        people=people,
        resources=tuple(resource for resource in used if resource not in crews),
        pinned=key in asked.question.pinned,
        done=key in asked.question.begun,
        waits_for=waits_for,
    )


def _holdings(asked: DayQuestion, found: Plan) -> Iterator[Holding]:
    """What stands ready for longer than no time, by the gaps that say so."""
    for gap in asked.question.gaps:
        ready = found.starts[gap.before] + asked.question.by_key[gap.before].minutes + gap.least
        used = found.starts[gap.after]
        if gap.key.startswith((HOLD, KEEPS)) and used > ready:
            fit = None if gap.most is None else asked.wall(ready - gap.least + gap.most)
            yield Holding(gap.before, gap.after, asked.wall(ready), asked.wall(used), fit)
