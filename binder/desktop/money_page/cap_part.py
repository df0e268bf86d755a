"""The part of the page that is about caps: the dishes, what would mend the one chosen, and what makes up its cost."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from binder.desktop.money_page.caps_sheet import CapsSheet, worst_dish
from binder.desktop.money_page.dish_costs import DishCosts, costs_title
from binder.desktop.money_page.way_list import Way, WayList
from binder.figures.cost import Verdict, dish_cost
from binder.figures.missing import Place
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from binder.desktop.desk import Desk
    from binder.desktop.money_page.money_figures import LatestJudged
    from binder.desktop.money_page.parts import Parts
    from binder.figures.cap_repairs import CapStanding


class CapPart(QObject):
    """The dish chosen is the one whose row is the current one; at first the one that wants a look most."""

    def __init__(self, desk: Desk, parts: Parts, paper: QWidget) -> None:
        super().__init__(paper)
        self._desk, self._parts = desk, parts
        self.dish: str | None = None
        self._latest: LatestJudged | None = None
        self.table = parts.table(CapsSheet())
        self.table.place_current.connect(self._choose)
        self.ways = WayList(paper)
        self.ways.asked.connect(self._try)
        parts.add(self.ways)
        self.costs = parts.table(DishCosts())

    def show_caps(self, latest: LatestJudged) -> None:
        """Show the dishes of the shoot as they stand now."""
        self._latest = latest
        sight = self._desk.sight()
        self.table.show_sight(sight)
        self._parts.show_filled(self.table)
        shown = sight.binder.dishes.get(self.dish or "")
        if shown is None or shown.shoot != sight.shoot:
            self.dish = worst_dish(sight.binder, sight.shoot) if sight.shoot else None
        self._show_dish()

    def _choose(self, place: object) -> None:
        if isinstance(place, Place) and place.table == "dishes" and place.id != self.dish:
            self.dish = place.id
            self._show_dish()

    def _standing(self) -> CapStanding | None:
        judged = self._latest.value if self._latest else None
        return judged.caps.get(self.dish or "") if judged else None

    def _show_dish(self) -> None:
        binder, latest = self._desk.binder, self._latest
        dish = binder.dishes.get(self.dish or "")
        self.costs.show_sight(self._desk.sight(self.dish))
        self._parts.show_filled(self.costs)
        if dish is None or latest is None:
            self.ways.show_ways("", ())
            return
        self._parts.heading(self.costs).setText(costs_title(binder, dish))
        cost, standing = dish_cost(binder, dish.id), self._standing()
        if cost.verdict is not Verdict.OVER:
            self.ways.show_ways("", ())
            return
        repairs = standing.repairs if standing else ()
        ways = tuple(Way(repair.says, number) for number, repair in enumerate(repairs))
        self.ways.show_ways(_title(dish_name(binder, dish), len(ways), stale=latest.stale), ways, stale=latest.stale)

    def _try(self, key: object) -> None:
        """Make the change of a repair; the dish stays the one chosen, so that what came of it is in sight."""
        standing = self._standing()
        if standing is None or not isinstance(key, int) or key >= len(standing.repairs):
            return
        self.table.setFocus()
        self._desk.make(standing.repairs[key].change)


def _title(name: str, count: int, *, stale: bool) -> str:
    """What stands above the ways."""
    if stale:
        return _("{dish} is over its cap; what would mend it is being worked out.").format(dish=name)
    if not count:
        return _("{dish} is over its cap, and no single change brings it under.").format(dish=name)
    return _("{dish} is over its cap. Any one of these brings it under:").format(dish=name)
