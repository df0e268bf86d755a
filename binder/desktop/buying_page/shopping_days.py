"""The days of one's own on which stores are gone to. A new one is typed whole: The mill on 2026-11-06."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from binder.desktop.buying_page.stores import store_called
from binder.desktop.sheet.cell import NOTHING, Cell, Column, Row, Tone, key_of
from binder.desktop.sheet.sheet import PlainSheet, record_of
from binder.desktop.words.figure_text import date_text
from binder.desktop.words.typed import UnreadableError, typed_date
from binder.figures.missing import Place
from binder.figures.money_words import money
from binder.kitchen.edits.buying import add_trip, remove_trip, set_trip
from binder.kitchen.edits.records import remove
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Sequence
    from datetime import date

    from binder.desktop.buying_page.buying_figures import LatestBuying
    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.binder import Binder
    from binder.kitchen.buying import Trip
    from binder.kitchen.change import Change

ADD_DAY = "add:day"
_WHOLE = re.compile(r"^(?P<store>.+?)(?:\s+on\s+|\s*,\s*)(?P<on>.+)$", re.IGNORECASE)


class ShoppingDays(PlainSheet):
    """A row a trip, the earliest first. Stores without a day of their own are gone to on the latest days that fit."""

    def __init__(self, latest: LatestBuying) -> None:
        self._latest = latest

    @property
    def name(self) -> str:
        return _("Days to go shopping")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("on", _("day"), characters=17),
            Column("store", _("store"), characters=18, stretch=2),
            Column("fetched", _("fetched then"), characters=18, stretch=3),
        )

    def rows(self, sight: Sight) -> list[Row]:
        if sight.shoot is None:
            return []
        trips = sorted(sight.binder.trips.where("shoot", sight.shoot), key=lambda trip: (trip.on, trip.position))
        return [*(self._row(sight.binder, trip) for trip in trips), _adding()]

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder = sight.binder
        if row == ADD_DAY:
            found = _WHOLE.match(text.strip())
            if found is None:
                raise UnreadableError(text, _("write a store and a day: The mill on 2026-11-06."))
            store, shoot = store_called(binder, found["store"]), binder.shoots[sight.shoot or ""]
            return add_trip(binder, shoot, store, on=_day(binder, found["on"]))[0]
        trip = binder.trips[record_of(row).id]
        if column == "on":
            return set_trip(binder, trip, on=_day(binder, text))
        return set_trip(binder, trip, store=store_called(binder, text).id)

    def remove(self, sight: Sight, rows: Sequence[str]) -> Change | None:
        trips = [sight.binder.trips[record_of(row).id] for row in rows if row != ADD_DAY]
        if len(trips) < 2:  # noqa: PLR2004 - one trip goes by its store
            return remove_trip(sight.binder, trips[0]) if trips else None
        label = ngettext("Remove {count} trip", "Remove {count} trips", len(trips)).format(count=len(trips))
        return remove(label, sight.binder, *trips)

    def _row(self, binder: Binder, trip: Trip) -> Row:
        place, store = Place("trips", trip.id), binder.stores[trip.store].name
        cells = (
            Cell(date_text(binder, trip.on), edit=trip.on.isoformat()),
            Cell(store, edit=store, choices=tuple(one.name for one in binder.stores.values())),
            Cell(self._fetched(binder, trip), tone=Tone.QUIET),
        )
        return Row(key_of(place), cells, place=place)

    def _fetched(self, binder: Binder, trip: Trip) -> str:
        plans = self._latest.value.plans if self._latest.value is not None else ()
        plan = next((one for one in plans if (one.store, one.on) == (trip.store, trip.on)), None)
        if plan is None:
            return _("nothing on the list")
        says = ngettext("{count} food, {money}", "{count} foods, {money}", len(plan.lines))
        return says.format(count=len(plan.lines), money=money(binder, plan.price))


def _day(binder: Binder, text: str) -> date:
    day = typed_date(binder, text)
    if day is None:
        raise UnreadableError(text, _("write a date such as 2026-11-06."))
    return day


def _adding() -> Row:
    cell = Cell(edit="", placeholder=_("Add a day of your own: The mill on 2026-11-06"))
    return Row(ADD_DAY, (cell, NOTHING, NOTHING), spans=((0, 3),), lines=1.8, rule=False, adds=True)
