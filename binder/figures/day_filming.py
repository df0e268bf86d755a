"""What the camera sees of each dish: the hero, past each long wait the swap-out that has passed it, and the close."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise
from typing import TYPE_CHECKING

from binder.figures.day_activities import HOLD, Activity, ActivityKind, DayWork, Done, wait_after
from binder.figures.day_kitchen import CAMERA, DayKitchen, hands_for
from binder.figures.day_steps import StepTasks
from binder.figures.demand import builds_of, last_position
from binder.figures.plan_question import RUNNING_ORDER, Apart, Gap, Task
from binder.kitchen.day import ApplianceKind
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.shoot import BuildKind
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from binder.kitchen.binder import Binder
    from binder.kitchen.recipe import Step
    from binder.kitchen.shoot import Build, Dish, Shoot


def day_work(binder: Binder, shoot_id: str, kitchen: DayKitchen) -> DayWork:
    """Everything to do for a shoot."""
    work = DayWork()
    tasks = StepTasks(binder, shoot_id, kitchen, work)
    tasks.add_what_comes_first()
    for dish in binder.dishes.where("shoot", shoot_id):
        _DishTasks(tasks, dish).add()
    _keep_the_running_order(binder.shoots[shoot_id], work)
    _keep_in_the_cold(kitchen, work)
    return work


def _keep_the_running_order(shoot: Shoot, work: DayWork) -> None:
    """Dish after dish with a reset between, or in any order where the shoot allows it."""
    reset, runs = math.ceil(shoot.reset_minutes), list(work.filmed.values())
    if shoot.may_reorder:
        work.aparts.append(Apart(tuple(runs), reset))
    else:
        work.gaps += [Gap(last, first, reset, key=RUNNING_ORDER) for (_, last), (first, _) in pairwise(runs)]


def _keep_in_the_cold(kitchen: DayKitchen, work: DayWork) -> None:
    """What has been chilled keeps its place in the fridge until it is used, or until the last that uses it begins."""
    cold = {one.id for kind in (ApplianceKind.FRIDGE, ApplianceKind.FREEZER) for one in kitchen.of_kind(kind)}
    used_by: dict[str, dict[str, None]] = {}
    for gap in work.gaps:
        if gap.key.startswith(HOLD):
            used_by.setdefault(wait_after(gap.before), {})[gap.after] = None
    for at, task in enumerate(work.tasks):
        if task.key in used_by and any(cold.issuperset(choice.resources) for choice in task.one_of):
            work.tasks[at] = replace(task, until=tuple(used_by[task.key]))


class _DishTasks:
    """The tasks of one dish: builds made ahead off camera, then the hero and what takes its place."""

    def __init__(self, tasks: StepTasks, dish: Dish) -> None:
        self.tasks, self.binder, self.work, self.dish = tasks, tasks.binder, tasks.work, dish
        self.steps: Sequence[Step] = self.binder.steps.where("recipe", dish.recipe)
        self.builds = builds_of(self.binder, dish.id)
        self.hero = next((build for build in self.builds if build.kind is BuildKind.HERO), None)
        self.filmed: list[str] = []
        self.film_position: dict[str, int] = {}

    def add(self) -> None:
        """Everything to do for the dish."""
        waiting = {build.id: self._off_camera(build) for build in self.builds if build is not self.hero}
        ready = {build: done for build, done in waiting.items() if done is not None}
        if self.hero is not None:
            on_stage = self._film(self.hero, ready)
            self._have_ready({build: done for build, done in ready.items() if build not in on_stage})

    def _off_camera(self, build: Build) -> Done | None:
        """A build made ahead, up to its step."""
        last, before = last_position(self.binder, build), None
        for step in self.steps:
            if last is None or step.position <= last:
                before = self.tasks.build_step(self.dish, build, step, before, ActivityKind.PREP)
        return before

    def _film(self, hero: Build, ready: dict[str, Done]) -> set[str]:
        """Film from step to step, going on with a swap-out wherever one has come further. Returns those that came."""
        swaps = self._swap_outs(ready)
        came: set[str] = set()
        unseen: list[str] = []
        build, before, at = hero, None, 0
        while at < len(self.steps):
            step = self.steps[at]
            before = self._film_step(build, step, before)
            unseen = [] if before.task in self.film_position else [*unseen, before.task]
            swap, at = swaps.get(step.id), at + 1
            if swap is not None and self.filmed:
                self.work.put_away += unseen
                (build, before), unseen = swap, []
                came.add(build.id)
                at = max(at, before.position + 1)
        self._close(before)
        return came

    def _film_step(self, build: Build, step: Step, before: Done | None) -> Done:
        kind = ActivityKind.FILM if step.on_camera else ActivityKind.PREP
        done = self.tasks.build_step(self.dish, build, step, before, kind)
        if step.on_camera:
            self.filmed.append(done.task)
            self.film_position[done.task] = step.position
        return done

    def _swap_outs(self, ready: dict[str, Done]) -> dict[str, tuple[Build, Done]]:
        """The swap-out that takes the place of what is filmed after each step."""
        found: dict[str, tuple[Build, Done]] = {}
        for build in self.builds:
            if build.kind is BuildKind.SWAP_OUT and build.up_to is not None and build.id in ready:
                found.setdefault(build.up_to, (build, ready[build.id]))
        return found

    def _close(self, before: Done | None) -> None:
        """The last words to camera, with the finished dish fresh: what is left of the camera's minutes."""
        spoken = sum(task.minutes for task in self.work.tasks if task.key in self.film_position)
        talk = f"{self.dish.id}/talk"
        name = _("close: {dish}").format(dish=dish_name(self.binder, self.dish))
        minutes = max(1, math.ceil((self.dish.camera_minutes or 0) - spoken))
        hands = hands_for(self.tasks.kitchen, skill="", filmed=True)
        task = Task(talk, minutes, {CAMERA: 1}, (hands,))
        self.work.add(task, Activity(talk, ActivityKind.TALK, name, self.dish.id))
        if before is not None:
            self.work.after(before.task, talk, before.wait, before.hold, key=before.key)
        self.filmed.append(talk)
        for earlier, later in pairwise(self.filmed):
            self.work.after(earlier, later, 0)
        self.work.filmed[self.dish.id] = (self.filmed[0], talk)

    def _have_ready(self, ready: dict[str, Done]) -> None:
        """Builds that the camera does not pass through are there, and fit, when they may be wanted.

        A spare when filming begins, a swap-out that another stands before when the step after its last is filmed, and
        the rest at the close.
        """
        kinds = {build.id: build.kind for build in self.builds}
        for build, done in ready.items():
            wanted = self.filmed[0] if kinds[build] is BuildKind.SPARE else self.filmed[-1]
            if kinds[build] is BuildKind.SWAP_OUT:
                wanted = next(self._filmed_after(done.position), wanted)
            self.work.after(done.task, wanted, done.wait, done.hold, key=done.key)

    def _filmed_after(self, position: int) -> Iterator[str]:
        return (task for task, filmed in self.film_position.items() if filmed > position)
