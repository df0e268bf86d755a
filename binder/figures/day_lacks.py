"""What the day lacks or takes for granted that is known without planning it: people, times, skills, what is shared."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.allergen_matrix import allergen_matrix, contact_text
from binder.figures.clock import zone_of
from binder.figures.day_kitchen import day_kitchen, nobody_can
from binder.figures.day_words import dish_title
from binder.figures.memory import PLANS, remembered_from
from binder.figures.mise import made_ahead
from binder.figures.missing import Place
from binder.kitchen.wording import _, listed, ngettext

if TYPE_CHECKING:
    from collections.abc import Iterator

    from binder.kitchen.binder import Binder
    from binder.kitchen.recipe import Step


@dataclass(frozen=True)
class DayLack:
    """One thing: its kind, where it is mended, and the sentence. `asks`: someone should see to it."""

    kind: str
    place: Place
    where: str
    says: str
    asks: bool = False


@remembered_from(PLANS)
def day_lacks(binder: Binder, shoot_id: str) -> tuple[DayLack, ...]:
    """What a shoot with dishes lacks for its day."""
    if not binder.dishes.where("shoot", shoot_id):
        return ()
    return (*_people(binder, shoot_id), *_zone(binder, shoot_id), *_steps(binder, shoot_id), *_shared(binder, shoot_id))


def _people(binder: Binder, shoot_id: str) -> Iterator[DayLack]:
    place, name = Place("shoots", shoot_id), binder.shoots[shoot_id].name
    people = binder.people.where("shoot", shoot_id)
    if not people:
        says = _("Nobody is named yet: two pairs of hands are assumed, one of them on camera.")
        yield DayLack("nobody named", place, name, says)
    elif not any(person.on_camera for person in people):
        says = _("Nobody is said to be on camera: anyone may be filmed.")
        yield DayLack("nobody on camera", place, name, says)


def _zone(binder: Binder, shoot_id: str) -> Iterator[DayLack]:
    shoot = binder.shoots[shoot_id]
    if shoot.zone and zone_of(shoot.zone) is None:
        says = _("No time zone is called “{zone}”: choose one such as Europe/Berlin, or leave it empty.")
        yield DayLack("zone not known", Place("shoots", shoot_id), shoot.name, says.format(zone=shoot.zone), asks=True)


def _steps(binder: Binder, shoot_id: str) -> Iterator[DayLack]:
    kitchen = day_kitchen(binder, shoot_id)
    recipes = dict.fromkeys(dish.recipe for dish in binder.dishes.where("shoot", shoot_id))
    for recipe in (*recipes, *made_ahead(binder, shoot_id)):
        steps = binder.steps.where("recipe", recipe)
        yield from _untimed(
            binder, recipe, [one for one in steps if not one.hands_on_minutes and not one.waiting_minutes]
        )
        for step in steps:
            if step.skill and nobody_can(kitchen, step.skill):
                says = _(
                    "Nobody in the crew is said to be able to “{skill}”, which step {number} of {recipe} asks for."
                )
                name = binder.recipes[recipe].name
                shown = says.format(skill=step.skill, number=step.position + 1, recipe=name)
                yield DayLack("nobody can", Place("steps", step.id), name, shown, asks=True)


def _untimed(binder: Binder, recipe: str, steps: list[Step]) -> Iterator[DayLack]:
    if steps:
        says = ngettext(
            "{recipe} says no time for step {numbers}: five minutes of hands are assumed.",
            "{recipe} says no time for steps {numbers}: five minutes of hands each are assumed.",
            len(steps),
        )
        name, numbers = binder.recipes[recipe].name, listed(str(step.position + 1) for step in steps)
        yield DayLack("no time", Place("recipes", recipe), name, says.format(recipe=name, numbers=numbers))


def _shared(binder: Binder, shoot_id: str) -> Iterator[DayLack]:
    for row in allergen_matrix(binder, shoot_id).dishes:
        says = contact_text(binder, row)
        if says:
            yield DayLack("cross-contact", Place("dishes", row.dish), dish_title(binder, row.dish), says)
