"""Where food is in a plan, build by build and for each recipe made ahead: in the cold, under heat, or out of both."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.figures.day_activities import ActivityKind, wait_after
from binder.kitchen.day import ApplianceKind
from binder.kitchen.recipe import Heat
from binder.kitchen.reference import time_limits

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping, Sequence

    from binder.figures.day_activities import Activity
    from binder.figures.day_plan import DayPlan
    from binder.kitchen.recipe import Step

_HEATED = {Heat.OVEN, Heat.PAN, Heat.OIL, Heat.CORE}
_COLD = {ApplianceKind.FRIDGE, ApplianceKind.FREEZER}


class Where(StrEnum):
    """What keeps food safe, or that nothing does."""

    COLD = "in the cold"
    HEAT = "under heat"
    OUT = "out"


@dataclass(frozen=True)
class Stretch:
    """From one minute of the plan to another, food is somewhere."""

    start: int
    end: int
    where: Where


@dataclass(frozen=True)
class Thread:
    """One build, or one recipe made ahead, through the plan; `steps` are its activities in order of time.

    `joins` says for each food that needs temperature control when it comes in, and for how many minutes it has been out
    by then.
    """

    key: str
    dish: str | None
    build: str | None
    steps: tuple[Activity, ...]
    stretches: tuple[Stretch, ...]
    joins: Mapping[str, tuple[int, int]]

    def out_since(self, food: str) -> tuple[tuple[Stretch, int], ...]:
        """The stretches that a food is out, each with its minutes out by the end of it since it was last under heat."""
        return self._counted(food)[0]

    def minutes_out(self, food: str) -> int:
        """Minutes a food has been out by the end, since it was last under heat."""
        return self._counted(food)[1]

    def _counted(self, food: str) -> tuple[tuple[tuple[Stretch, int], ...], int]:
        joined, total = self.joins[food]
        found: list[tuple[Stretch, int]] = []
        for one in self.stretches:
            if one.end > joined and one.where is Where.HEAT:
                total = 0
            elif one.end > joined and one.where is Where.OUT:
                total += one.end - max(one.start, joined)
                found.append((one, total))
        return tuple(found), total


def is_heated(step: Step) -> bool:
    """Whether a step keeps food too hot for what makes people ill: above the danger zone, or in an oven at all."""
    high = time_limits()["danger_zone_high"].celsius or 0.0
    return step.heat in _HEATED and (step.celsius is None or step.celsius >= high)


def is_chilled(step: Step) -> bool:
    """Whether what a step makes stands in a fridge or freezer."""
    return step.uses in _COLD or (step.uses is None and step.heat is Heat.CHILL)


def threads(plan: DayPlan) -> tuple[Thread, ...]:
    """The recipes made ahead and then the builds of a plan, each through all its steps until it is served."""
    by_key: dict[str, list[Activity]] = {}
    for one in plan.asked.work.activities.values():
        if one.step is not None and one.kind is not ActivityKind.WAIT:
            recipe = plan.asked.binder.steps[one.step].recipe
            by_key.setdefault(one.build or recipe, []).append(one)
    found: dict[str, Thread] = {}
    for key, steps in by_key.items():
        found[key] = _thread(plan, key, steps, found)
    return tuple(found.values())


def _thread(plan: DayPlan, key: str, steps: Sequence[Activity], made: Mapping[str, Thread]) -> Thread:
    starts = plan.found.starts
    in_order = tuple(sorted(steps, key=lambda one: (starts[one.key], one.key)))
    stretches = tuple(_joined(_stretches(plan, in_order)))
    joins: dict[str, tuple[int, int]] = {}
    for one in in_order:
        for food, minutes in _brought(plan, one, made):
            since, before = joins.get(food, (starts[one.key], 0))
            joins[food] = (since, max(before, minutes))
    return Thread(key, in_order[0].dish, in_order[0].build, in_order, stretches, joins)


def _brought(plan: DayPlan, activity: Activity, made: Mapping[str, Thread]) -> Iterator[tuple[str, int]]:
    """Foods that need temperature control and come in with a step, with the minutes they have been out by then."""
    for key in plan.asked.work.foods.get(activity.key, ()):
        thread = made.get(key)
        if thread is not None:
            yield from ((food, thread.minutes_out(food)) for food in thread.joins)
        elif key in plan.asked.binder.foods and plan.asked.binder.foods[key].temperature_control:
            yield key, 0


def _stretches(plan: DayPlan, steps: Sequence[Activity]) -> Iterator[Stretch]:
    """Hands on, waiting, and standing until the next step or until it is served."""
    starts, question = plan.found.starts, plan.asked.question
    begins = [starts[one.key] for one in steps[1:]] + [_served(plan, steps[-1])]
    for one, until in zip(steps, begins, strict=True):
        step = plan.asked.binder.steps[one.step or ""]
        start, heated = starts[one.key], is_heated(step)
        end = start + question.by_key[one.key].minutes
        waited = min(max(end, until), end + round(step.waiting_minutes))
        chilled = is_chilled(step)
        yield Stretch(start, end, Where.HEAT if heated else Where.OUT)
        yield Stretch(end, waited, Where.COLD if chilled else Where.HEAT if heated else Where.OUT)
        yield Stretch(waited, until, Where.COLD if chilled else Where.OUT)


def _served(plan: DayPlan, last: Activity) -> int:
    """When a thread ends: with what uses it last; at the close of its dish, where it is filmed or stands by."""
    starts, question = plan.found.starts, plan.asked.question
    by_itself = starts[last.key] + question.by_key[last.key].minutes
    users = [gap.after for gap in question.gaps if gap.before == last.key and gap.after != wait_after(last.key)]
    if not users:
        return by_itself
    if last.dish is None:
        return max(starts[user] for user in users)
    _first, talk = plan.asked.work.filmed.get(last.dish, ("", users[-1]))
    return max(by_itself, starts[talk] + question.by_key[talk].minutes)


def _joined(stretches: Iterable[Stretch]) -> Iterator[Stretch]:
    """Stretches that touch and are alike as one; those of no length are left out."""
    last: Stretch | None = None
    for one in stretches:
        if one.end <= one.start:
            continue
        if last is not None and last.where is one.where and last.end == one.start:
            last = Stretch(last.start, one.end, one.where)
            continue
        if last is not None:
            yield last
        last = one
    if last is not None:
        yield last
