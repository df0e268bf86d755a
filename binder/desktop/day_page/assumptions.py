"""What a plan assumes, each with the place where it can be said otherwise. Plain Python."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.day_kitchen import is_assumed
from binder.figures.missing import Place

if TYPE_CHECKING:
    from binder.figures.day_plan import DayPlan
    from binder.kitchen.binder import Binder
    from binder.kitchen.recipe import Step

CREW, KITCHEN = Place("people", ""), Place("appliances", "")
"""Where people and appliances are typed, before there are any."""


@dataclass(frozen=True)
class Assumption:
    """A sentence, and where it is mended."""

    title: str
    place: Place


def assumptions_of(binder: Binder, plan: DayPlan) -> tuple[Assumption, ...]:
    """What a plan assumes."""
    supposes = any(is_assumed(one) for one in plan.asked.kitchen.appliances)
    of_appliances = plan.asked.kitchen.assumed[-1:] if supposes else ()
    untimed = _untimed(binder, plan)
    return tuple(
        Assumption(says, KITCHEN if says in of_appliances else _step_in(binder, says, untimed) or CREW)
        for says in plan.assumed
    )


def _untimed(binder: Binder, plan: DayPlan) -> list[Step]:
    """The steps that say no time, those of recipes with long names first."""
    keys = {one.activity.step for one in plan.activities if one.activity.step in binder.steps}
    steps = [binder.steps[key] for key in keys if key is not None]
    without = [step for step in steps if not step.hands_on_minutes and not step.waiting_minutes]
    return sorted(without, key=lambda step: (-len(binder.recipes[step.recipe].name), step.position))


def _step_in(binder: Binder, says: str, untimed: list[Step]) -> Place | None:
    """The step a sentence is about: it names the recipe, then the step's number."""
    for step in untimed:
        name = binder.recipes[step.recipe].name
        numbers = re.findall(r"\d+", says.replace(name, "", 1))
        if name in says and numbers[:1] == [str(step.position + 1)]:
            return Place("steps", step.id)
    return None
