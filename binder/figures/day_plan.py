"""The day plan: when everything starts, so that every build is ready and fresh when the camera turns to it."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta
from typing import TYPE_CHECKING

from binder.figures.clock import minutes_between, shifted
from binder.figures.day_activities import Activity, ActivityKind, DayWork, day_work
from binder.figures.day_crew import who_does_what
from binder.figures.day_kitchen import CAMERA, PEOPLE, PRESENTER, DayKitchen, day_kitchen, resources_of
from binder.figures.leads import shoot_leads
from binder.figures.memory import remembered
from binder.figures.plan_program import find_plan
from binder.figures.plan_question import Absence, Aims, Plan, PlanProgress, PlanQuestion
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from binder.figures.plan_question import Task
    from binder.kitchen.binder import Binder
    from binder.kitchen.day import FixedEvent, Person
    from binder.kitchen.shoot import Shoot

_CALL = time(8, 0)
_AFTER = 8 * 60
"""Minutes after midnight of the shoot that a plan may run on."""

_MOST_DAYS_BEFORE = 30


@dataclass(frozen=True)
class PlannedActivity:
    """An activity with its times by the clock on the wall, and who and what it takes."""

    activity: Activity
    start: datetime
    end: datetime
    people: tuple[str, ...]
    resources: tuple[str, ...]
    pinned: bool
    waits_for: tuple[str, ...]


@dataclass(frozen=True)
class DayQuestion:
    """A shoot as a question for the plan program, and how its minutes read on the wall: minute 0 is `origin`."""

    question: PlanQuestion
    work: DayWork
    kitchen: DayKitchen
    aims: Aims
    origin: datetime
    zone: str

    def wall(self, minute: float) -> datetime:
        """What the clock on the wall shows at a minute of the plan."""
        return shifted(self.origin, minute, self.zone)

    def minute(self, on: date, at: time) -> int:
        """The minute of the plan at a moment on the wall clock."""
        return round(minutes_between(self.origin, datetime.combine(on, at), self.zone))


@dataclass(frozen=True)
class DayPlan:
    """When everything happens. No plan can wrap before `bound`; `assumed` is what was assumed, in words."""

    activities: tuple[PlannedActivity, ...]
    wrap: datetime
    bound: datetime
    proven: bool
    assumed: tuple[str, ...]

    def says(self) -> str:
        """How good the plan is, in a sentence."""
        wrap, bound = (moment.strftime("%H:%M") for moment in (self.wrap, self.bound))
        if self.proven:
            return _("This plan wraps at {wrap}, and no plan can wrap earlier.").format(wrap=wrap)
        return _("No plan can wrap before {bound}; this one wraps at {wrap}.").format(bound=bound, wrap=wrap)


@remembered
def day_question(binder: Binder, shoot_id: str) -> DayQuestion | None:
    """A shoot as a question; None where it has no date or nothing to do."""
    shoot = binder.shoots[shoot_id]
    if shoot.on is None:
        return None
    kitchen = day_kitchen(binder, shoot_id)
    work = day_work(binder, shoot_id, kitchen)
    if not work.tasks:
        return None
    days = min(_MOST_DAYS_BEFORE, _days_before(binder, shoot_id, work))
    origin = datetime.combine(shoot.on - timedelta(days=days), time(0, 0))
    frame = DayQuestion(PlanQuestion((), ()), work, kitchen, Aims(), origin, shoot.zone)
    question = PlanQuestion(
        tasks=tuple(_with_limits(shoot, frame)),
        resources=resources_of(kitchen),
        gaps=tuple(work.gaps),
        absences=tuple(_absences(binder, shoot, frame, days)),
        aparts=tuple(work.aparts),
        pinned=_pinned(binder, frame, shoot_id),
        horizon=frame.minute(shoot.on + timedelta(days=1), time(0, 0)) + _AFTER,
    )
    return replace(frame, question=question, aims=_aims(work))


def _days_before(binder: Binder, shoot_id: str, work: DayWork) -> int:
    """Days before the shoot that its longest chain of waits may reach back, and one more."""
    lead = max((lead.minutes_before for lead in shoot_leads(binder, shoot_id)), default=0.0)
    longest: dict[str, float] = {}
    for task in work.tasks:
        begun = [longest.get(gap.before, 0.0) + gap.least for gap in work.gaps if gap.after == task.key]
        longest[task.key] = task.minutes + max(begun, default=0.0)
    return 1 + math.ceil(max(lead, max(longest.values(), default=0.0)) / (24 * 60))


def _aims(work: DayWork) -> Aims:
    on_camera = {ActivityKind.FILM, ActivityKind.TALK}
    ends = tuple(last for _first, last in work.filmed.values())
    late = {
        key: 1
        for key, one in work.activities.items()
        if one.kind not in on_camera and one.kind is not ActivityKind.WAIT
    }
    return Aims(ends, late)


def _with_limits(shoot: Shoot, frame: DayQuestion) -> Iterator[Task]:
    """The tasks, filming within call and wrap."""
    assert shoot.on is not None  # noqa: S101 - the caller has seen to it
    call = frame.minute(shoot.on, shoot.call or _CALL)
    wrap = None if shoot.wrap is None else frame.minute(shoot.on, shoot.wrap)
    for task in frame.work.tasks:
        kind = frame.work.activities[task.key].kind
        filmed = kind in {ActivityKind.FILM, ActivityKind.TALK}
        yield replace(task, earliest=call, latest=wrap) if filmed else task


def _pinned(binder: Binder, frame: DayQuestion, shoot_id: str) -> dict[str, int]:
    """The minute of every task that someone has pinned."""
    pinned = {}
    for pin in binder.pins.where("shoot", shoot_id):
        key = f"{pin.build}/{pin.step}" if pin.build and pin.step else f"{pin.dish}/talk"
        if key in frame.work.activities:
            pinned[key] = frame.minute(pin.on, pin.at)
    return pinned


def _absences(binder: Binder, shoot: Shoot, frame: DayQuestion, days: int) -> Iterator[Absence]:
    """When people are not there: nights before the shoot, before they arrive, after they leave, stops of work."""
    assert shoot.on is not None  # noqa: S101
    people = frame.kitchen.people
    for back in range(days, 0, -1):
        day = shoot.on - timedelta(days=back)
        midnight, next_midnight = frame.minute(day, time(0, 0)), frame.minute(day + timedelta(days=1), time(0, 0))
        yield Absence(PEOPLE, midnight, frame.minute(day, shoot.prep_from), len(people), "nights")
        yield Absence(PEOPLE, frame.minute(day, shoot.prep_until), next_midnight, len(people), "nights")
    for person in people:
        yield from _away(person, shoot, frame)
    for event in binder.fixed_events.where("shoot", shoot.id):
        if event.stops_work and event.minutes:
            yield from _stopped(event, shoot.on, frame, len(people))


def _away(person: Person, shoot: Shoot, frame: DayQuestion) -> Iterator[Absence]:
    assert shoot.on is not None  # noqa: S101
    midnight = frame.minute(shoot.on, time(0, 0))
    arrives = frame.minute(shoot.on, person.arrives or shoot.call or _CALL)
    last = frame.minute(shoot.on + timedelta(days=1), time(0, 0)) + _AFTER
    keys = [PEOPLE, *([PRESENTER] if person.on_camera else []), *(f"skill {skill}" for skill in person.skills)]
    for key in keys:
        yield Absence(key, midnight, arrives, 1, f"person {person.id}")
        if person.leaves is not None:
            yield Absence(key, frame.minute(shoot.on, person.leaves), last, 1, f"person {person.id}")


def _stopped(event: FixedEvent, on: date, frame: DayQuestion, people: int) -> Iterator[Absence]:
    start = frame.minute(on, event.at)
    end = start + math.ceil(event.minutes)
    for resource, amount in ((PEOPLE, people), (CAMERA, 1)):
        yield Absence(resource, start, end, amount, f"event {event.id}")


def day_plan(
    binder: Binder,
    shoot_id: str,
    *,
    seconds: float = 10.0,
    progress: PlanProgress | None = None,
    hint: Mapping[str, int] | None = None,
) -> DayPlan | None:
    """The best plan found in `seconds`; None where the shoot has no date or no plan was found."""
    asked = day_question(binder, shoot_id)
    if asked is None:
        return None
    found = find_plan(asked.question, asked.aims, seconds=seconds, progress=progress, hint=hint)
    return None if found is None else planned(asked, found)


def planned(asked: DayQuestion, found: Plan) -> DayPlan:
    """A plan found, as activities on the wall clock in the order they begin."""
    crew = who_does_what(asked.question, asked.kitchen, found.starts)
    waits: dict[str, list[str]] = {}
    for gap in asked.question.gaps:
        waits.setdefault(gap.after, []).append(gap.before)
    activities = [
        _planned(asked, found, key, crew.get(key, ()), tuple(waits.get(key, ()))) for key in asked.work.activities
    ]
    return DayPlan(
        tuple(sorted(activities, key=lambda one: (one.start, one.activity.key))),
        asked.wall(found.end),
        asked.wall(found.bound),
        found.proven,
        (*asked.kitchen.assumed, *asked.work.assumed),
    )


def _planned(
    asked: DayQuestion, found: Plan, key: str, people: tuple[str, ...], waits_for: tuple[str, ...]
) -> PlannedActivity:
    task, start = asked.question.task(key), found.starts[key]
    resources = [resource for resource in task.needs if resource not in {PEOPLE, PRESENTER}]
    if key in found.taken:
        resources.append(found.taken[key])
    return PlannedActivity(
        asked.work.activities[key],
        asked.wall(start),
        asked.wall(start + task.minutes),
        people,
        tuple(resources),
        key in asked.question.pinned,
        waits_for,
    )
