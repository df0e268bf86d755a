"""What the kitchen and the crew of a shoot can do at once: its own, or what any set has where it does not say."""

from __future__ import annotations

import functools
import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.memory import remembered
from binder.figures.plan_question import OneOf, Resource
from binder.kitchen.day import Appliance, ApplianceKind, Person
from binder.kitchen.recipe import Heat
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from binder.kitchen.binder import Binder
    from binder.kitchen.recipe import Step

CAMERA = "camera"
"""The key of the resource that every shoot has."""

_COPY = "#"
"""Parts the id of a tool from the number of one of several of it."""

_ASSUMED_PEOPLE = 2
_ASSUMED = (
    (ApplianceKind.OVEN, 2, 15.0),
    (ApplianceKind.BURNERS, 4, 0.0),
    (ApplianceKind.FRIDGE, 20, 0.0),
    (ApplianceKind.FREEZER, 5, 0.0),
)
"""What a kitchen set is taken to have where the shoot names none of its kind. Common practice, no source."""


@dataclass(frozen=True)
class Crew:
    """People who can stand in for each other: of the same skills and hours, and on camera or not."""

    key: str
    people: tuple[Person, ...]

    @property
    def on_camera(self) -> bool:
        """Whether they are filmed."""
        return self.people[0].on_camera

    def can(self, skill: str) -> bool:
        """Whether they have a skill; everyone has the one without a name."""
        return not skill or skill.casefold() in {one.casefold() for one in self.people[0].skills}


@dataclass(frozen=True)
class DayKitchen:
    """People and appliances, and in words what was assumed about them."""

    people: tuple[Person, ...]
    appliances: tuple[Appliance, ...]
    assumed: tuple[str, ...]

    @functools.cached_property
    def crews(self) -> tuple[Crew, ...]:
        """The people by what they can do and when they are there."""
        alike: dict[tuple[object, ...], list[Person]] = {}
        for person in self.people:
            skills = frozenset(skill.casefold() for skill in person.skills)
            alike.setdefault((skills, person.on_camera, person.arrives, person.leaves), []).append(person)
        return tuple(Crew(f"crew {people[0].id}", tuple(people)) for people in alike.values())

    def of_kind(self, kind: ApplianceKind) -> tuple[Appliance, ...]:
        """The appliances of a kind."""
        return tuple(one for one in self.appliances if one.kind is kind)

    def appliance(self, resource: str) -> Appliance | None:
        """The appliance that a resource of the plan is, or is one of several of."""
        key = resource.partition(_COPY)[0]
        return next((one for one in self.appliances if one.id in {resource, key}), None)


@remembered
def day_kitchen(binder: Binder, shoot_id: str) -> DayKitchen:
    """The people and appliances of a shoot, with what is assumed where it names none."""
    people, assumed = binder.people.where("shoot", shoot_id), []
    if not people:
        people = tuple(_assumed_people(shoot_id))
        assumed.append(_("Nobody is named yet: two pairs of hands are assumed, one of them on camera."))
    elif not any(person.on_camera for person in people):
        assumed.append(_("Nobody is said to be on camera: anyone may be filmed."))
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


def is_assumed(thing: Person | Appliance) -> bool:
    """Whether someone or something is not in the binder, but taken to be there."""
    return thing.id.startswith("assumed ")


def resources_of(kitchen: DayKitchen) -> tuple[Resource, ...]:
    """Camera, crews, each appliance, each single tool: what a plan must not overfill."""
    return (
        Resource(CAMERA),
        *(Resource(crew.key, len(crew.people)) for crew in kitchen.crews),
        *(resource for appliance in kitchen.appliances for resource in _appliance_resources(appliance)),
    )


def _appliance_resources(appliance: Appliance) -> Iterator[Resource]:
    change = math.ceil(appliance.change_minutes)
    if appliance.kind is ApplianceKind.TOOL:
        yield from (Resource(key, change=change) for key in _copies(appliance))
    else:
        has_states = appliance.kind is ApplianceKind.OVEN
        change = change if has_states else 0
        yield Resource(appliance.id, appliance.places, has_states, round(appliance.tolerance), change)


def _copies(tool: Appliance) -> tuple[str, ...]:
    """A tool of which there are several is washed and used one by one."""
    return (tool.id, *(f"{tool.id}{_COPY}{number}" for number in range(2, tool.places + 1)))


def hands_for(kitchen: DayKitchen, *, skill: str, filmed: bool) -> OneOf:
    """One pair of hands of those who may do something; of anyone, where it is said of no one that they may."""
    may = [crew for crew in kitchen.crews if crew.on_camera or not filmed] or list(kitchen.crews)
    able = [crew for crew in may if crew.can(skill)] or may
    return OneOf(tuple(crew.key for crew in able))


def nobody_can(kitchen: DayKitchen, skill: str) -> bool:
    """Whether a skill is asked for that nobody is said to have."""
    return not any(crew.can(skill) for crew in kitchen.crews)


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


def tools_for(kitchen: DayKitchen, equipment: Iterable[str]) -> tuple[OneOf, ...]:
    """For each tool of the kitchen that a step's equipment names, one of those that have its name."""
    named = {word.casefold() for word in equipment}
    same: dict[str, list[str]] = {}
    for tool in kitchen.of_kind(ApplianceKind.TOOL):
        if tool.name.casefold() in named:
            same.setdefault(tool.name.casefold(), []).extend(_copies(tool))
    return tuple(OneOf(tuple(keys)) for keys in same.values())
