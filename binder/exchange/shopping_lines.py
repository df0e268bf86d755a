"""The shopping list line by line, by trip and section, as files, messages and the command line show it."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby
from typing import TYPE_CHECKING

from binder.figures.buying_words import done_words, offer_words, one_line, pack_text, take_words
from binder.figures.date_text import DateForm, date_text
from binder.figures.not_known import not_known_text
from binder.figures.shopping import shopping_list
from binder.figures.trips import to_order, trip_plans
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from datetime import date

    from binder.figures.shopping import PackCount, ShoppingItem
    from binder.figures.trips import TripLine
    from binder.kitchen.binder import Binder


@dataclass(frozen=True)
class ShoppingLine:
    """So many of one pack of a food, or a food of which no pack is taken, and in `note` why.

    Grams: `needed` in all, `at_home`, `left_over`; they are the food's, and None in every line of it after the first.
    Money in minor units: `asked` for one pack (at the counter for the pack's size), `price` for all and `deposit` that
    comes back. `take` and `offer` are words; `done` is what became of it, in words, once it is ticked.
    """

    item: ShoppingItem
    section: str
    taken: PackCount | None = None
    needed: float | None = None
    at_home: float | None = None
    left_over: float | None = None
    take: str = ""
    pack: str = ""
    offer: str = ""
    order_by: date | None = None
    done: str = ""
    note: str = ""

    @property
    def food(self) -> str:
        """The food's name."""
        return one_line(self.item.name)

    @property
    def price(self) -> int | None:
        """Minor units for all the packs."""
        return None if self.taken is None else self.taken.price

    @property
    def deposit(self) -> int | None:
        """Minor units that come back with the empties; None where there are none."""
        return (self.taken.priced.pack.deposit * self.taken.count or None) if self.taken else None


@dataclass(frozen=True)
class ShoppingTrip:
    """A trip: its day (None: any), its store (empty: any), and what is fetched there in walking order. Minor units."""

    on: date | None
    store: str
    lines: tuple[ShoppingLine, ...]

    @property
    def sections(self) -> tuple[tuple[str, tuple[ShoppingLine, ...]], ...]:
        """The lines by section of the store, in the order one walks through them."""
        return tuple((name, tuple(lines)) for name, lines in groupby(self.lines, lambda line: line.section))

    @property
    def price(self) -> int:
        """Minor units at the till, without deposits."""
        return sum(line.price or 0 for line in self.lines)

    @property
    def deposit(self) -> int:
        """Minor units that come back with the empties."""
        return sum(line.deposit or 0 for line in self.lines)


def shopping_trips(binder: Binder, shoot_id: str) -> tuple[ShoppingTrip, ...]:
    """The shopping of a shoot by trip, in the order of days."""
    seen: set[str] = set()
    trips = []
    for plan in trip_plans(binder, shoot_id):
        lines = tuple(found for line in plan.lines for found in _lines(binder, shoot_id, line, seen))
        trips.append(ShoppingTrip(plan.on, one_line(binder.stores[plan.store].name) if plan.store else "", lines))
    return tuple(trips)


def lines_without_packs(binder: Binder, shoot_id: str) -> tuple[ShoppingLine, ...]:
    """What is on the list and is not fetched: there is enough of it, or nothing is known that could be bought."""
    items = (item for item in shopping_list(binder, shoot_id).items if not item.packs)
    order_by = {line.item.food: day for day, _plan, line in to_order(binder, shoot_id) if not line.packs}
    return tuple(_without_packs(binder, item, order_by.get(item.food)) for item in items)


def _without_packs(binder: Binder, item: ShoppingItem, order_by: date | None) -> ShoppingLine:
    note = one_line(not_known_text(binder, [item.missing])) if item.missing else _("there is enough at home")
    return ShoppingLine(
        item, item.section, needed=item.needed, at_home=item.at_home or None, order_by=order_by, note=note
    )


def _lines(binder: Binder, shoot_id: str, line: TripLine, seen: set[str]) -> Iterator[ShoppingLine]:
    """A line for each pack; the food's own figures stand in the first of them over all trips."""
    for taken in line.packs:
        item, first = line.item, line.item.food not in seen
        seen.add(item.food)
        yield ShoppingLine(
            item=item,
            section=item.section,
            taken=taken,
            needed=item.needed if first else None,
            at_home=(item.at_home or None) if first else None,
            left_over=item.left_over if first else None,
            take=take_words(binder, taken),
            pack=pack_text(binder, taken.priced.pack),
            offer=offer_words(binder, taken),
            order_by=line.order_by,
            done=done_words(binder, shoot_id, item.food, taken.priced.pack.id),
        )


def day_words(binder: Binder, day: date) -> str:
    """A day with its day of the week: `Wed, Dec 2, 2026`."""
    return date_text(binder, day, DateForm.WEEKDAY_DATE)


def to_order_first(
    trips: Sequence[ShoppingTrip], others: Sequence[ShoppingLine] = ()
) -> list[tuple[ShoppingTrip, ShoppingLine]]:
    """What must be ordered ahead, by the day to have ordered it by; `others` are lines without packs, on no trip."""
    found = [(trip, line) for trip in trips for line in trip.lines if line.order_by is not None]
    found += [(ShoppingTrip(None, "", (line,)), line) for line in others if line.order_by is not None]
    return sorted(found, key=lambda order: (str(order[1].order_by), order[1].food.casefold()))
