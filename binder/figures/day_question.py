"""A shoot as a question for the plan program: its tasks with their limits, on the shoot's own clock."""

from __future__ import annotations

import math
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from binder.figures.day_activities import FILMED, ActivityKind, DayWork
from binder.figures.day_filming import day_work
from binder.figures.day_hours import BY_CALL, BY_TRIP, DayClock, absences, cold_ovens
from binder.figures.day_kitchen import DayKitchen, day_kitchen, resources_of
from binder.figures.leads import shoot_leads
from binder.figures.memory import remembered
from binder.figures.plan_question import Absence, Aims, PlanQuestion
from binder.figures.trips import FETCHED_BY, fetched_on
from binder.kitchen.day import ApplianceKind

if TYPE_CHECKING:
    from collections.abc import Iterator
    from datetime import datetime, time

    from binder.figures.plan_question import Task
    from binder.kitchen.binder import Binder

_MOST_DAYS_BEFORE = 400
_DAY, _LONG_WAIT = 24 * 60, 60
"""A wait of this many minutes may run into a night, and what follows it then begins a night later."""

_OVERNIGHT = 4 * 60
"""Ovens that something is in for so long are not cold in the morning."""


@dataclass(frozen=True)
class DayQuestion:
    """A shoot as a question, with what its tasks stand for, who and what there is, and how its minutes read."""

    question: PlanQuestion
    work: DayWork
    kitchen: DayKitchen
    aims: Aims
    clock: DayClock
    binder: Binder = field(compare=False, repr=False)

    def wall(self, minute: float) -> datetime:
        """What the clock on the wall shows at a minute of the plan."""
        return self.clock.wall(minute)


@remembered
def day_question(binder: Binder, shoot_id: str) -> DayQuestion | None:
    """A shoot as a question; None where it has no date, a date at the end of the calendar, or nothing to do."""
    shoot = binder.shoots[shoot_id]
    if shoot.on is None:
        return None
    kitchen = day_kitchen(binder, shoot_id)
    work = day_work(binder, shoot_id, kitchen)
    if not work.tasks:
        return None
    try:
        clock = DayClock(shoot, shoot.on, min(_MOST_DAYS_BEFORE, _days_before(binder, shoot_id, work)))
        question = _question(binder, work, kitchen, clock)
    except OverflowError:
        return None
    return DayQuestion(question, work, kitchen, _aims(work), clock, binder)


def _question(binder: Binder, work: DayWork, kitchen: DayKitchen, clock: DayClock) -> PlanQuestion:
    pins = [pin for pin in binder.pins.where("shoot", clock.shoot.id) if pin.target in work.pins]
    done = frozenset(work.pins[pin.target] for pin in pins if pin.done)
    tasks = _with_limits(binder, work, clock)
    return PlanQuestion(
        tasks=tuple(replace(task, one_of=()) if task.key in done else task for task in tasks),
        resources=resources_of(kitchen),
        gaps=tuple(work.gaps),
        absences=(*absences(binder, kitchen, clock), *_cold(work, kitchen, clock)),
        aparts=tuple(work.aparts),
        pinned={work.pins[pin.target]: clock.minute(pin.on, pin.at) for pin in pins},
        begun=done,
        pools=(tuple(crew.key for crew in kitchen.crews),),
        horizon=clock.end,
    )


def _days_before(binder: Binder, shoot_id: str, work: DayWork) -> int:
    """Days before the shoot that its longest chain of waits may reach back, and one more."""
    shoot = binder.shoots[shoot_id]
    night = _DAY - max(0, _minutes_of(shoot.prep_until) - _minutes_of(shoot.prep_from))
    lead = max((lead.minutes_before for lead in shoot_leads(binder, shoot_id)), default=0.0)
    before: dict[str, list[tuple[str, float]]] = {}
    for gap in work.gaps:
        before.setdefault(gap.after, []).append((gap.before, gap.least + (night if gap.least >= _LONG_WAIT else 0)))
    longest: dict[str, float] = {}
    for task in work.tasks:
        begun = (longest.get(key, 0.0) + wait for key, wait in before.get(task.key, ()))
        longest[task.key] = task.minutes + max(begun, default=0.0)
    return 1 + math.ceil(max(lead, max(longest.values(), default=0.0)) / _DAY)


def _minutes_of(at: time) -> int:
    return at.hour * 60 + at.minute


def _aims(work: DayWork) -> Aims:
    """An early wrap, and what is prepared as late as it can be; what no one waits for is done soon."""
    followed = {gap.before for gap in work.gaps}
    loose = [
        key
        for key, one in work.activities.items()
        if key not in followed and one.kind is not ActivityKind.WAIT and key not in work.put_away
    ]
    late = {key: 1 for key, one in work.activities.items() if one.kind not in {*FILMED, ActivityKind.WAIT}}
    late |= dict.fromkeys(work.put_away, -1)
    return Aims(tuple(dict.fromkeys([*(last for _, last in work.filmed.values()), *loose])), late)


def _with_limits(binder: Binder, work: DayWork, clock: DayClock) -> Iterator[Task]:
    """The tasks: filming within call and wrap, work with what is bought after it is fetched."""
    call = (clock.at(clock.call), BY_CALL)
    wrap = None if clock.wrap is None else clock.at(clock.wrap)
    fetched = fetched_on(binder, clock.shoot.id)
    for task in work.tasks:
        days = {fetched[food] for food in work.foods.get(task.key, ()) if food in fetched}
        filmed = work.activities[task.key].kind in FILMED
        least = [call] if filmed else []
        least += [(clock.minute(day, FETCHED_BY), f"{BY_TRIP}{day.isoformat()}") for day in days]
        earliest, because = max(least, default=(0, ""))
        latest = wrap if filmed else None
        yield replace(task, earliest=max(0, earliest), because=because, latest=latest)


def _cold(work: DayWork, kitchen: DayKitchen, clock: DayClock) -> Iterator[Absence]:
    """Cold ovens in the morning, where nothing has been in one overnight."""
    ovens = {oven.id for oven in kitchen.of_kind(ApplianceKind.OVEN)}
    in_ovens = [task.minutes for task in work.tasks if any(task.may_use(oven) for oven in ovens)]
    if in_ovens and max(in_ovens) < _OVERNIGHT:
        yield from cold_ovens(kitchen, clock)
