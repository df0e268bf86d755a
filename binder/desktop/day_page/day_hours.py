"""The hours of the shoot as one row: call, wrap, prep on the days before, reset between dishes, order, a hot set."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.day_page.crew import yes_no_cell, yes_or_no
from binder.desktop.sheet.cell import Cell, Column, Row
from binder.desktop.sheet.sheet import PlainSheet
from binder.desktop.words.figure_text import clock_edit, clock_text, date_text, minutes_text
from binder.desktop.words.typed import (
    Reading,
    UnreadableError,
    typed_choice,
    typed_clock,
    typed_date,
    typed_minutes,
)
from binder.figures.clock import zone_of
from binder.figures.missing import Place
from binder.kitchen.edits.day import set_call, set_wrap
from binder.kitchen.edits.shoots import set_shoot
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from datetime import time

    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.kitchen.shoot import Shoot


class DayHours(PlainSheet):
    """What holds for the whole day."""

    @property
    def name(self) -> str:
        return _("Hours")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("on", _("date"), characters=16, stretch=1),
            Column("call", _("call"), characters=9),
            Column("wrap", _("wrap by"), characters=9),
            Column("zone", _("time zone"), characters=14, stretch=2, tip=_("Such as Europe/Berlin")),
            Column("prep_from", _("prep from"), characters=9, tip=_("On the days before")),
            Column("prep_until", _("until"), characters=9, tip=_("On the days before")),
            Column("reset_minutes", _("reset"), characters=8, tip=_("Between one dish and the next on camera")),
            Column("may_reorder", _("may reorder"), characters=10, tip=_("Dishes may be filmed in another order")),
            Column("hot_set", _("hot set"), characters=8, tip=_("It is above 32 °C / 90 °F on the set")),
        )

    def rows(self, sight: Sight) -> list[Row]:
        shoot = sight.binder.shoots.get(sight.shoot or "")
        return [_row(sight.binder, shoot)] if shoot is not None else []

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder, shoot = sight.binder, sight.binder.shoots[sight.shoot or ""]
        if column == "call":
            return set_call(shoot, typed_clock(text))
        if column == "wrap":
            return set_wrap(shoot, typed_clock(text))
        values: dict[str, Reading] = {
            "on": lambda: typed_date(binder, text),
            "zone": lambda: _typed_zone(text),
            "prep_from": lambda: _typed_hour(text),
            "prep_until": lambda: _typed_hour(text),
            "reset_minutes": lambda: typed_minutes(binder, text),
            "may_reorder": lambda: typed_choice(text, yes_or_no()),
            "hot_set": lambda: typed_choice(text, yes_or_no()),
        }
        return set_shoot(shoot, **{column: values[column]()})


def _typed_zone(text: str) -> str:
    zone = text.strip()
    if zone and zone_of(zone) is None:
        raise UnreadableError(text, _("write a time zone by its name, such as Europe/Berlin."))
    return zone


def _typed_hour(text: str) -> time:
    at = typed_clock(text)
    if at is None:
        raise UnreadableError(text, _("write a time of day such as 8:00."))
    return at


def _row(binder: Binder, shoot: Shoot) -> Row:
    on, reset = shoot.on.isoformat() if shoot.on else "", minutes_text(shoot.reset_minutes)
    cells = (
        Cell(date_text(binder, shoot.on), edit=on, placeholder=_("add the date")),
        Cell(clock_text(binder, shoot.call), edit=clock_edit(binder, shoot.call), placeholder=_("when?")),
        Cell(clock_text(binder, shoot.wrap), edit=clock_edit(binder, shoot.wrap), placeholder=_("open")),
        Cell(shoot.zone, edit=shoot.zone, placeholder=_("of this machine")),
        Cell(clock_text(binder, shoot.prep_from), edit=clock_edit(binder, shoot.prep_from)),
        Cell(clock_text(binder, shoot.prep_until), edit=clock_edit(binder, shoot.prep_until)),
        Cell(reset, edit=reset, placeholder="–"),
        yes_no_cell(yes=shoot.may_reorder),
        yes_no_cell(yes=shoot.hot_set),
    )
    return Row(f"shoots:{shoot.id}", cells, place=Place("shoots", shoot.id), lines=1.9, rule=False)
