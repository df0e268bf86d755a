"""Wording of times that several sheets share, and how the day plan is looked up by dish, build and step."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.date_text import date_text, time_text
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.wording import _
from binder.paper.run import unbroken

if TYPE_CHECKING:
    from datetime import date, datetime

    from binder.figures.day_plan import DayPlan, PlannedActivity
    from binder.kitchen.binder import Binder


def no_plan_text() -> str:
    """What stands where times would, if there were a day plan."""
    return _("There is no day plan to take times from: this is the order, without times.")


def clock(binder: Binder, moment: datetime) -> str:
    """A time of day, on one line."""
    return unbroken(time_text(binder, moment.time()))


def span_text(binder: Binder, start: datetime, end: datetime) -> str:
    """From when to when, on one line; one time where nothing lies between."""
    if start == end:
        return clock(binder, start)
    return unbroken(_("{start} – {end}").format(start=clock(binder, start), end=clock(binder, end)))


def day_heading(binder: Binder, shoot_id: str, day: date) -> str:
    """A day as a heading: its date, and for days before the shoot how many."""
    on = binder.shoots[shoot_id].on
    before = (on - day).days if on else 0
    words = date_text(binder, day)
    if before == 0:
        return _("{date}, the day of the shoot").format(date=words)
    if before == 1:
        return _("{date}, the day before").format(date=words)
    return _("{date}, {count} days before").format(date=words, count=before) if before > 0 else words


def activity_dish(binder: Binder, activity: PlannedActivity) -> str:
    """The dish that an activity is for, with its running number; the recipe of what is made ahead."""
    of = activity.activity
    if of.dish is not None and of.dish in binder.dishes:
        dish = binder.dishes[of.dish]
        return f"{dish.position + 1} {dish_name(binder, dish)}"
    if of.step is not None and of.step in binder.steps:
        return binder.recipes[binder.steps[of.step].recipe].name
    return ""


def activity_build(binder: Binder, activity: PlannedActivity) -> str:
    """The kind of the build that an activity is for."""
    build = activity.activity.build
    return binder.builds[build].kind.value if build is not None and build in binder.builds else ""


def activity_station(binder: Binder, activity: PlannedActivity) -> str:
    """Where an activity is done."""
    step = activity.activity.step
    return binder.steps[step].station if step is not None and step in binder.steps else ""


def starts_by_step(plan: DayPlan) -> dict[tuple[str | None, str], datetime]:
    """When each step of each build begins first; the build is None for what is made ahead."""
    found: dict[tuple[str | None, str], datetime] = {}
    for one in plan.activities:
        if one.activity.step is not None:
            key = (one.activity.build, one.activity.step)
            found[key] = min(one.start, found.get(key, one.start))
    return found
