"""What must be ordered ahead: by which day, how much of what, and where it is then fetched. Plain Python."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import Cell, Column, Row, Tone
from binder.desktop.sheet.sheet import PlainSheet
from binder.desktop.words.figure_text import date_text, store_name
from binder.figures.buying_words import take_words
from binder.figures.date_text import DateForm
from binder.figures.missing import Place
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from datetime import date

    from binder.desktop.buying_page.buying_figures import LatestBuying
    from binder.desktop.sheet.sheet import Sight
    from binder.figures.trips import TripLine, TripPlan
    from binder.kitchen.binder import Binder


class ToOrder(PlainSheet):
    """A row an order, the earliest first."""

    def __init__(self, latest: LatestBuying) -> None:
        self._latest = latest

    @property
    def name(self) -> str:
        return _("To order ahead")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("by", _("order by"), characters=16),
            Column("food", _("food"), characters=16, stretch=2),
            Column("packs", _("packs"), characters=16, stretch=2),
            Column("store", _("from"), characters=14, stretch=2),
            Column("fetched", _("fetched on"), characters=13),
        )

    def rows(self, sight: Sight) -> list[Row]:
        figures = self._latest.value
        if figures is None or sight.shoot is None:
            return []
        return [_row(sight.binder, order) for order in figures.orders if order[2].item.food in sight.binder.foods]


def _row(binder: Binder, order: tuple[date, TripPlan, TripLine]) -> Row:
    by, plan, line = order
    packs = ", ".join(take_words(binder, one) for one in line.packs)
    place = Place("foods", line.item.food)
    cells = (
        Cell(date_text(binder, by)),
        Cell(line.item.name, leads_to=place, tip=_("How many days ahead stands in the larder")),
        Cell(packs),
        Cell(store_name(binder, plan.store)),
        Cell(date_text(binder, plan.on, DateForm.WEEKDAY), tone=Tone.QUIET),
    )
    return Row(f"order:{line.item.food}/{plan.store or ''}/{by.isoformat()}", cells, place=place)
