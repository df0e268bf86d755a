"""What the kitchen and the crew of a shoot can do at once: its own, or what any set has where it does not say."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.memory import remembered
from binder.figures.plan_question import Resource
from binder.kitchen.day import Appliance, ApplianceKind, Person
from binder.kitchen.recipe import Heat
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator

    from binder.kitchen.binder import Binder
    from binder.kitchen.recipe import Step

CAMERA, PEOPLE, PRESENTER = "camera", "people", "presenter"
"""Keys of the resources that every shoot has."""

_ASSUMED_PEOPLE = 2
_ASSUMED = (
    (ApplianceKind.OVEN, 2, 15.0),
    (ApplianceKind.BURNERS, 4, 0.0),
    (ApplianceKind.FRIDGE, 20, 0.0),
    (ApplianceKind.FREEZER, 5, 0.0),
)
"""What a kitchen set is taken to have where the shoot names none of its kind. Common practice, no source."""


@dataclass(frozen=True)
class DayKitchen:
    """Resources by what they are for, and in words what was assumed about them."""

    people: tuple[Person, ...]
    appliances: tuple[Appliance, ...]
    assumed: tuple[str, ...]

    def of_kind(self, kind: ApplianceKind) -> tuple[Appliance, ...]:
        """The appliances of a kind."""
        return tuple(one for one in self.appliances if one.kind is kind)


@remembered
def day_kitchen(binder: Binder, shoot_id: str) -> DayKitchen:
    """The people and appliances of a shoot, with what is assumed where it names none."""
    people, assumed = binder.people.where("shoot", shoot_id), []
    if not people:
        people = tuple(_assumed_people(shoot_id))
        assumed.append(_("Nobody is named yet: two pairs of hands are assumed, one of them on camera."))
    own = binder.appliances.where("shoot", shoot_id)
    supposed = [_assumed_appliance(shoot_id, *row) for row in _ASSUMED if not any(one.kind is row[0] for one in own)]
    if supposed:
        says = _("The kitchen is assumed to have: {things}.")
        assumed.append(says.format(things=", ".join(f"{one.name} ({one.places})" for one in supposed)))
    return DayKitchen(people, (*own, *supposed), tuple(assumed))


def _assumed_people(shoot_id: str) -> Iterator[Person]:
    for number in range(_ASSUMED_PEOPLE):
        name = _("presenter") if number == 0 else _("cook")
        yield Person(id=f"assumed person {number}", shoot=shoot_id, position=number, name=name, on_camera=number == 0)


def _assumed_appliance(shoot_id: str, kind: ApplianceKind, places: int, change: float) -> Appliance:
    return Appliance(
        id=f"assumed {kind}", shoot=shoot_id, name=kind.value, kind=kind, places=places, change_minutes=change
    )


def resources_of(kitchen: DayKitchen) -> tuple[Resource, ...]:
    """Camera, people, presenter, each skill, each appliance: what a plan must not overfill."""
    presenters = sum(person.on_camera for person in kitchen.people)
    skills = sorted({skill for person in kitchen.people for skill in person.skills})
    return (
        Resource(CAMERA),
        Resource(PEOPLE, len(kitchen.people)),
        Resource(PRESENTER, max(1, presenters)),
        *(Resource(skill_key(skill), sum(skill in person.skills for person in kitchen.people)) for skill in skills),
        *(_appliance_resource(appliance) for appliance in kitchen.appliances),
    )


def skill_key(skill: str) -> str:
    """The resource of those who have a skill."""
    return f"skill {skill}"


def _appliance_resource(appliance: Appliance) -> Resource:
    return Resource(
        appliance.id,
        appliance.places,
        has_states=appliance.kind is ApplianceKind.OVEN,
        tolerance=round(appliance.tolerance),
        change=math.ceil(appliance.change_minutes),
    )


def appliances_for(kitchen: DayKitchen, step: Step) -> tuple[Appliance, ...]:
    """The appliances of which a step takes one: of the kind it names, or that its heat asks for."""
    kind = step.uses or _kind_for(step.heat)
    if kind is ApplianceKind.FRYER and not kitchen.of_kind(kind):
        kind = ApplianceKind.BURNERS
    return kitchen.of_kind(kind) if kind not in {None, ApplianceKind.TOOL} else ()


def _kind_for(heat: Heat | None) -> ApplianceKind | None:
    kinds = {
        Heat.OVEN: ApplianceKind.OVEN,
        Heat.PAN: ApplianceKind.BURNERS,
        Heat.OIL: ApplianceKind.FRYER,
        Heat.CHILL: ApplianceKind.FRIDGE,
    }
    return kinds.get(heat) if heat else None


def tools_for(kitchen: DayKitchen, step: Step) -> tuple[Appliance, ...]:
    """The tools that a step's equipment names."""
    named = {word.casefold() for word in step.equipment}
    return tuple(tool for tool in kitchen.of_kind(ApplianceKind.TOOL) if tool.name.casefold() in named)
