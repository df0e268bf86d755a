"""Steps as tasks: conversions of the base, recipes made ahead, builds step by step, each after what it is made from."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from binder.figures.base import base_balance
from binder.figures.day_activities import HOLD, KEEPS, Activity, ActivityKind, DayWork, Done, wait_after
from binder.figures.day_kitchen import CAMERA, DayKitchen, appliances_for, hands_for, nobody_can, tools_for
from binder.figures.mise import made_ahead
from binder.figures.plan_question import OneOf, Task
from binder.figures.recipe_use import recipe_uses
from binder.kitchen.day import ApplianceKind
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterable

    from binder.kitchen.binder import Binder
    from binder.kitchen.conversion import Conversion
    from binder.kitchen.recipe import Step
    from binder.kitchen.shoot import Build, Dish

_DAY = 24 * 60
_ASSUMED_MINUTES, _LEAST_MINUTES = 5, 1
"""A step that says no time is taken to need five minutes of hands, and whatever only waits a minute of someone who
begins it. Common practice, no source."""

_ONLY_WAITING = {ApplianceKind.FRIDGE, ApplianceKind.FREEZER}
_ALL_ALONG = {ApplianceKind.BURNERS, ApplianceKind.FRYER}
"""Where a step stands only once hands are off it, and where from its beginning; an oven, only where it waits there."""


class StepTasks:
    """Makes the tasks of steps, and remembers what each form and recipe made ahead comes of."""

    def __init__(self, binder: Binder, shoot_id: str, kitchen: DayKitchen, work: DayWork) -> None:
        self.binder, self.shoot_id, self.kitchen, self.work = binder, shoot_id, kitchen, work
        self.made_by: dict[str, list[Done]] = {}

    def add_what_comes_first(self) -> None:
        """The conversions that are run, and the recipes that dishes are made from, innermost first."""
        balance = base_balance(self.binder, self.shoot_id)
        for run in balance.runs if balance else ():
            self._conversion(self.binder.conversions[run.conversion])
        for recipe in made_ahead(self.binder, self.shoot_id):
            self._ahead(recipe)

    def _conversion(self, conversion: Conversion) -> None:
        """What it gives is there after its lead time and the form's ageing."""
        key = f"conversion/{conversion.id}"
        minutes = max(_LEAST_MINUTES, math.ceil(conversion.hands_on_minutes))
        one_of = (self._hands(), *tools_for(self.kitchen, conversion.equipment))
        activity = Activity(key, ActivityKind.CONVERSION, conversion.name, conversion=conversion.id)
        self.work.add(Task(key, minutes, one_of=one_of, group=key), activity)
        additions = (addition.food for addition in self.binder.additions.where("conversion", conversion.id))
        self.work.foods[key] = (conversion.takes, *additions)
        self._needs(key, conversion.takes)
        for outcome in self.binder.outcomes.where("conversion", conversion.id):
            form = self.binder.foods[outcome.form]
            ages = form.good_from_days or 0
            fit = None if form.keeps_days is None else max(0, form.keeps_days - ages) * _DAY
            done = Done(key, conversion.lead_minutes + ages * _DAY, fit, f"{KEEPS}{form.id}")
            self.made_by.setdefault(form.id, []).append(done)

    def _needs(self, task: str, *made: str) -> None:
        """A task begins when the forms and recipes it needs are there, and while they are fit."""
        for done in (done for one in dict.fromkeys(made) for done in self.made_by.get(one, ())):
            self.work.after(done.task, task, done.wait, done.hold, key=done.key)

    def _ahead(self, recipe_id: str) -> None:
        """The steps of a recipe that dishes are made from, once for all of them."""
        before: Done | None = None
        for step in self.binder.steps.where("recipe", recipe_id):
            activity = Activity(f"ahead/{step.id}", ActivityKind.AHEAD, self._name(step), step=step.id)
            before = self.step(step, activity, before, group=recipe_id)
        if before is not None:
            self.made_by[recipe_id] = [before]

    def build_step(self, dish: Dish, build: Build, step: Step, before: Done | None, kind: ActivityKind) -> Done:
        """One step of one build, after the step it has behind it."""
        key = f"{build.id}/{step.id}"
        activity = Activity(key, kind, self._name(step), dish=dish.id, build=build.id, step=step.id)
        return self.step(step, activity, before, group=dish.id)

    def step(self, step: Step, activity: Activity, before: Done | None, *, group: str) -> Done:
        """A step as a task, and as another where it takes an appliance while it waits."""
        minutes, filmed = self._minutes(step), activity.kind is ActivityKind.FILM
        with_hands, waiting = self._places(step)
        hands = self._hands(skill=step.skill, filmed=filmed)
        one_of = (hands, *tools_for(self.kitchen, step.equipment), *with_hands)
        state, needs = round(step.celsius or 0), {CAMERA: 1} if filmed else {}
        self.work.add(Task(activity.key, minutes, needs, one_of, state=state, group=group), activity)
        self.work.foods[activity.key] = tuple(self._foods_of(step))
        if before is not None:
            self.work.after(before.task, activity.key, before.wait, before.hold, key=before.key)
        self._needs(activity.key, *self._foods_of(step))
        if waiting and step.waiting_minutes:
            self._wait(step, activity, waiting, state)
        return Done(activity.key, step.waiting_minutes, step.hold_minutes, f"{HOLD}{step.id}", step.position)

    def _wait(self, step: Step, activity: Activity, waiting: tuple[OneOf, ...], state: int) -> None:
        """What a step leaves in an oven, on a burner or in the fridge takes its place there until it is done."""
        key = wait_after(activity.key)
        task = Task(key, math.ceil(step.waiting_minutes), one_of=waiting, state=state)
        about = Activity(key, ActivityKind.WAIT, activity.name, activity.dish, activity.build, activity.step)
        self.work.add(task, about)
        self.work.after(activity.key, key, 0, 0)

    def _places(self, step: Step) -> tuple[tuple[OneOf, ...], tuple[OneOf, ...]]:
        """What a step takes one of while hands are on it, and what while it waits."""
        found = appliances_for(self.kitchen, step)
        if not found:
            return (), ()
        kind, one = found[0].kind, (OneOf(tuple(appliance.id for appliance in found), step.places),)
        if kind in _ALL_ALONG:
            return one, one
        only_waiting = kind in _ONLY_WAITING or step.waiting_minutes
        return ((), one) if only_waiting else (one, ())

    def _minutes(self, step: Step) -> int:
        if step.hands_on_minutes or step.waiting_minutes:
            return max(_LEAST_MINUTES, math.ceil(step.hands_on_minutes))
        says = _("{recipe}, step {number} says no time: {minutes} minutes of hands are assumed.")
        recipe = self.binder.recipes[step.recipe].name
        self._assume(says.format(recipe=recipe, number=step.position + 1, minutes=_ASSUMED_MINUTES))
        return _ASSUMED_MINUTES

    def _hands(self, *, skill: str = "", filmed: bool = False) -> OneOf:
        if nobody_can(self.kitchen, skill):
            says = _("Nobody in the crew is said to be able to “{skill}”: anyone is taken to be.")
            self._assume(says.format(skill=skill))
        return hands_for(self.kitchen, skill=skill, filmed=filmed)

    def _assume(self, says: str) -> None:
        self.work.assumed[says] = None

    def _foods_of(self, step: Step) -> Iterable[str]:
        """The foods, forms and recipes made ahead that a step itself takes."""
        for line in self.binder.lines.where("step", step.id):
            if line.made is not None:
                yield line.made
        for use in recipe_uses(self.binder, step.recipe):
            if use.step == step.id and use.inner == use.line:
                yield use.food

    @staticmethod
    def _name(step: Step) -> str:
        return step.title or _("step {number}").format(number=step.position + 1)
