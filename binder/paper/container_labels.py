"""What stands on the label of each container that is set out: what, whose, how much, made when, use by, allergens."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import timedelta
from typing import TYPE_CHECKING

from binder.figures.leads import shoot_leads
from binder.figures.mise import mise_list
from binder.figures.safety import recipe_allergens
from binder.kitchen.food import Keeping
from binder.kitchen.reference import allergens
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping
    from datetime import datetime

    from binder.figures.day_plan import DayPlan
    from binder.figures.mise import MiseItem
    from binder.figures.portion_text import SetOut
    from binder.kitchen.binder import Binder
    from binder.kitchen.recipe import Line


@dataclass(frozen=True)
class ContainerLabel:
    """The label of one container. `made` and `use_by` are as planned, and None where they are written by hand."""

    food: str
    preparation: str
    whose: str
    amount: SetOut
    made: datetime | None
    use_by: datetime | None
    allergens: tuple[str, ...]
    keeping: str


def container_labels(binder: Binder, shoot_id: str, plan: DayPlan | None = None) -> Iterator[ContainerLabel]:
    """A label for each container, in the order of the mise list: one a build for everything that is set out."""
    forms, recipes = _forms_ready(binder, shoot_id, plan), _recipes_ready(binder, plan)
    for item in mise_list(binder, shoot_id):
        line = binder.lines[item.line]
        moment = recipes.get(line.made or "") if line.food is None else forms.get(line.food)
        keeps = None if line.food is None else binder.foods[line.food].keeps_days
        for build in item.builds:
            yield ContainerLabel(
                food=item.food,
                preparation=", ".join(part for part in (item.preparation, line.note) if part),
                whose=_whose(item, build.kind),
                amount=build.amount,
                made=moment,
                use_by=None if moment is None or keeps is None else moment + timedelta(days=keeps),
                allergens=_allergens(binder, line),
                keeping=_keeping(binder, line),
            )


def _whose(item: MiseItem, kind: str) -> str:
    if item.number is None:
        return _("for {recipe}, made ahead").format(recipe=item.for_what)
    return f"{item.number} {item.for_what} · {kind}"


def _forms_ready(binder: Binder, shoot_id: str, plan: DayPlan | None) -> Mapping[str, datetime]:
    """When each form of the base is ready: as planned, or else at the latest that call allows."""
    begins = {lead.conversion: lead.starts for lead in shoot_leads(binder, shoot_id)}
    for one in plan.activities if plan else ():
        if one.activity.conversion is not None:
            begins[one.activity.conversion] = one.start
    ready: dict[str, datetime] = {}
    for key, start in begins.items():
        conversion = binder.conversions[key]
        if start is not None:
            done = start + timedelta(minutes=conversion.hands_on_minutes + conversion.lead_minutes)
            ready |= {outcome.form: done for outcome in binder.outcomes.where("conversion", key)}
    return ready


def _recipes_ready(binder: Binder, plan: DayPlan | None) -> Mapping[str, datetime]:
    """When each recipe that is made ahead is done, where there is a plan."""
    ready: dict[str, datetime] = {}
    for one in plan.activities if plan else ():
        if one.activity.build is None and one.activity.step is not None and one.activity.step in binder.steps:
            recipe = binder.steps[one.activity.step].recipe
            ready[recipe] = max(one.end, ready.get(recipe, one.end))
    return ready


def _allergens(binder: Binder, line: Line) -> tuple[str, ...]:
    """The allergens in a container, by the names of the binder's scheme."""
    if line.made is not None:
        return tuple(one.group for one in recipe_allergens(binder, line.made))
    groups: set[str] = set()
    for food in _made_from(binder, line.food or ""):
        for code in binder.foods[food].allergens:
            known = allergens().get(code)
            groups.add(known.group(binder.settings.allergens) if known else code)
    return tuple(sorted(groups - {""}))


def _made_from(binder: Binder, food: str) -> set[str]:
    """A food and all that its conversions take."""
    found, waiting = set[str](), [food]
    while waiting:
        key = waiting.pop()
        if key not in found:
            found.add(key)
            for outcome in binder.outcomes.where("form", key):
                waiting.append(binder.conversions[outcome.conversion].takes)
                waiting += [one.food for one in binder.additions.where("conversion", outcome.conversion)]
    return found


def _keeping(binder: Binder, line: Line) -> str:
    """Where the container waits, where that is not the shelf."""
    if line.food is None:
        return ""
    food = binder.foods[line.food]
    if food.keeping is Keeping.FROZEN:
        return _("keep frozen")
    if food.keeping is Keeping.CHILLED or food.temperature_control:
        return _("keep cold")
    return ""
