"""What might help where a day has no plan, as changes to the binder; whether it does is for planning to find out."""

from __future__ import annotations

from datetime import date, datetime, timedelta
from itertools import pairwise
from typing import TYPE_CHECKING

from binder.figures.date_text import date_text, time_text
from binder.figures.day_activities import HOLD
from binder.figures.day_hours import BY_CALL, BY_TRIP, CALL, EVENT, NIGHTS, PERSON
from binder.figures.day_kitchen import is_assumed
from binder.figures.day_words import dish_number
from binder.figures.duration_text import duration_text
from binder.figures.plan_clash import ABSENCE, EARLIEST, GAP, HORIZON, LATEST, PIN, RESOURCE
from binder.figures.plan_question import RUNNING_ORDER
from binder.figures.trips import trip_plans
from binder.kitchen.change import Change, changed, joined
from binder.kitchen.day import Appliance, ApplianceKind, Person
from binder.kitchen.edits.buying import add_trip, set_trip
from binder.kitchen.edits.day import pins_on, set_appliance, set_event, set_wrap, target_name, unpin
from binder.kitchen.edits.identity import new_id
from binder.kitchen.edits.records import set_fields
from binder.kitchen.edits.shoots import move_dish, set_shoot
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator
    from datetime import time

    from binder.figures.day_clash import DayClash
    from binder.kitchen.binder import Binder
    from binder.kitchen.price import Store
    from binder.kitchen.shoot import Shoot

Idea = tuple[tuple[str, Change], ...]
"""One repair in one or several sizes, the smallest first: what it says, and the change it is."""

_STEPS = (30, 60)
"""Minutes that something is moved by, the less first."""

_PREP_LONGER = (120,)
_PLURAL = {ApplianceKind.BURNERS, ApplianceKind.FRYER, ApplianceKind.FRIDGE, ApplianceKind.FREEZER}
"""Kinds that come in places: one more is no second appliance."""


def repair_ideas(binder: Binder, shoot_id: str, clash: DayClash) -> Iterator[Idea]:
    """Repairs that touch a clash, those of the least trouble first."""
    ideas = _Ideas(binder, binder.shoots[shoot_id], clash)
    yield from ideas.let_go()
    yield from ideas.change_places()
    yield from ideas.move_times()
    yield from ideas.shop_earlier()
    yield from ideas.hold_longer()
    yield from ideas.have_more()


class _Ideas:
    def __init__(self, binder: Binder, shoot: Shoot, clash: DayClash) -> None:
        self.binder, self.shoot, self.clash, self.asked = binder, shoot, clash, clash.asked

    def _after(self, kind: str) -> Iterator[str]:
        """What the demands of a kind end with."""
        return (one.removeprefix(kind) for one in self.clash.demands if one.startswith(kind))

    def let_go(self) -> Iterator[Idea]:
        """Unpin."""
        for key in self._after(PIN):
            target = self.asked.work.activities[key].target
            pins = pins_on(self.binder, self.shoot.id, target)
            says = _("Let go of the pin of {what}.").format(what=target_name(self.binder, target))
            yield ((says, unpin(self.binder, *pins)),)

    def change_places(self) -> Iterator[Idea]:
        """Two dishes that follow each other the other way round; or any order at all."""
        if f"{GAP}{RUNNING_ORDER}" not in self.clash.demands:
            return
        dishes = self.binder.dishes.where("shoot", self.shoot.id)
        for one, other in pairwise(dishes):
            if {one.id, other.id} & set(self.clash.dishes):
                says = _("Film {other} before {one}.").format(
                    other=dish_number(self.binder, other.id), one=dish_number(self.binder, one.id)
                )
                yield ((says, move_dish(self.binder, one, to=dishes.index(other))),)
        yield ((_("Let the dishes change places."), set_shoot(self.shoot, may_reorder=True)),)

    def move_times(self) -> Iterator[Idea]:
        """Events at another time, a later wrap, an earlier call, longer hours of prep."""
        for key in self._after(f"{ABSENCE}{EVENT}"):
            event = self.binder.fixed_events[key]
            for sign, says in ((1, _("Have {event} {time} later.")), (-1, _("Have {event} {time} earlier."))):
                yield tuple(
                    (
                        says.format(event=event.name, time=duration_text(minutes)),
                        set_event(event, at=_moved(event.at, sign * minutes)),
                    )
                    for minutes in _STEPS
                )
        if LATEST in self.clash.demands and self.shoot.wrap is not None:
            yield tuple(self._later_wrap(self.shoot.wrap, minutes) for minutes in _STEPS)
        waits_for_call = {HORIZON, f"{EARLIEST}{BY_CALL}"} & set(self.clash.demands)
        if waits_for_call or any(self._after(f"{ABSENCE}{PERSON}")):
            yield tuple(self._earlier_call(minutes) for minutes in _STEPS)
        if f"{ABSENCE}{NIGHTS}" in self.clash.demands:
            yield tuple(self._longer_prep(minutes) for minutes in _PREP_LONGER)

    def _later_wrap(self, wrap: time, minutes: int) -> tuple[str, Change]:
        later = _moved(wrap, minutes)
        says = _("Wrap {time} later, at {wrap}.")
        shown = says.format(time=duration_text(minutes), wrap=time_text(self.binder, later))
        return shown, set_wrap(self.shoot, later)

    def _earlier_call(self, minutes: int) -> tuple[str, Change]:
        """Call, and with it everyone who comes at a time of their own."""
        call = _moved(self.shoot.call or CALL, -minutes)
        label = _("Call {time} earlier, at {call}.")
        says = label.format(time=duration_text(minutes), call=time_text(self.binder, call))
        crew = [
            set_fields(says, person, arrives=_moved(person.arrives, -minutes))
            for person in self.binder.people.where("shoot", self.shoot.id)
            if person.arrives is not None
        ]
        return says, joined(says, [set_shoot(self.shoot, call=call), *crew])

    def _longer_prep(self, minutes: int) -> tuple[str, Change]:
        until = _moved(self.shoot.prep_until, minutes)
        until = until if until > self.shoot.prep_until else self.shoot.prep_until.replace(hour=23, minute=59)
        says = _("Work until {time} on the days before.").format(time=time_text(self.binder, until))
        return says, set_shoot(self.shoot, prep_until=until)

    def shop_earlier(self) -> Iterator[Idea]:
        """The trips that what clashes waits for, a day earlier."""
        days = {date.fromisoformat(day) for day in self._after(f"{EARLIEST}{BY_TRIP}")}
        foods = {food for task in self.clash.question.tasks for food in self.asked.work.foods.get(task.key, ())}
        for plan in trip_plans(self.binder, self.shoot.id):
            if plan.store and plan.on in days and foods & {line.item.food for line in plan.lines}:
                store, day = self.binder.stores[plan.store], plan.on - timedelta(days=1)
                says = _("Shop at {store} on {day}.").format(store=store.name, day=date_text(self.binder, day))
                yield ((says, self._shop_on(store, plan.on, day)),)

    def _shop_on(self, store: Store, instead_of: date, day: date) -> Change:
        """The producer's own trip on another day, or one where none of the producer's is set."""
        own = [trip for trip in self.binder.trips.where("shoot", self.shoot.id) if trip.store == store.id]
        moved = [set_trip(self.binder, trip, on=day) for trip in own if trip.on == instead_of]
        return moved[0] if moved else add_trip(self.binder, self.shoot, store, on=day)[0]

    def hold_longer(self) -> Iterator[Idea]:
        """What has to be fresh may be twice as old."""
        for key in self._after(f"{GAP}{HOLD}"):
            step = self.binder.steps[key]
            if step.hold_minutes:
                says = _("Let what “{step}” gives stand for {longer} instead of {time}.").format(
                    step=step.title or _("step {number}").format(number=step.position + 1),
                    longer=duration_text(2 * step.hold_minutes),
                    time=duration_text(step.hold_minutes),
                )
                yield ((says, set_fields(says, step, hold_minutes=2 * step.hold_minutes)),)

    def have_more(self) -> Iterator[Idea]:
        """One more of what there is too little of."""
        for key in self._after(RESOURCE):
            appliance = self.asked.kitchen.appliance(key)
            if appliance is not None:
                yield (self._one_more(appliance),)
        if any(key in {crew.key for crew in self.asked.kitchen.crews} for key in self._after(RESOURCE)):
            yield (self._more_hands(),)

    def _one_more(self, appliance: Appliance) -> tuple[str, Change]:
        if appliance.kind in _PLURAL:
            says = _("Have one more place in or on the {appliance}: {count}.")
            more = says.format(appliance=appliance.name, count=appliance.places + 1)
            if is_assumed(appliance):
                return more, changed(more, after=[self._own(appliance, places=appliance.places + 1)])
            return more, set_appliance(appliance, places=appliance.places + 1)
        if appliance.kind is ApplianceKind.TOOL:
            second = _("Have one more {appliance}.").format(appliance=appliance.name)
            return second, set_appliance(appliance, places=appliance.places + 1)
        only = len(self.asked.kitchen.of_kind(appliance.kind)) == 1
        says = _("Have a second {appliance}.") if only else _("Have one more {appliance}.")
        second = says.format(appliance=appliance.name)
        first = [self._own(appliance)] if is_assumed(appliance) else []
        return second, changed(second, after=[*first, self._own(appliance, places=appliance.places)])

    def _own(self, like: Appliance, *, places: int | None = None) -> Appliance:
        """An appliance of the shoot like another, after those it has."""
        return Appliance(
            id=new_id("appliance"),
            shoot=self.shoot.id,
            position=len(self.binder.appliances.where("shoot", self.shoot.id)),
            name=like.name,
            kind=like.kind,
            places=places or like.places,
            change_minutes=like.change_minutes,
            tolerance=like.tolerance,
        )

    def _more_hands(self) -> tuple[str, Change]:
        """Someone off camera who can do all that anyone can, there as early as anyone."""
        says = _("Have one more pair of hands.")
        people = self.asked.kitchen.people
        named = [] if self.binder.people.where("shoot", self.shoot.id) else list(people)
        arrivals = [person.arrives for person in people if person.arrives is not None]
        more = Person(
            id=new_id("person"),
            shoot=self.shoot.id,
            position=len(people),
            name=_("one more cook"),
            skills=tuple(dict.fromkeys(skill for person in people for skill in person.skills)),
            arrives=min(arrivals, default=None),
        )
        own = [
            Person(id=new_id("person"), shoot=self.shoot.id, position=at, name=one.name, on_camera=one.on_camera)
            for at, one in enumerate(named)
        ]
        return says, changed(says, after=[*own, more])


def _moved(at: time, minutes: int) -> time:
    """A time of day so many minutes later, round the clock."""
    return (datetime.combine(date.min, at) + timedelta(days=1, minutes=minutes)).time()
