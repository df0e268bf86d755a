"""What the page of buying shows of a shoot, gathered, so that it can be worked out beside the window."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.desktop.buying_page.ticking import packs_by_name
from binder.desktop.quick_shopping import shopping_is_quick
from binder.figures.as_bought import caps_as_bought
from binder.figures.shopping import PackCount, ShoppingItem, ShoppingList, shopping_list
from binder.figures.trips import TripLine, TripPlan, to_order, trip_plans

if TYPE_CHECKING:
    from datetime import date

    from binder.desktop.latest import Latest
    from binder.kitchen.binder import Binder

    LatestBuying = Latest["BuyingFigures"]


@dataclass(frozen=True)
class BuyingFigures:
    """The list, the same by trip, and what must be ordered ahead by the day to have ordered it by."""

    bought: ShoppingList
    plans: tuple[TripPlan, ...]
    orders: tuple[tuple[date, TripPlan, TripLine], ...]


@dataclass(frozen=True)
class ListLine:
    """A line of the list: a food, the packs of one kind to take of it (None where none is known), and the day."""

    item: ShoppingItem
    taken: PackCount | None
    on: date | None

    @property
    def key(self) -> str:
        """The key of its row."""
        return f"buy:{self.item.food}/{self.taken.priced.pack.id if self.taken else ''}"


def buying_figures(binder: Binder, shoot: str) -> BuyingFigures:
    """The figures of a shoot; what packs are called, and what caps become, is worked out with them and kept."""
    figures = BuyingFigures(shopping_list(binder, shoot), trip_plans(binder, shoot), to_order(binder, shoot))
    for item in figures.bought.items:
        packs_by_name(binder, item.food)
    caps_as_bought(binder, shoot)
    return figures


def buying_is_quick(binder: Binder, shoot: str) -> bool:
    """Whether they are there within a frame."""
    return shopping_is_quick(binder, shoot)


def list_lines(figures: BuyingFigures) -> dict[str, ListLine]:
    """Every line by the key of its row: the packs of the trips, and each food whole, for what puts an end to it."""
    lines = [
        ListLine(line.item, taken, plan.on) for plan in figures.plans for line in plan.lines for taken in line.packs
    ]
    days: dict[str, date | None] = {}
    for line in lines:
        days.setdefault(line.item.food, line.on)
    whole = [ListLine(item, None, days.get(item.food)) for item in figures.bought.items]
    return {line.key: line for line in (*lines, *whole)}
