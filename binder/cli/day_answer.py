"""The answer of `binder day --json`."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.cli.answer import Answer, answer_of
from binder.figures.clash_words import clash_words
from binder.figures.day_words import build_text, resource_text
from binder.kitchen.edits.shoots import dish_name

if TYPE_CHECKING:
    from datetime import datetime

    from binder.cli.planned_day import PlannedDay
    from binder.figures.day_plan import DayPlan, PlannedActivity


def day_answer(found: PlannedDay, begins: datetime | None) -> Answer:
    """What happens when, from `begins` on (None: all), times on the wall in the shoot's zone."""
    plan = found.plan
    shown = [] if plan is None else [one for one in plan.activities if begins is None or one.start >= begins]
    return answer_of(
        found.binder,
        found.shoot,
        activities=[] if plan is None else [_activity(plan, one) for one in shown],
        wrap=None if plan is None else plan.wrap.isoformat(),
        bound=None if plan is None else plan.bound.isoformat(),
        proven_optimal=None if plan is None else plan.proven,
        assumed=[] if plan is None else list(plan.assumed),
        clash=[] if found.clash is None else list(clash_words(found.clash)),
        repairs=[{"says": repair.says, "enough": repair.enough} for repair in found.repairs],
        missing=list(found.missing),
    )


def _activity(plan: DayPlan, one: PlannedActivity) -> Answer:
    binder, activity = plan.asked.binder, one.activity
    names = {person.id: person.name for person in plan.asked.kitchen.people}
    return {
        "kind": activity.kind.value,
        "dish": None if activity.dish is None else dish_name(binder, binder.dishes[activity.dish]),
        "build": None if activity.build is None else build_text(binder, binder.builds[activity.build]),
        "step": activity.name,
        "start": one.start.isoformat(),
        "end": one.end.isoformat(),
        "resources": [resource_text(plan.asked, key) for key in one.resources],
        "people": [names[person] for person in one.people],
        "pinned": one.pinned,
    }
