"""A shoot as tasks with what must lie between them: conversions, what is made ahead, builds, and filming."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from enum import StrEnum
from itertools import pairwise
from typing import TYPE_CHECKING

from binder.figures.base import base_balance
from binder.figures.day_kitchen import (
    CAMERA,
    PEOPLE,
    PRESENTER,
    DayKitchen,
    appliances_for,
    skill_key,
    tools_for,
)
from binder.figures.demand import builds_of, last_position
from binder.figures.mise import made_ahead
from binder.figures.plan_question import Apart, Gap, Task
from binder.figures.recipe_use import recipe_uses
from binder.kitchen.day import ApplianceKind
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.shoot import BuildKind
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from binder.kitchen.binder import Binder
    from binder.kitchen.conversion import Conversion
    from binder.kitchen.recipe import Step
    from binder.kitchen.shoot import Build, Dish

_DAY = 24 * 60
_ASSUMED_MINUTES = 5
"""A step that says no time is taken to need five minutes of hands. Common practice, no source."""

_IN_WAIT = {ApplianceKind.FRIDGE, ApplianceKind.FREEZER}
_IN_BOTH = {ApplianceKind.BURNERS, ApplianceKind.FRYER}


class ActivityKind(StrEnum):
    """What an activity of the day is."""

    CONVERSION = "conversion"
    AHEAD = "made ahead"
    PREP = "prep"
    WAIT = "wait"
    FILM = "on camera"
    TALK = "to camera"


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


@dataclass
class DayWork:
    """The tasks of a shoot while they are gathered."""

    tasks: list[Task] = field(default_factory=list)
    gaps: list[Gap] = field(default_factory=list)
    aparts: list[Apart] = field(default_factory=list)
    activities: dict[str, Activity] = field(default_factory=dict)
    assumed: dict[str, None] = field(default_factory=dict)
    filmed: dict[str, tuple[str, str]] = field(default_factory=dict)

    def add(self, task: Task, activity: Activity) -> None:
        """One more task."""
        self.tasks.append(task)
        self.activities[task.key] = activity

    def after(self, before: str, after: str, least: float, hold: float | None = None, *, key: str = "") -> None:
        """`after` begins `least` minutes after `before` ends, and no more than `hold` minutes later than that."""
        wait = math.ceil(least)
        self.gaps.append(Gap(before, after, wait, None if hold is None else wait + math.floor(hold), key))


@dataclass(frozen=True)
class _Done:
    """A step that a thread has behind it: its task, how long its result must wait and how long it then stays fit."""

    task: str
    wait: float
    hold: float | None
    step: str


def day_work(binder: Binder, shoot_id: str, kitchen: DayKitchen) -> DayWork:
    """Everything to do for a shoot."""
    work = DayWork()
    _Gatherer(binder, shoot_id, kitchen, work).gather()
    return work


class _Gatherer:
    def __init__(self, binder: Binder, shoot_id: str, kitchen: DayKitchen, work: DayWork) -> None:
        self.binder, self.shoot, self.kitchen, self.work = binder, binder.shoots[shoot_id], kitchen, work
        self.made_by: dict[str, _Done] = {}

    def gather(self) -> None:
        self._conversions()
        for recipe in made_ahead(self.binder, self.shoot.id):
            self._ahead(recipe)
        for dish in self.binder.dishes.where("shoot", self.shoot.id):
            self._dish(dish)
        self._running_order()

    def _conversions(self) -> None:
        """One task a conversion that is run; what it gives is there after its lead time and the form's ageing."""
        balance = base_balance(self.binder, self.shoot.id)
        for run in balance.runs if balance else ():
            conversion = self.binder.conversions[run.conversion]
            key = f"conversion/{conversion.id}"
            task = Task(key, math.ceil(conversion.hands_on_minutes), self._hands(conversion.hands_on_minutes))
            activity = Activity(key, ActivityKind.CONVERSION, conversion.name, conversion=conversion.id)
            self.work.add(task, activity)
            self._needs(key, conversion.takes)
            self._gives(conversion, key)

    def _gives(self, conversion: Conversion, key: str) -> None:
        for outcome in self.binder.outcomes.where("conversion", conversion.id):
            form = self.binder.foods[outcome.form]
            wait = conversion.lead_minutes + (form.good_from_days or 0) * _DAY
            fit = None if form.keeps_days is None else max(0, form.keeps_days - (form.good_from_days or 0)) * _DAY
            self.made_by.setdefault(form.id, _Done(key, wait, fit, ""))

    def _needs(self, task: str, *made: str) -> None:
        """A task begins when the forms and recipes it needs are there, and while they are fit."""
        for one in made:
            done = self.made_by.get(one)
            if done is not None:
                self.work.after(done.task, task, done.wait, done.hold, key=f"keeps {one}")

    def _ahead(self, recipe_id: str) -> None:
        """The steps of a recipe that dishes are made from, once for all of them."""
        before: _Done | None = None
        for step in self.binder.steps.where("recipe", recipe_id):
            key = f"ahead/{step.id}"
            activity = Activity(key, ActivityKind.AHEAD, self._step_name(step), step=step.id)
            before = self._step(key, step, activity, before, group=recipe_id)
        if before is not None:
            self.made_by[recipe_id] = before

    def _dish(self, dish: Dish) -> None:
        steps = self.binder.steps.where("recipe", dish.recipe)
        builds = builds_of(self.binder, dish.id)
        hero = next((build for build in builds if build.kind is BuildKind.HERO), None)
        waiting = {build.id: self._off_camera(dish, build, steps) for build in builds if build is not hero}
        if hero is not None:
            self._film(dish, hero, steps, waiting)

    def _off_camera(self, dish: Dish, build: Build, steps: Sequence[Step]) -> _Done | None:
        """A build made ahead, up to its step."""
        last, before = last_position(self.binder, build), None
        for step in steps:
            if last is None or step.position <= last:
                before = self._build_step(dish, build, step, before, ActivityKind.PREP)
        return before

    def _build_step(self, dish: Dish, build: Build, step: Step, before: _Done | None, kind: ActivityKind) -> _Done:
        key = f"{build.id}/{step.id}"
        activity = Activity(key, kind, self._step_name(step), dish=dish.id, build=build.id, step=step.id)
        return self._step(key, step, activity, before, group=dish.id)

    def _step(self, key: str, step: Step, activity: Activity, before: _Done | None, *, group: str) -> _Done:
        minutes = self._minutes(step)
        needs = {**self._hands(minutes), **({skill_key(step.skill): 1} if step.skill and minutes else {})}
        if activity.kind is ActivityKind.FILM:
            needs |= {CAMERA: 1, PRESENTER: 1}
        needs |= {tool.id: 1 for tool in tools_for(self.kitchen, step)}
        places, waits = self._places(step)
        state = round(step.celsius or 0)
        self.work.add(Task(key, minutes, needs, either=places, places=step.places, state=state, group=group), activity)
        if before is not None:
            self.work.after(before.task, key, before.wait, before.hold, key=f"hold {before.step}")
        self._needs(key, *self._made_for(step))
        if waits and step.waiting_minutes:
            self._wait(key, step, activity, waits, state)
        return _Done(key, step.waiting_minutes, step.hold_minutes, step.id)

    def _wait(self, key: str, step: Step, activity: Activity, places: tuple[str, ...], state: int) -> None:
        """What a step leaves in an oven, on a burner or in the fridge takes its place there until it is done."""
        waiting = f"{key}/wait"
        task = Task(waiting, math.ceil(step.waiting_minutes), either=places, places=step.places, state=state)
        self.work.add(
            task, Activity(waiting, ActivityKind.WAIT, activity.name, activity.dish, activity.build, activity.step)
        )
        self.work.after(key, waiting, 0, 0)

    def _places(self, step: Step) -> tuple[tuple[str, ...], tuple[str, ...]]:
        """The appliances a step takes one of while hands are on it, and while it waits."""
        found = appliances_for(self.kitchen, step)
        keys = tuple(appliance.id for appliance in found)
        kind = found[0].kind if found else None
        if kind in _IN_WAIT:
            return (), keys
        if kind in _IN_BOTH:
            return keys, keys
        return ((), keys) if step.waiting_minutes else (keys, ())

    def _minutes(self, step: Step) -> int:
        if step.hands_on_minutes or step.waiting_minutes:
            return math.ceil(step.hands_on_minutes)
        says = _("{recipe}, step {number} says no time: {minutes} minutes of hands are assumed.")
        recipe = self.binder.recipes[step.recipe].name
        self.work.assumed[says.format(recipe=recipe, number=step.position + 1, minutes=_ASSUMED_MINUTES)] = None
        return _ASSUMED_MINUTES

    @staticmethod
    def _hands(minutes: float) -> dict[str, int]:
        return {PEOPLE: 1} if minutes else {}

    def _made_for(self, step: Step) -> Iterable[str]:
        """The forms and the recipes made ahead that a step takes."""
        for line in self.binder.lines.where("step", step.id):
            if line.made is not None:
                yield line.made
        for use in recipe_uses(self.binder, step.recipe):
            if use.step == step.id and use.inner == use.line:
                yield use.food

    def _step_name(self, step: Step) -> str:
        return step.title or _("step {number}").format(number=step.position + 1)

    def _film(self, dish: Dish, hero: Build, steps: Sequence[Step], waiting: Mapping[str, _Done | None]) -> None:
        """What the camera sees of a dish: the hero, and past each long wait the swap-out that has passed it."""
        swaps = self._swap_outs(dish, waiting)
        build, before, at, filmed = hero, None, 0, []
        while at < len(steps):
            step = steps[at]
            kind = ActivityKind.FILM if step.on_camera else ActivityKind.PREP
            before = self._build_step(dish, build, step, before, kind)
            filmed += [before.task] if kind is ActivityKind.FILM else []
            at += 1
            swap = swaps.get(step.id)
            if swap is not None and filmed:
                build, before = swap
                at = max(at, self.binder.steps[before.step].position + 1)
        self._close(dish, filmed, before, waiting)

    def _swap_outs(self, dish: Dish, waiting: Mapping[str, _Done | None]) -> dict[str, tuple[Build, _Done]]:
        """The swap-out that takes the hero's place after each step."""
        found: dict[str, tuple[Build, _Done]] = {}
        for build in builds_of(self.binder, dish.id):
            done = waiting.get(build.id)
            if build.kind is BuildKind.SWAP_OUT and done is not None and build.up_to is not None:
                found.setdefault(build.up_to, (build, done))
        return found

    def _close(self, dish: Dish, filmed: list[str], before: _Done | None, waiting: Mapping[str, _Done | None]) -> None:
        """The last words to camera, with the finished dish fresh and every other build there in time."""
        spoken = sum(task.minutes for task in self.work.tasks if task.key in set(filmed))
        talk = f"{dish.id}/talk"
        minutes = max(1, math.ceil((dish.camera_minutes or 0) - spoken))
        activity = Activity(
            talk, ActivityKind.TALK, _("close: {dish}").format(dish=dish_name(self.binder, dish)), dish.id
        )
        self.work.add(Task(talk, minutes, {CAMERA: 1, PRESENTER: 1, PEOPLE: 1}), activity)
        if before is not None:
            self.work.after(before.task, talk, before.wait, before.hold, key=f"hold {before.step}")
        filmed.append(talk)
        for earlier, later in pairwise(filmed):
            self.work.after(earlier, later, 0)
        self.work.filmed[dish.id] = (filmed[0], talk)
        self._others(dish, waiting, filmed[0], talk)

    def _others(self, dish: Dish, waiting: Mapping[str, _Done | None], first: str, talk: str) -> None:
        for build in builds_of(self.binder, dish.id):
            done = waiting.get(build.id)
            if done is None or build.kind is BuildKind.SWAP_OUT:
                continue
            target = first if build.kind is BuildKind.SPARE else talk
            hold = None if build.kind is BuildKind.SPARE else done.hold
            self.work.after(done.task, target, done.wait, hold, key=f"hold {done.step}")

    def _running_order(self) -> None:
        """Dish after dish in running order with a reset between, or in any order where the shoot allows it."""
        reset = math.ceil(self.shoot.reset_minutes)
        runs = list(self.work.filmed.values())
        if self.shoot.may_reorder:
            pairs = [(one, other) for at, one in enumerate(runs) for other in runs[at + 1 :]]
            self.work.aparts += [Apart(one, other, reset) for one, other in pairs]
        else:
            for (_first, last), (first, _last) in pairwise(runs):
                self.work.gaps.append(Gap(last, first, reset, key="running order"))
