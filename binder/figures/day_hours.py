"""When crews, ovens and the camera of a shoot are there: call and wrap, nights before, arrivals, stops of work."""

from __future__ import annotations

import math
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from typing import TYPE_CHECKING

from binder.figures.clock import minutes_between, shifted
from binder.figures.day_kitchen import CAMERA
from binder.figures.plan_question import Absence
from binder.kitchen.day import ApplianceKind

if TYPE_CHECKING:
    from collections.abc import Iterator

    from binder.figures.day_kitchen import Crew, DayKitchen
    from binder.kitchen.binder import Binder
    from binder.kitchen.day import FixedEvent
    from binder.kitchen.shoot import Shoot

CALL = time(8, 0)
"""When a shoot without a call time is taken to begin. Common practice, no source."""

AFTER = 8 * 60
"""Minutes after midnight of the shoot that a plan may run on."""

_HALF_A_DAY = timedelta(hours=12)

BY_CALL, BY_TRIP = "call", "fetched "
"""What tasks begin no earlier because of: call, or what is fetched on a day that the second ends with."""

NIGHTS, EVENT, PERSON, PREHEAT = "nights", "event ", "person ", "preheat "
"""What keys of absences begin with: they end with the id of the event, of the first of the crew, of the oven."""


@dataclass(frozen=True)
class DayClock:
    """How minutes of a plan read on the wall in the shoot's zone: minute 0 is `origin`, midnight `days` days before."""

    shoot: Shoot
    on: date
    days: int

    @property
    def origin(self) -> datetime:
        """What the clock on the wall shows at minute 0."""
        return datetime.combine(self.on - timedelta(days=self.days), time(0, 0))

    def wall(self, minute: float) -> datetime:
        """What the clock on the wall shows at a minute of the plan."""
        return shifted(self.origin, minute, self.shoot.zone)

    def at(self, moment: datetime) -> int:
        """The minute of the plan at a moment on the wall clock."""
        return round(minutes_between(self.origin, moment, self.shoot.zone))

    def minute(self, on: date, at: time) -> int:
        """The minute of the plan at a time of a day."""
        return self.at(datetime.combine(on, at))

    @property
    def call(self) -> datetime:
        """Date and time of call."""
        return datetime.combine(self.on, self.shoot.call or CALL)

    @property
    def wrap(self) -> datetime | None:
        """Date and time of the wrap that is set: after call, if need be on the next day."""
        if self.shoot.wrap is None:
            return None
        wrap = datetime.combine(self.on, self.shoot.wrap)
        return wrap if wrap > self.call else wrap + timedelta(days=1)

    @property
    def end(self) -> int:
        """The minute by which everything has ended."""
        return self.minute(self.on + timedelta(days=1), time(0, 0)) + AFTER

    def event(self, event: FixedEvent) -> datetime:
        """When an event is: one long before call is meant for the night after it."""
        moment = datetime.combine(self.on, event.at)
        return moment + timedelta(days=1) if self.call - moment > _HALF_A_DAY else moment

    def arrives(self, crew: Crew) -> datetime:
        """When a crew is there: by its own time, else at call."""
        return datetime.combine(self.on, crew.people[0].arrives or self.shoot.call or CALL)

    def leaves(self, crew: Crew) -> datetime | None:
        """When a crew has gone, after it came, if need be on the next day; None where it stays."""
        leaves = crew.people[0].leaves
        if leaves is None:
            return None
        gone = datetime.combine(self.on, leaves)
        return gone if gone > self.arrives(crew) else gone + timedelta(days=1)


def absences(binder: Binder, kitchen: DayKitchen, clock: DayClock) -> Iterator[Absence]:
    """When crews are not there, nobody works and nothing is filmed, and ovens are still cold."""
    for crew in kitchen.crews:
        yield from _nights(crew, clock)
        yield from _before_and_after(crew, clock)
    for event in binder.fixed_events.where("shoot", clock.shoot.id):
        if event.stops_work and event.minutes:
            yield from _stopped(event, kitchen, clock)


def _nights(crew: Crew, clock: DayClock) -> Iterator[Absence]:
    """On the days before, people work from `prep_from` to `prep_until`."""
    shoot, count = clock.shoot, len(crew.people)
    for back in range(clock.days, 0, -1):
        day = clock.on - timedelta(days=back)
        until = clock.minute(day + timedelta(days=1), time(0, 0))
        yield Absence(crew.key, clock.minute(day, time(0, 0)), clock.minute(day, shoot.prep_from), count, NIGHTS)
        if shoot.prep_until > shoot.prep_from:
            yield Absence(crew.key, clock.minute(day, shoot.prep_until), until, count, NIGHTS)


def _before_and_after(crew: Crew, clock: DayClock) -> Iterator[Absence]:
    key, count = f"{PERSON}{crew.people[0].id}", len(crew.people)
    midnight = clock.minute(clock.on, time(0, 0))
    yield Absence(crew.key, midnight, clock.at(clock.arrives(crew)), count, key)
    leaves = clock.leaves(crew)
    if leaves is not None and clock.at(leaves) < clock.end:
        yield Absence(crew.key, clock.at(leaves), clock.end, count, key)


def _stopped(event: FixedEvent, kitchen: DayKitchen, clock: DayClock) -> Iterator[Absence]:
    start = clock.at(clock.event(event))
    end, key = start + math.ceil(event.minutes), f"{EVENT}{event.id}"
    yield Absence(CAMERA, start, end, 1, key)
    for crew in kitchen.crews:
        yield Absence(crew.key, start, end, len(crew.people), key)


def cold_ovens(kitchen: DayKitchen, clock: DayClock) -> Iterator[Absence]:
    """Ovens are cold when the first of the crew comes, and take their time to heat."""
    first = min(clock.at(clock.arrives(crew)) for crew in kitchen.crews)
    for oven in kitchen.of_kind(ApplianceKind.OVEN):
        heated = first + math.ceil(oven.change_minutes)
        if heated > first:
            yield Absence(oven.id, first, heated, oven.places, f"{PREHEAT}{oven.id}")
