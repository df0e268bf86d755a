"""Edits of the shooting day: its people, appliances and fixed events, its call and wrap, and what is pinned."""

from __future__ import annotations

from dataclasses import asdict
from typing import TYPE_CHECKING

from binder.kitchen.change import Change, changed
from binder.kitchen.day import Appliance, ApplianceKind, FixedEvent, Person, Pin, PinTarget
from binder.kitchen.edits.identity import new_id
from binder.kitchen.edits.records import insert, move, remove, set_fields
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from datetime import date, time

    from binder.kitchen.binder import Binder
    from binder.kitchen.recipe import Step
    from binder.kitchen.shoot import Shoot


def add_person(binder: Binder, shoot: Shoot, name: str, **fields: object) -> tuple[Change, Person]:
    """Someone more in the crew. Returns the change and the person it adds."""
    person = Person(id=new_id("person"), shoot=shoot.id, name=name, **fields)  # type: ignore[arg-type]
    return insert(_("Add {name} to the crew").format(name=name), binder, person), person


def set_person(person: Person, **fields: object) -> Change:
    """Change someone's name, role, skills, or when they are there."""
    return set_fields(_("Edit {name}").format(name=person.name), person, **fields)


def move_person(binder: Binder, person: Person, *, to: int) -> Change:
    """Put someone at another place in the list of the crew."""
    return move(_("Move {name}").format(name=person.name), binder, person, to=to)


def remove_person(binder: Binder, person: Person) -> Change:
    """Take someone out of the crew."""
    return remove(_("Take {name} out of the crew").format(name=person.name), binder, person)


def add_appliance(
    binder: Binder, shoot: Shoot, name: str, kind: ApplianceKind, **fields: object
) -> tuple[Change, Appliance]:
    """An oven, a hob, a fridge, a tool. Returns the change and the appliance it adds."""
    appliance = Appliance(id=new_id("appliance"), shoot=shoot.id, name=name, kind=kind, **fields)  # type: ignore[arg-type]
    return insert(_("Add {name} to the kitchen").format(name=name), binder, appliance), appliance


def set_appliance(appliance: Appliance, **fields: object) -> Change:
    """Change how much an appliance holds, or how long it takes to change."""
    return set_fields(_("Edit {name}").format(name=appliance.name), appliance, **fields)


def move_appliance(binder: Binder, appliance: Appliance, *, to: int) -> Change:
    """Put an appliance at another place in the list."""
    return move(_("Move {name}").format(name=appliance.name), binder, appliance, to=to)


def remove_appliance(binder: Binder, appliance: Appliance) -> Change:
    """Take an appliance out of the kitchen."""
    return remove(_("Take {name} out of the kitchen").format(name=appliance.name), binder, appliance)


def add_event(
    binder: Binder, shoot: Shoot, name: str, at: time, *, minutes: float = 0.0, stops_work: bool = True
) -> tuple[Change, FixedEvent]:
    """Something at a fixed time on the day. Returns the change and the event it adds."""
    event = FixedEvent(id=new_id("event"), shoot=shoot.id, name=name, at=at, minutes=minutes, stops_work=stops_work)
    return insert(_("Add {event} to the day").format(event=name), binder, event), event


def set_event(event: FixedEvent, **fields: object) -> Change:
    """Change when an event is, or how long it takes."""
    return set_fields(_("Edit {event}").format(event=event.name), event, **fields)


def remove_event(binder: Binder, event: FixedEvent) -> Change:
    """Take an event out of the day."""
    return remove(_("Take {event} out of the day").format(event=event.name), binder, event)


def set_call(shoot: Shoot, call: time | None) -> Change:
    """Set when the crew is called; None takes it back."""
    label = _("Take the call back") if call is None else _("Set call to {time:%H:%M}").format(time=call)
    return set_fields(label, shoot, call=call)


def set_wrap(shoot: Shoot, wrap: time | None) -> Change:
    """Set by when filming has ended; None leaves it open."""
    label = _("Leave the wrap open") if wrap is None else _("Set wrap to {time:%H:%M}").format(time=wrap)
    return set_fields(label, shoot, wrap=wrap)


def set_step_use(
    binder: Binder, step: Step, *, uses: ApplianceKind | None, places: int = 1, skill: str | None = None
) -> Change:
    """Set what a step stands on or in, how many places of it, and (where it is given) the skill it asks for."""
    label = _("Set what step {number} of {recipe} uses")
    told = {} if skill is None else {"skill": skill}
    return set_fields(
        label.format(number=step.position + 1, recipe=binder.recipes[step.recipe].name),
        step,
        uses=uses,
        places=places,
        **told,
    )


def pins_on(binder: Binder, shoot_id: str, target: PinTarget) -> tuple[Pin, ...]:
    """The pins on one thing: one, unless two people have pinned it at once."""
    return tuple(pin for pin in binder.pins.where("shoot", shoot_id) if pin.target == target)


def set_pin(binder: Binder, shoot: Shoot, target: PinTarget, *, on: date, at: time, done: bool = False) -> Change:
    """Have something begin at a moment, instead of any other it was pinned to; `done`: it began then."""
    label = _("Mark {what} as done") if done else _("Pin {what} to {time:%H:%M}")
    before = pins_on(binder, shoot.id, target)
    key = before[0].id if before else new_id("pin")
    pin = Pin(id=key, shoot=shoot.id, on=on, at=at, done=done, **asdict(target))
    return changed(label.format(what=target_name(binder, target), time=at), before=before, after=[pin])


def unpin(binder: Binder, *pins: Pin) -> Change:
    """Let what was pinned go where it fits."""
    names = dict.fromkeys(target_name(binder, pin.target) for pin in pins)
    return remove(_("Unpin {what}").format(what=", ".join(names)), binder, *pins)


def target_name(binder: Binder, target: PinTarget) -> str:
    """What is pinned, as a menu or a sentence names it."""
    if target.conversion is not None:
        return binder.conversions[target.conversion].name
    if target.step is not None:
        step = binder.steps[target.step]
        named = step.title or _("step {number}").format(number=step.position + 1)
        return _("{step} of {dish}").format(step=named, dish=_dish_or_recipe(binder, target, step))
    if target.dish is not None:
        return _("the close of {dish}").format(dish=dish_name(binder, binder.dishes[target.dish]))
    return _("the pin")


def _dish_or_recipe(binder: Binder, target: PinTarget, step: Step) -> str:
    return dish_name(binder, binder.dishes[target.dish]) if target.dish else binder.recipes[step.recipe].name
