"""The mise list as a table: days before, then by station or by hour. Preparations are edited here too. Plain Python."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from binder.desktop.base_page.conversion_cells import start_text
from binder.desktop.mise_page.portions import Portion, by_hour, by_station, each_text, line_of
from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Row, Size, Tone
from binder.desktop.sheet.sheet import NotEditableError, PlainSheet
from binder.desktop.words.figure_text import clock_text, date_text, grams_parts, minutes_text
from binder.figures.date_text import DateForm
from binder.figures.missing import Place
from binder.kitchen.edits.records import set_fields
from binder.kitchen.wording import _, listed, ngettext
from binder.paper.plan_words import starts_by_step

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping
    from datetime import datetime

    from binder.desktop.latest import Latest
    from binder.desktop.mise_page.portions import Starts
    from binder.desktop.sheet.sheet import Sight
    from binder.figures.day_plan import DayPlan
    from binder.figures.leads import Lead
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change

    LatestLeads = Latest[tuple[Lead, ...]]

STATION, HOUR = "station", "hour"
"""What the list is by: the subject of a sight."""


@dataclass
class DayTimes:
    """When each step of each build, and each conversion, begins by the latest plan; none while there is no plan."""

    starts: Starts = field(default_factory=dict)
    conversions: Mapping[str, datetime] = field(default_factory=dict)


def day_times(plan: DayPlan | None) -> DayTimes:
    """The times of a plan."""
    if plan is None:
        return DayTimes()
    begun: dict[str, datetime] = {}
    for one in plan.activities:
        key = one.activity.conversion
        if key is not None:
            begun[key] = min(one.start, begun.get(key, one.start))
    return DayTimes(starts_by_step(plan), begun)


class MiseList(PlainSheet):
    """The subject is STATION or HOUR."""

    def __init__(self, leads: LatestLeads, times: DayTimes) -> None:
        self._leads, self._times = leads, times

    @property
    def name(self) -> str:
        return _("Mise list")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("for", _("for"), characters=18, stretch=2),
            Column("food", _("food"), characters=18, stretch=2),
            Column("preparation", _("prepared"), characters=14, stretch=2),
            Column("each", _("each build"), characters=22, stretch=3),
            Column("weight", _("in all"), characters=9, align=Align.DECIMAL, decimals=2, unit_room="kg"),
            Column("measure", _("or"), characters=14, stretch=1),
        )

    def rows(self, sight: Sight) -> list[Row]:
        if sight.shoot is None:
            return []
        groups = _hours if sight.subject == HOUR else _stations
        leads = [lead for lead in self._leads.value or () if lead.conversion in sight.binder.conversions]
        before = _days_before(sight.binder, leads, self._times.conversions, stale=self._leads.stale)
        rows = [*before, *groups(sight.binder, sight.shoot, self._times.starts)]
        return [replace(rows[0], gap=0), *rows[1:]] if rows else []

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        if column != "preparation":
            raise NotEditableError
        return set_fields(_("Edit a preparation"), sight.binder.lines[line_of(row)], preparation=text.strip())


def _days_before(binder: Binder, leads: list[Lead], planned: Mapping[str, datetime], *, stale: bool) -> list[Row]:
    """What of the base must be begun before call, the earliest first; by the plan where there is one."""
    if not leads:
        return []
    says = _("as the day is planned") if planned else _("begun by then, counted back from call")
    timed = [replace(lead, starts=planned.get(lead.conversion, lead.starts)) for lead in leads]
    timed.sort(key=lambda lead: lead.starts.replace(tzinfo=None).isoformat() if lead.starts else "")
    heading = _heading("before", _("Days before"), says)
    return [heading, *(_lead_row(binder, lead, stale=stale) for lead in timed)]


def _lead_row(binder: Binder, lead: Lead, *, stale: bool) -> Row:
    number, unit = grams_parts(binder, lead.grams)
    numbers = [str(binder.dishes[key].position + 1) for key in lead.for_dishes if key in binder.dishes]
    dishes = ngettext("dish {numbers}", "dishes {numbers}", len(numbers)).format(numbers=listed(numbers))
    place, tone = Place("conversions", lead.conversion), Tone.QUIET if stale else Tone.INK
    takes = minutes_text(lead.hands_on + lead.waiting)
    cells = (
        Cell(dishes if numbers else "", tone=Tone.QUIET),
        Cell(lead.name, leads_to=place, tip=_("Open on the page of the base")),
        Cell(lead.takes),
        Cell(start_text(binder, lead), tone=tone, size=Size.STRONG),
        Cell(number, unit, tone=tone),
        Cell(_("takes {time}").format(time=takes) if takes else "", tone=Tone.QUIET),
    )
    return Row(f"lead:{lead.conversion}", cells, place=place, lines=1.55)


def _stations(binder: Binder, shoot: str, _starts: Starts) -> Iterator[Row]:
    ready = _ready(binder, shoot)
    for station, portions in by_station(binder, shoot):
        yield _heading(f"station:{station}", station, ready)
        yield from _named_once(binder, portions)


def _ready(binder: Binder, shoot: str) -> str:
    """By when all of it is ready, where nothing is planned: by call."""
    on, call = binder.shoots[shoot].on, binder.shoots[shoot].call
    if on is None or call is None:
        return ""
    when = f"{clock_text(binder, call)}, {date_text(binder, on, DateForm.WEEKDAY)}"
    return _("ready by {when}").format(when=when)


def _hours(binder: Binder, shoot: str, starts: Starts) -> Iterator[Row]:
    for hour, portions in by_hour(binder, shoot, starts):
        says = _("for builds whose place another takes on camera") if hour is None and starts else ""
        yield _heading(f"hour:{hour.isoformat() if hour else ''}", _hour_text(binder, hour, starts), says)
        yield from _named_once(binder, portions)


def _hour_text(binder: Binder, hour: datetime | None, starts: Starts) -> str:
    if hour is None:
        return _("Without a time in the plan") if starts else _("Not planned yet")
    day = date_text(binder, hour.date(), DateForm.WEEKDAY)
    return _("{day}, from {time}").format(day=day, time=clock_text(binder, hour.time()))


def _heading(key: str, title: str, says: str) -> Row:
    cells = (Cell(title, size=Size.STRONG), NOTHING, NOTHING, Cell(says, tone=Tone.QUIET), NOTHING, NOTHING)
    return Row(key, cells, spans=((0, 3), (3, 3)), gap=3, lines=1.5)


def _named_once(binder: Binder, portions: list[Portion]) -> Iterator[Row]:
    """A dish, and by hour its moment, is named at its first line only."""
    named: Cell | None = None
    for portion in portions:
        dish = f"{portion.item.number or ''} {portion.item.for_what}".strip()
        time = clock_text(binder, portion.at.time()) if portion.at is not None else ""
        cell = Cell(dish, label=time, tone=Tone.QUIET)
        yield _row(binder, portion, NOTHING if cell == named else cell)
        named = cell


def _row(binder: Binder, portion: Portion, dish: Cell) -> Row:
    item, place = portion.item, Place("lines", portion.item.line)
    weight, _space, unit = portion.total.weight.rpartition(" ")
    ranged = "–" in portion.total.weight
    cells = (
        dish,
        Cell(item.food, leads_to=place, tip=_("Open in the recipe")),
        Cell(item.preparation, edit=item.preparation, placeholder="–"),
        Cell(each_text(portion, to_taste=binder.lines[item.line].high is None)),
        Cell(portion.total.weight) if ranged else Cell(weight, unit),
        Cell(portion.total.measure, tone=Tone.QUIET if portion.total.weight else Tone.INK),
    )
    return Row(portion.key, cells, place=place, lines=1.55)
