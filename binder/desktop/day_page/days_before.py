"""The days before: what is ordered, fetched, soaked and prepared, by date, with who and where. Plain Python."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import TYPE_CHECKING

from binder.desktop.day_page.day_heading import day_heading
from binder.desktop.sheet.cell import NOTHING, Cell, Column, Mark, Row, Size, Tone
from binder.desktop.sheet.sheet import PlainSheet
from binder.figures.date_text import DateForm, date_text, span_text
from binder.figures.missing import Place
from binder.figures.prep_calendar import EntryKind, PrepEntry, prep_calendar
from binder.kitchen.wording import _, listed, ngettext

if TYPE_CHECKING:
    from datetime import date

    from binder.desktop.latest import Latest
    from binder.desktop.sheet.sheet import Sight
    from binder.figures.day_plan import DayPlan
    from binder.kitchen.binder import Binder

_COLUMNS = 5


@dataclass(frozen=True)
class Calendar:
    """The entries of a shoot's calendar, and the day they lead to."""

    entries: tuple[PrepEntry, ...]
    on: date | None


def calendar_of(binder: Binder, shoot: str, plan: DayPlan | None) -> Calendar:
    """The calendar that leads to a shoot; without a plan only orders and trips."""
    return Calendar(prep_calendar(binder, shoot, plan), binder.shoots[shoot].on)


class DaysBefore(PlainSheet):
    """A heading a day, a row for each thing to do; `latest` holds what was last worked out."""

    def __init__(self, latest: Latest[Calendar]) -> None:
        self._latest = latest

    @property
    def name(self) -> str:
        return _("Days before")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("start", _("at"), characters=18),
            Column("kind", "", characters=10),
            Column("what", _("what"), characters=24, stretch=3),
            Column("who", _("who, where"), characters=16, stretch=2),
            Column("details", _("how much, for what"), characters=24, stretch=5),
        )

    def rows(self, sight: Sight) -> list[Row]:
        calendar = self._latest.value
        if calendar is None or not calendar.entries:
            return [_nothing()] if sight.shoot is not None else []
        rows: list[Row] = []
        day: date | None = None
        for entry in calendar.entries:
            if entry.on != day:
                day = entry.on
                rows.append(_heading(sight.binder, day, calendar.on, first=not rows))
            rows.append(_row(sight.binder, entry))
        return rows


def _nothing() -> Row:
    says = _("Nothing has to be done before the day of the shoot.")
    return Row(
        "nothing", (Cell(says, mark=Mark.WITHIN, tone=Tone.QUIET), *(NOTHING,) * (_COLUMNS - 1)), spans=((0, _COLUMNS),)
    )


def _heading(binder: Binder, day: date, shoot: date | None, *, first: bool) -> Row:
    before = (shoot - day).days if shoot is not None else 0
    return day_heading(day, date_text(binder, day, DateForm.LONG), before=before, columns=_COLUMNS, first=first)


def _row(binder: Binder, entry: PrepEntry) -> Row:
    place = _place(entry)
    details = _details(entry)
    where = [listed(entry.who)] if entry.who else []
    cells = (
        Cell(_when(binder, entry)),
        Cell(_kind(entry.kind), tone=Tone.QUIET, size=Size.SMALL),
        Cell(entry.what, leads_to=place, paragraph=True)
        if place
        else Cell(entry.what, size=Size.STRONG, paragraph=True),
        Cell(", ".join([*where, *([entry.where] if entry.where else [])]), paragraph=True),
        Cell(details, tone=Tone.QUIET, paragraph=True, tip="\n".join(entry.details)),
    )
    return Row(entry.key, cells, place=place, wraps=True)


def _details(entry: PrepEntry) -> str:
    """In short: what a trip brings is on the shopping list."""
    if entry.kind is EntryKind.TRIP:
        count = len(entry.details)
        return ngettext("{count} thing to buy", "{count} things to buy", count).format(count=count)
    return "  ".join(entry.details)


def _when(binder: Binder, entry: PrepEntry) -> str:
    if not isinstance(entry.start, datetime):
        return _("in the day")
    return span_text(binder, entry.start.time(), (entry.end or entry.start).time())


def _kind(kind: EntryKind) -> str:
    return {
        EntryKind.ORDER: _("order"),
        EntryKind.TRIP: _("fetch"),
        EntryKind.THAW: _("thaw"),
        EntryKind.CONVERSION: _("base"),
        EntryKind.PREP: _("prep"),
        EntryKind.SHOOT: _("shoot"),
    }[kind]


def _place(entry: PrepEntry) -> Place | None:
    """Where an entry comes from: a food, a conversion, a step."""
    head, _slash, rest = entry.key.partition("/")
    if entry.kind in {EntryKind.ORDER, EntryKind.THAW}:
        return Place("foods", rest)
    if entry.kind is EntryKind.CONVERSION:
        return Place("conversions", rest)
    if entry.kind is EntryKind.PREP and head:
        return Place("steps", rest)
    return None
