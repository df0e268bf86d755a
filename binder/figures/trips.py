"""When each food is bought: the days it may be bought on, and the fewest trips that fit them."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, time
from typing import TYPE_CHECKING

from binder.figures.date_text import date_text
from binder.figures.leads import before_call, shoot_leads
from binder.figures.memory import PLANS, remembered_from
from binder.figures.missing import Missing, MissingKind, Place
from binder.figures.pack_program import ANYWHERE
from binder.figures.shopping import PackCount, ShoppingItem, needed_to_buy, shopping_list
from binder.figures.thaw_time import thaw_time
from binder.kitchen.food import Section
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from binder.kitchen.binder import Binder
    from binder.kitchen.food import Food


FETCHED_BY = time(12, 0)
"""What is fetched on a day is there from this time on. Common practice, no source."""


@dataclass(frozen=True)
class Window:
    """The days a food may be bought on: `first` None where it keeps as long as anyone plans."""

    first: date | None
    last: date


@dataclass(frozen=True)
class TripLine:
    """One food fetched on a trip: the packs that store sells of it. `order_by`: the day to have ordered it by."""

    item: ShoppingItem
    packs: tuple[PackCount, ...]
    order_by: date | None

    @property
    def price(self) -> int:
        """Minor units at the till."""
        return sum(pack.price for pack in self.packs)


@dataclass(frozen=True)
class TripPlan:
    """One trip: a day, a store (None: any store) and what is fetched there, in the order one walks through it."""

    on: date | None
    store: str | None
    lines: tuple[TripLine, ...]

    @property
    def price(self) -> int:
        """Minor units at the till."""
        return sum(line.price for line in self.lines)


@remembered_from(PLANS)
def buying_window(binder: Binder, shoot_id: str, food_id: str) -> Window | None:
    """The days on which a food may be bought for a shoot; None where the shoot has no date.

    The last is the day before the shoot, or for what the base's conversions need the day that they start (the day
    before, where they start in the morning); what is frozen is there as much sooner as it takes to thaw. The first is
    as long before the shoot as the food keeps.
    """
    shoot = binder.shoots[shoot_id]
    if shoot.on is None:
        return None
    food = binder.foods[food_id]
    last = min([days_before(shoot.on, 1), *_days_needed(binder, shoot_id, food_id)])
    first = None if food.keeps_days is None else days_before(shoot.on, food.keeps_days)
    return Window(first, last)


def _days_needed(binder: Binder, shoot_id: str, food_id: str) -> Iterator[date]:
    """The days by which the conversions that take or add a food need it at the latest, and its thawing before call."""
    thaw = thaw_time(binder.foods[food_id], needed_to_buy(binder, shoot_id).get(food_id, 0.0))
    takes = thaw.minutes if thaw else 0.0
    before = [takes] if thaw else []
    for lead in shoot_leads(binder, shoot_id):
        added = {addition.food for addition in binder.additions.where("conversion", lead.conversion)}
        if food_id in {binder.conversions[lead.conversion].takes, *added}:
            before.append(lead.minutes_before + takes)
    for minutes in before:
        begins = before_call(binder.shoots[shoot_id], minutes)
        if begins is not None:
            yield days_before(begins.date(), 0 if begins.time() >= FETCHED_BY else 1)


def days_before(day: date, days: int) -> date:
    """The day so many days before another; the first of the calendar where there is none."""
    return date.fromordinal(max(date.min.toordinal(), day.toordinal() - days))


@remembered_from(PLANS)
def trip_plans(binder: Binder, shoot_id: str) -> tuple[TripPlan, ...]:
    """The shopping by trip, in order of days: on the producer's own days for a store, else on the fewest that fit.

    A food that no day of the producer's fits goes on the last of them before it is needed, or else on the first.
    """
    by_store: dict[str, list[TripLine]] = {}
    for item in shopping_list(binder, shoot_id).items:
        for store in dict.fromkeys(pack.priced.pack.store or ANYWHERE for pack in item.packs):
            packs = tuple(pack for pack in item.packs if (pack.priced.pack.store or ANYWHERE) == store)
            by_store.setdefault(store, []).append(TripLine(item, packs, None))
    plans = [plan for store, lines in by_store.items() for plan in _plans_for(binder, shoot_id, store, lines)]
    return tuple(sorted(plans, key=lambda plan: (plan.on or date.max, plan.store or "")))


def _plans_for(binder: Binder, shoot_id: str, store: str, lines: Sequence[TripLine]) -> Iterator[TripPlan]:
    windows = {line.item.food: buying_window(binder, shoot_id, line.item.food) for line in lines}
    own = sorted(trip.on for trip in binder.trips.where("shoot", shoot_id) if trip.store == store)
    days = own or fewest_days([window for window in windows.values() if window is not None])
    by_day: dict[date | None, list[TripLine]] = {}
    for line in lines:
        day = _day_for(windows[line.item.food], days)
        by_day.setdefault(day, []).append(TripLine(line.item, line.packs, _order_by(binder.foods[line.item.food], day)))
    for day, fetched in by_day.items():
        yield TripPlan(day, store or None, _in_walking_order(binder, store, fetched))


def fewest_days(windows: Sequence[Window]) -> list[date]:
    """The fewest days such that each window holds one: the last day of the window that closes first, and so on."""
    days: list[date] = []
    for window in sorted(windows, key=lambda one: one.last):
        fits = days and (window.first is None or days[-1] >= window.first)
        if not fits:
            days.append(window.last)
    return days


def _day_for(window: Window | None, days: Sequence[date]) -> date | None:
    """The latest day within the window; failing that the latest before it is needed, or the first there is."""
    if window is None or not days:
        return days[0] if days else None
    in_time = [day for day in days if day <= window.last]
    fresh = [day for day in in_time if window.first is None or day >= window.first]
    return max(fresh or in_time, default=min(days))


def _order_by(food: Food, day: date | None) -> date | None:
    return None if food.order_days is None or day is None else days_before(day, food.order_days)


def _in_walking_order(binder: Binder, store: str, lines: Sequence[TripLine]) -> tuple[TripLine, ...]:
    """By the store's own order of sections, then the usual order, then by name."""
    walked = [
        *(binder.stores[store].sections if store in binder.stores else ()),
        *(str(section) for section in Section),
    ]
    return tuple(sorted(lines, key=lambda line: (walked.index(line.item.section), line.item.name.casefold())))


@remembered_from(PLANS)
def fetched_on(binder: Binder, shoot_id: str) -> Mapping[str, date]:
    """The day each food is fetched on, or the last part of it where it comes from several trips."""
    days: dict[str, date] = {}
    for plan in trip_plans(binder, shoot_id):
        for line in plan.lines if plan.on is not None else ():
            days[line.item.food] = max(days.get(line.item.food, date.min), plan.on or date.min)
    return days


@remembered_from(PLANS)
def to_order(binder: Binder, shoot_id: str) -> tuple[tuple[date, TripPlan, TripLine], ...]:
    """What must be ordered ahead, by the day to have ordered it by; also what is not known to be sold anywhere."""
    plans = (*trip_plans(binder, shoot_id), *_without_packs(binder, shoot_id))
    found = [(line.order_by, plan, line) for plan in plans for line in plan.lines if line.order_by is not None]
    return tuple(sorted(found, key=lambda order: (order[0], order[2].item.name)))


def _without_packs(binder: Binder, shoot_id: str) -> Iterator[TripPlan]:
    """What is to be had without a pack or price to choose it by: on the latest of the producer's days that fits it."""
    own = sorted({trip.on for trip in binder.trips.where("shoot", shoot_id)})
    for item in shopping_list(binder, shoot_id).items:
        window = buying_window(binder, shoot_id, item.food)
        if item.missing is not None and window is not None:
            day = _day_for(window, own or [window.last])
            yield TripPlan(day, None, (TripLine(item, (), _order_by(binder.foods[item.food], day)),))


@remembered_from(PLANS)
def buying_clashes(binder: Binder, shoot_id: str) -> tuple[Missing, ...]:
    """Foods that cannot be bought fresh enough for when they are needed, or that no trip of the producer's fits."""
    clashes: list[Missing] = []
    for plan in trip_plans(binder, shoot_id):
        for line in plan.lines:
            window = buying_window(binder, shoot_id, line.item.food)
            if window is not None and plan.on is not None:
                clashes += _clash(binder, line, plan.on, window)
    return tuple(clashes)


def _clash(binder: Binder, line: TripLine, on: date, window: Window) -> Iterator[Missing]:
    place, day = Place("foods", line.item.food), date_text(binder, on)
    if on > window.last:
        says = _("{food} is fetched on {day}, after it is needed on {last}: add an earlier trip.")
        yield Missing(
            MissingKind.DAY, says.format(food=line.item.name, day=day, last=date_text(binder, window.last)), place
        )
    elif window.first is not None and on < window.first:
        says = _("{food} fetched on {day} does not keep until the shoot: buy it from {first} on.")
        yield Missing(
            MissingKind.DAY, says.format(food=line.item.name, day=day, first=date_text(binder, window.first)), place
        )
