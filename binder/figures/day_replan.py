"""Planning on from where the day stands: what has begun, is done or is pinned stays; the rest finds new times."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from binder.figures.date_text import moment_text
from binder.figures.day_activities import HOLD, WAIT, ActivityKind, step_of
from binder.figures.day_clash import DayClash, clash_of
from binder.figures.day_hours import EVENT
from binder.figures.day_plan import DayPlan, DayProgress, found_near, planned
from binder.figures.day_question import DayQuestion, day_question
from binder.figures.day_words import activity_text
from binder.figures.duration_text import duration_text
from binder.figures.plan_program import find_plan
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping
    from datetime import datetime

    from binder.figures.plan_question import Absence, Gap, Plan, PlanQuestion, Task
    from binder.kitchen.binder import Binder

_HARD = 0.5
"""The part of the time that is given to a plan that breaks nothing."""


@dataclass(frozen=True)
class BrokenHold:
    """What `before` (the key of an activity) made is older than it stays fit when `after` uses it: by `minutes`."""

    before: str
    after: str
    minutes: int
    says: str


@dataclass(frozen=True)
class Replanned:
    """The plan from now on, the holds it breaks, and in sentences what else changes.

    Where there is no plan even so, `plan` is None and `clash` says why, where that was found in time.
    """

    plan: DayPlan | None
    broken: tuple[BrokenHold, ...] = ()
    says: tuple[str, ...] = ()
    clash: DayClash | None = None


def replan(
    binder: Binder,
    shoot_id: str,
    plan: DayPlan,
    now: datetime,
    late_minutes: float = 0.0,
    *,
    seconds: float = 4.0,
    progress: DayProgress | None = None,
    going_on: Callable[[], bool] | None = None,
) -> Replanned | None:
    """The plan of the rest of the day, at `now` by the clock on the wall and running so many minutes late.

    Late by 25 minutes at 10:25 says that the day stands where `plan` has it at 10:00: what it begins before that has
    begun, and what hands or camera are in then ends 25 minutes later. Only where no plan keeps every hold do holds
    give way, by as few minutes as may be. None where the shoot has nothing to plan.
    """
    whole = day_question(binder, shoot_id)
    if whole is None:
        return None
    asked, moved = _from_now(whole, plan, whole.clock.at(now), round(late_minutes))
    told = None if progress is None else lambda found: progress(planned(asked, found, fewest=False))
    near = found_near(asked, plan)
    aims, question = asked.aims, asked.question
    found = find_plan(question, aims, seconds=seconds * _HARD, progress=told, going_on=going_on, hint=near)
    if found is None:
        question = replace(question, tasks=tuple(replace(task, latest=None) for task in question.tasks))
        aims = replace(aims, give_way=frozenset(gap.key for gap in question.gaps if gap.key.startswith(HOLD)))
        found = find_plan(question, aims, seconds=seconds * _HARD, progress=told, going_on=going_on, hint=near)
    if found is None:
        return Replanned(None, clash=clash_of(asked, seconds=seconds, going_on=going_on or (lambda: True)))
    already = {one.activity.key: one.people for one in plan.activities if one.activity.key in question.begun}
    return Replanned(
        planned(asked, found, already=already),
        tuple(_broken(asked, gap, over) for gap, over in found.broken.items()),
        (*moved, *_later_than_set(asked, found)),
    )


def _from_now(whole: DayQuestion, plan: DayPlan, now: int, late: int) -> tuple[DayQuestion, tuple[str, ...]]:
    """The question with what has begun as facts, and in words which events are moved."""
    stands_at = now - late
    near = found_near(whole, plan)
    begun = _begun(whole, near.starts, stands_at)
    tasks = []
    for task in whole.question.tasks:
        if task.key not in begun:
            tasks.append(replace(task, earliest=max(task.earliest, now)))
        else:
            before = plan.asked.question.by_key.get(task.key, task)
            tasks.append(_as_fact(before, near, end=begun[task.key] + before.minutes, stands_at=stands_at, late=late))
    absences, moved = _moved_events(whole, {task.key: task for task in tasks}, begun)
    question = replace(
        whole.question,
        tasks=tuple(tasks),
        absences=absences,
        pinned={**whole.question.pinned, **begun},
        begun=frozenset(begun),
    )
    return replace(whole, question=question), moved


def _begun(whole: DayQuestion, starts: Mapping[str, int], stands_at: int) -> dict[str, int]:
    """When each task began that has begun: by its pin, else by the plan. A wait begins when its step has ended."""
    begun = {
        key: whole.question.pinned.get(key, starts.get(key, 0))
        for key, one in whole.work.activities.items()
        if one.kind is not ActivityKind.WAIT and _has_begun(whole.question, key, starts, stands_at)
    }
    for key, one in whole.work.activities.items():
        step = step_of(key)
        if one.kind is ActivityKind.WAIT and step in begun:
            as_planned = key in starts and begun[step] == starts.get(step)
            start = starts[key] if as_planned else begun[step] + whole.question.by_key[step].minutes
            begun |= {key: start} if start <= stands_at else {}
    return begun


def _has_begun(question: PlanQuestion, key: str, starts: Mapping[str, int], stands_at: int) -> bool:
    if key in question.begun:
        return True
    start = question.pinned.get(key, starts.get(key))
    return start is not None and start < stands_at


def _as_fact(task: Task, near: Plan, *, end: int, stands_at: int, late: int) -> Task:
    """A task that has begun, with what it took; longer by what the day is late where hands are still in it."""
    took = zip(near.taken.get(task.key, ()), task.one_of, strict=False)
    needs = {**task.needs, **{resource: choice.amount for resource, choice in took}}
    still = late > 0 and end > stands_at and not task.key.endswith(WAIT)
    return replace(task, needs=needs, one_of=(), minutes=task.minutes + (late if still else 0))


def _moved_events(
    whole: DayQuestion, tasks: Mapping[str, Task], begun: Mapping[str, int]
) -> tuple[tuple[Absence, ...], tuple[str, ...]]:
    """Stops of work that what is under way runs into begin when that ends."""
    under_way = [(start, start + tasks[key].minutes) for key, start in begun.items() if not key.endswith(WAIT)]
    absences, says = [], dict[str, None]()
    for one in whole.question.absences:
        ends = [end for start, end in under_way if start < one.start < end] if one.key.startswith(EVENT) else []
        later = max(ends, default=one.start) - one.start
        absences.append(replace(one, start=one.start + later, end=one.end + later))
        if later:
            event = whole.binder.fixed_events[one.key.removeprefix(EVENT)].name
            time = moment_text(whole.binder, whole.wall(one.start + later), whole.clock.on)
            says[_("{event} begins at {time}.").format(event=event, time=time)] = None
    return tuple(absences), tuple(says)


def _broken(asked: DayQuestion, gap: Gap, over: int) -> BrokenHold:
    before, after = (activity_text(asked.binder, asked.work.activities[key]) for key in (gap.before, gap.after))
    fit = (gap.most or 0) - gap.least
    says = _("{before} would be {age} old at {after}; it stays fit for {fit}.")
    shown = says.format(before=before, age=duration_text(fit + over), after=after, fit=duration_text(fit))
    return BrokenHold(gap.before, gap.after, over, shown[:1].upper() + shown[1:])


def _later_than_set(asked: DayQuestion, found: Plan) -> Iterator[str]:
    wrap = asked.clock.wrap
    if wrap is not None and asked.wall(found.end) > wrap:
        binder, on = asked.binder, asked.clock.on
        says = _("It wraps at {time}, after the wrap that is set, {wrap}.")
        yield says.format(time=moment_text(binder, asked.wall(found.end), on), wrap=moment_text(binder, wrap, on))
