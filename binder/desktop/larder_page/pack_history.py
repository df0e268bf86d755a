"""How a pack's price went: in words, and as a small chart. Plain Python."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.pictures.price_line import price_line
from binder.desktop.sheet.cell import NOTHING, Cell, Row, Size, Tone
from binder.desktop.words.figure_text import date_text
from binder.figures.date_text import DateForm
from binder.figures.missing import Place
from binder.figures.money_words import money, percent_text
from binder.figures.price_history import price_history
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.figures.price_history import PricePoint
    from binder.kitchen.binder import Binder
    from binder.kitchen.price import Pack

HISTORY = "history"
"""Rows that stand for what a pack cost over time."""


def history_rows(binder: Binder, pack: Pack) -> list[Row]:
    """The chart of a pack with more than one price; no row for another."""
    points = price_history(binder, pack.id)
    if len(points) < 2:  # noqa: PLR2004 - one price is no history
        return []
    words, told = _since(binder, points), _told(binder, points)
    chart = Cell(picture=price_line((point.on.toordinal(), point.price) for point in points), spoken=told, tip=told)
    cells = (Cell(words, size=Size.SMALL, tone=Tone.QUIET, tip=told), NOTHING, chart, *(NOTHING,) * 4)
    return [Row(f"{HISTORY}:{pack.id}", cells, Place("packs", pack.id), spans=((0, 2), (2, 5)), lines=2.4)]


def _since(binder: Binder, points: Sequence[PricePoint]) -> str:
    """How the last price stands to the first."""
    first, last = points[0], points[-1]
    day = date_text(binder, first.on, DateForm.DATE)
    if last.price == first.price or not first.price:
        return _("since {date}").format(date=day)
    part = percent_text(binder, abs(last.price / first.price - 1))
    says = _("up {percent} since {date}") if last.price > first.price else _("down {percent} since {date}")
    return says.format(percent=part, date=day)


def _told(binder: Binder, points: Sequence[PricePoint]) -> str:
    """Every price with its day."""
    says = _("{price} on {date}")
    return "; ".join(
        says.format(price=money(binder, point.price), date=date_text(binder, point.on, DateForm.DATE))
        for point in points
    )
