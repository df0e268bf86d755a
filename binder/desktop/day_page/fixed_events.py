"""What happens at a fixed time: lunch, a guest, a fire test. A new one is typed whole: Lunch 12:30, 45 min."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from binder.desktop.day_page.crew import yes_no_cell, yes_or_no
from binder.desktop.sheet.cell import NOTHING, Cell, Column, Row, Size, key_of
from binder.desktop.sheet.sheet import PlainSheet, record_of
from binder.desktop.words.figure_text import clock_edit, clock_text, minutes_text
from binder.desktop.words.typed import Reading, UnreadableError, typed_choice, typed_clock, typed_minutes
from binder.figures.missing import Place
from binder.kitchen.edits.day import add_event, remove_event, set_event
from binder.kitchen.edits.records import remove
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Sequence
    from datetime import time

    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.kitchen.day import FixedEvent

ADD_EVENT = "add:event"
_WHOLE = tuple(
    re.compile(rf"^(?P<name>.*?)[\s,;@]+(?:at\s+)?(?P<at>{clock})(?:[\s,;]+(?P<minutes>.+))?$", re.IGNORECASE)
    for clock in (r"\d{1,2}[:.]\d{2}\s*(?:am|pm)?|\d{1,2}\s*(?:am|pm)", r"\d{1,2}")
)
"""A name and a time, in minutes or with am and pm if any is; then how long it takes."""


class FixedEvents(PlainSheet):
    """A row an event, the earliest first."""

    @property
    def name(self) -> str:
        return _("At a fixed time")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("at", _("at"), characters=9),
            Column("name", _("what"), characters=20, stretch=2),
            Column("minutes", _("takes"), characters=10, stretch=1),
            Column(
                "stops_work",
                _("stops work"),
                characters=9,
                stretch=1,
                tip=_("Nobody works then, and nothing is filmed"),
            ),
        )

    def rows(self, sight: Sight) -> list[Row]:
        if sight.shoot is None:
            return []
        events = sorted(sight.binder.fixed_events.where("shoot", sight.shoot), key=lambda one: (one.at, one.name))
        return [*(_row(sight.binder, event) for event in events), _adding()]

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder = sight.binder
        if row == ADD_EVENT:
            return typed_whole(binder, sight.shoot or "", text)
        event = binder.fixed_events[record_of(row).id]
        values: dict[str, Reading] = {
            "at": lambda: _typed_at(text),
            "name": text.strip,
            "minutes": lambda: typed_minutes(binder, text),
            "stops_work": lambda: typed_choice(text, yes_or_no()),
        }
        return set_event(event, **{column: values[column]()})

    def remove(self, sight: Sight, rows: Sequence[str]) -> Change | None:
        found = [sight.binder.fixed_events[record_of(row).id] for row in rows if record_of(row).table == "fixed_events"]
        if len(found) < 2:  # noqa: PLR2004 - one goes by its name
            return remove_event(sight.binder, found[0]) if found else None
        label = ngettext("Take {count} event out of the day", "Take {count} events out of the day", len(found))
        return remove(label.format(count=len(found)), sight.binder, *found)


def typed_whole(binder: Binder, shoot: str, text: str) -> Change:
    """`Lunch 12:30, 45 min`."""
    found = next((found for pattern in _WHOLE if (found := pattern.match(text.strip()))), None)
    if found is None or not found["name"].strip():
        raise UnreadableError(text, _("write what it is and when, such as Lunch 12:30, 45 min."))
    minutes = typed_minutes(binder, found["minutes"] or "")
    return add_event(binder, binder.shoots[shoot], found["name"].strip(), _typed_at(found["at"]), minutes=minutes)[0]


def _typed_at(text: str) -> time:
    at = typed_clock(text)
    if at is None:
        raise UnreadableError(text, _("write a time of day such as 12:30."))
    return at


def _row(binder: Binder, event: FixedEvent) -> Row:
    place = Place("fixed_events", event.id)
    minutes = minutes_text(event.minutes)
    cells = (
        Cell(clock_text(binder, event.at), edit=clock_edit(binder, event.at)),
        Cell(event.name, edit=event.name, size=Size.STRONG),
        Cell(minutes, edit=minutes, placeholder="–"),
        yes_no_cell(yes=event.stops_work),
    )
    return Row(key_of(place), cells, place=place)


def _adding() -> Row:
    cell = Cell(edit="", placeholder=_("Add what is at a fixed time: Lunch 12:30, 45 min"))
    return Row(ADD_EVENT, (cell, *(NOTHING,) * 3), spans=((0, 4),), rule=False, adds=True)
