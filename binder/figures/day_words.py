"""The day in words: what an activity, a resource and a crew are called, and why something is when it is."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.date_text import moment_text, time_text
from binder.figures.day_activities import HOLD, KEEPS, ActivityKind
from binder.figures.day_hours import CALL
from binder.figures.day_kitchen import CAMERA
from binder.figures.duration_text import duration_text
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from binder.figures.day_activities import Activity
    from binder.figures.day_plan import DayPlan, PlannedActivity
    from binder.figures.day_question import DayQuestion
    from binder.figures.plan_question import Gap
    from binder.kitchen.binder import Binder
    from binder.kitchen.day import Person
    from binder.kitchen.shoot import Build


def dish_number(binder: Binder, dish_id: str) -> str:
    """A dish by its running number: `dish 2`."""
    return _("dish {number}").format(number=binder.dishes[dish_id].position + 1)


def dish_title(binder: Binder, dish_id: str) -> str:
    """A dish by its running number and name."""
    dish = binder.dishes[dish_id]
    return f"{dish.position + 1} {dish_name(binder, dish)}"


def build_text(binder: Binder, build: Build) -> str:
    """A build by its kind, and by its number where the dish has several of that kind: `swap-out 2`."""
    alike = [one.id for one in binder.builds.where("dish", build.dish) if one.kind is build.kind]
    return build.kind.value if len(alike) == 1 else f"{build.kind.value} {alike.index(build.id) + 1}"


def activity_text(binder: Binder, activity: Activity) -> str:
    """An activity with what it belongs to: `Fry of dish 2 (swap-out)`, `Toast for Brass-Spoon Spice`."""
    if activity.kind is ActivityKind.TALK and activity.dish is not None:
        return _("the close of {dish}").format(dish=dish_number(binder, activity.dish))
    if activity.build is not None and activity.dish is not None:
        build = build_text(binder, binder.builds[activity.build])
        says = _("{step} of {dish} ({build})")
        return says.format(step=activity.name, dish=dish_number(binder, activity.dish), build=build)
    if activity.step is not None:
        recipe = binder.recipes[binder.steps[activity.step].recipe].name
        return _("{step} for {recipe}").format(step=activity.name, recipe=recipe)
    return activity.name


def resource_text(asked: DayQuestion, key: str) -> str:
    """What a resource of the plan is called."""
    if key == CAMERA:
        return _("the camera")
    crew = next((crew for crew in asked.kitchen.crews if crew.key == key), None)
    if crew is not None:
        return listed(person.name for person in crew.people)
    appliance = asked.kitchen.appliance(key)
    return key if appliance is None else appliance.name


def people_text(asked: DayQuestion, people: Iterable[str]) -> str:
    """The names of people, by their ids."""
    names = {person.id: person.name for person in asked.kitchen.people}
    return listed(names.get(key, key) for key in people)


def hours_text(asked: DayQuestion, person: Person) -> str:
    """When someone is there."""
    binder, shoot = asked.binder, asked.clock.shoot
    arrives = time_text(binder, person.arrives or shoot.call or CALL)
    if person.leaves is None:
        return _("{name} comes at {arrives}").format(name=person.name, arrives=arrives)
    says = _("{name} is there from {arrives} to {leaves}")
    return says.format(name=person.name, arrives=arrives, leaves=time_text(binder, person.leaves))


def why(plan: DayPlan, planned: PlannedActivity) -> tuple[str, ...]:
    """Why an activity is when it is: what it waits for, what waits for it, that it is pinned. Sentences."""
    return tuple(dict.fromkeys(_reasons(plan, planned)))


def _reasons(plan: DayPlan, planned: PlannedActivity) -> Iterator[str]:
    asked, key = plan.asked, planned.activity.key
    if planned.done:
        yield _("Done.")
    elif planned.pinned:
        yield _("Pinned to {time}.").format(time=moment_text(asked.binder, planned.start, asked.clock.on))
    by_key = {one.activity.key: one for one in plan.activities}
    for gap in asked.question.gaps:
        if gap.after == key:
            yield _waits_for(asked, gap, by_key[gap.before])
        elif gap.before == key:
            yield _wanted_by(asked, gap, by_key[gap.after])


def _waits_for(asked: DayQuestion, gap: Gap, before: PlannedActivity) -> str:
    what = activity_text(asked.binder, before.activity)
    if gap.least:
        says = _("Waits for: {what}, and {minutes} after it.")
        return says.format(what=what, minutes=duration_text(gap.least))
    return _("Waits for: {what}.").format(what=what)


def _wanted_by(asked: DayQuestion, gap: Gap, after: PlannedActivity) -> str:
    binder = asked.binder
    what, time = activity_text(binder, after.activity), moment_text(binder, after.start, asked.clock.on)
    if gap.most is not None and gap.key.startswith((HOLD, KEEPS)):
        says = _("For: {what} at {time}; stays fit for {minutes}.")
        return says.format(what=what, time=time, minutes=duration_text(gap.most - gap.least))
    return _("For: {what} at {time}.").format(what=what, time=time)
