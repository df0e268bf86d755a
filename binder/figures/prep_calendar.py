"""The days before a shoot: what is ordered, fetched, soaked, thawed and prepared, when, by whom and where."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.figures.claim_figures import packs_words
from binder.figures.date_text import date_text, moment_text
from binder.figures.day_activities import ActivityKind
from binder.figures.day_words import activity_text, dish_title, hours_text, people_text
from binder.figures.leads import shoot_leads
from binder.figures.portion_text import number_style
from binder.figures.thawing import thaw_text, thaws
from binder.figures.trips import TripLine, TripPlan, to_order, trip_plans
from binder.kitchen.amount_text import grams_text
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from collections.abc import Iterator

    from binder.figures.day_plan import DayPlan, PlannedActivity
    from binder.kitchen.binder import Binder


class EntryKind(StrEnum):
    """What is done on a day before."""

    ORDER = "order"
    TRIP = "trip"
    THAW = "thaw"
    CONVERSION = "conversion"
    PREP = "prep"
    SHOOT = "shoot"


@dataclass(frozen=True)
class PrepEntry:
    """One thing to do. A whole day has a date for its start and no end; `key` stays when it moves.

    `who` are names; `where` is a store or a station, empty where none is said; `details` are sentences.
    """

    key: str
    kind: EntryKind
    start: datetime | date
    end: datetime | None
    what: str
    who: tuple[str, ...] = ()
    where: str = ""
    details: tuple[str, ...] = ()

    @property
    def on(self) -> date:
        """Its day."""
        return self.start.date() if isinstance(self.start, datetime) else self.start


def prep_calendar(binder: Binder, shoot_id: str, plan: DayPlan | None) -> tuple[PrepEntry, ...]:
    """What is to be done before the day of a shoot, and the shoot itself, in order of time.

    Without a plan orders and trips alone, as far as they have a day.
    """
    entries = [*_orders(binder, shoot_id), *_trips(binder, shoot_id)]
    if plan is not None:
        entries += [*_thaws(binder, shoot_id, plan), *_before(plan), _shoot(plan)]
    return tuple(sorted(entries, key=lambda entry: (entry.on, isinstance(entry.start, datetime), _minute(entry))))


def _minute(entry: PrepEntry) -> tuple[int, str]:
    start = entry.start
    return (start.hour * 60 + start.minute if isinstance(start, datetime) else 0, entry.key)


def _orders(binder: Binder, shoot_id: str) -> Iterator[PrepEntry]:
    for on, plan, line in to_order(binder, shoot_id):
        what = _("Order {food}").format(food=line.item.name)
        details = (_fetched(binder, plan, line),)
        yield PrepEntry(
            f"order/{line.item.food}", EntryKind.ORDER, on, None, what, where=_store(binder, plan), details=details
        )


def _fetched(binder: Binder, plan: TripPlan, line: TripLine) -> str:
    grams = grams_text(line.item.needed, number_style(binder))
    if plan.on is None:
        return grams
    return _("{grams}, to be fetched on {day}.").format(grams=grams, day=date_text(binder, plan.on))


def _trips(binder: Binder, shoot_id: str) -> Iterator[PrepEntry]:
    """Each trip of a store by its number, so that it stays the same one where its day changes."""
    numbers: dict[str, int] = {}
    for plan in trip_plans(binder, shoot_id):
        if plan.on is None:
            continue
        store = plan.store or "any"
        numbers[store] = numbers.get(store, 0) + 1
        named = _store(binder, plan)
        what = _("Shop at {store}").format(store=named) if named else _("Shop")
        key = f"trip/{store}/{numbers[store]}"
        details = tuple(f"{line.item.name}: {packs_words(binder, line.packs)}" for line in plan.lines)
        yield PrepEntry(key, EntryKind.TRIP, plan.on, None, what, where=named, details=details)


def _store(binder: Binder, plan: TripPlan) -> str:
    return binder.stores[plan.store].name if plan.store is not None else ""


def _thaws(binder: Binder, shoot_id: str, plan: DayPlan) -> Iterator[PrepEntry]:
    """What goes into the refrigerator to thaw; the moment it has to be there by is in its details."""
    for thaw in thaws(binder, shoot_id, plan):
        what = _("Thaw {food}").format(food=binder.foods[thaw.food].name)
        details = (thaw_text(binder, thaw, plan.asked.clock.on),)
        yield PrepEntry(
            f"thaw/{thaw.food}", EntryKind.THAW, thaw.by.date(), None, what, where=_("refrigerator"), details=details
        )


def _before(plan: DayPlan) -> Iterator[PrepEntry]:
    """The activities of the plan on days before; waits are said with what they follow."""
    for one in plan.activities:
        if one.activity.kind is not ActivityKind.WAIT and one.start.date() < plan.asked.clock.on:
            yield _activity(plan, one)


def _activity(plan: DayPlan, one: PlannedActivity) -> PrepEntry:
    binder, activity = plan.asked.binder, one.activity
    kind = EntryKind.CONVERSION if activity.kind is ActivityKind.CONVERSION else EntryKind.PREP
    station = binder.steps[activity.step].station if activity.step else ""
    who = tuple(people_text(plan.asked, (person,)) for person in one.people)
    details = (*_text(plan, one), *_ready(plan, one))
    return PrepEntry(activity.key, kind, one.start, one.end, activity_text(binder, activity), who, station, details)


def _text(plan: DayPlan, one: PlannedActivity) -> Iterator[str]:
    """How much of what, for which dishes, and how."""
    binder, activity = plan.asked.binder, one.activity
    for lead in shoot_leads(binder, plan.asked.clock.shoot.id):
        if lead.conversion == activity.conversion:
            yield f"{lead.takes}: {grams_text(lead.grams, number_style(binder))}"
            dishes = listed(dish_title(binder, dish) for dish in lead.for_dishes)
            yield _("For {dishes}.").format(dishes=dishes)
    text = binder.conversions[activity.conversion].text if activity.conversion else ""
    text = binder.steps[activity.step].text if activity.step else text
    if text:
        yield text


def _ready(plan: DayPlan, one: PlannedActivity) -> Iterator[str]:
    """When what is left to stand is ready."""
    asked, key = plan.asked, one.activity.key
    wait = max((gap.least for gap in asked.question.gaps if gap.before == key), default=0)
    if wait:
        ends = plan.found.starts[key] + asked.question.by_key[key].minutes + wait
        ready = moment_text(asked.binder, asked.wall(ends), one.start.date())
        yield _("Ready at {time}.").format(time=ready)


def _shoot(plan: DayPlan) -> PrepEntry:
    """The shoot itself, from call to wrap, with who comes when."""
    asked = plan.asked
    who = tuple(person.name for person in asked.kitchen.people)
    details = (*(hours_text(asked, person) + "." for person in asked.kitchen.people), plan.says())
    name = asked.clock.shoot.name
    return PrepEntry("shoot", EntryKind.SHOOT, asked.clock.call, plan.wrap, name, who, details=details)
