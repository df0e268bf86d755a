"""The days before a shoot as an iCalendar file (RFC 5545), which common calendars open.

Each entry keeps its UID from one export to the next, so that a calendar moves it where it was and does not double it.
"""

from __future__ import annotations

import uuid
from datetime import UTC, date, datetime, time, timedelta
from typing import TYPE_CHECKING

from binder.figures.clock import zone_of
from binder.figures.prep_calendar import EntryKind
from binder.kitchen.whole_file import write_whole
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Sequence
    from pathlib import Path

    from icalendar import Calendar, Event

    from binder.figures.prep_calendar import PrepEntry
    from binder.kitchen.shoot import Shoot

_PRODUCT = "-//Binder//shoot-recipe-binder//EN"
_OURS = uuid.uuid5(uuid.NAMESPACE_DNS, "binder.invalid")
"""What UIDs are made under; `.invalid` is nobody's domain (RFC 2606)."""


def calendar_bytes(shoot: Shoot, entries: Sequence[PrepEntry], *, as_of: date | datetime, revision: int = 0) -> bytes:
    """Entries as an iCalendar file, the same bytes for the same data.

    `as_of` is when the data was last changed (DTSTAMP), and `revision` grows with each change of it (SEQUENCE), so that
    a calendar can tell a newer export from an older one. Times are those on the wall in the shoot's zone, or without a
    zone where the shoot names none that is known.
    """
    from icalendar import Calendar

    calendar = Calendar()
    calendar.add("prodid", _PRODUCT)
    calendar.add("version", "2.0")
    calendar.add("name", shoot.name)
    calendar.add("x-wr-calname", shoot.name)
    for entry in entries:
        calendar.add_component(_event(shoot, entry, _stamp(as_of), revision))
    _add_timezone(calendar, entries)
    return bytes(calendar.to_ical())


def write_calendar(
    path: Path, shoot: Shoot, entries: Sequence[PrepEntry], *, as_of: date | datetime, revision: int = 0
) -> None:
    """Write `calendar_bytes` to a file, in the place of one that is there. Raises as `write_whole`."""
    write_whole(path, calendar_bytes(shoot, entries, as_of=as_of, revision=revision))


def event_id(shoot: Shoot, entry: PrepEntry) -> str:
    """The UID of an entry: by the ids of its shoot and of what it is, whatever their names and times are."""
    return f"{uuid.uuid5(_OURS, f'{shoot.id} {entry.key}')}@binder.invalid"


def _event(shoot: Shoot, entry: PrepEntry, stamp: datetime, revision: int) -> Event:
    from icalendar import Event

    event = Event()
    event.add("uid", event_id(shoot, entry))
    event.add("dtstamp", stamp)
    event.add("sequence", revision)
    event.add("summary", entry.what)
    event.add("dtstart", _on_the_wall(entry.start, shoot.zone))
    event.add("dtend", _on_the_wall(entry.end or entry.on + timedelta(days=1), shoot.zone))
    if entry.where:
        event.add("location", entry.where)
    event.add("description", _description(entry))
    event.add("categories", [entry.kind.value])
    if entry.kind in {EntryKind.ORDER, EntryKind.TRIP}:
        event.add("transp", "TRANSPARENT")
    return event


def _description(entry: PrepEntry) -> str:
    who = [_("Who: {names}").format(names=", ".join(entry.who))] if entry.who else []
    return "\n".join([*who, *entry.details])


def _on_the_wall(moment: datetime | date, zone: str) -> datetime | date:
    known = zone_of(zone)
    return moment.replace(tzinfo=known) if isinstance(moment, datetime) and known is not None else moment


def _stamp(as_of: date | datetime) -> datetime:
    """A moment in UTC, as DTSTAMP has to be; the beginning of a day."""
    moment = as_of if isinstance(as_of, datetime) else datetime.combine(as_of, time(0, 0))
    return (moment.replace(tzinfo=UTC) if moment.tzinfo is None else moment.astimezone(UTC)).replace(microsecond=0)


def _add_timezone(calendar: Calendar, entries: Sequence[PrepEntry]) -> None:
    """The rules of the zone for the years that the entries lie in."""
    if entries:
        first, last = min(entry.on for entry in entries), max(entry.on for entry in entries)
        since, until = max(first.year - 1, 1), min(last.year + 2, 9999)
        calendar.add_missing_timezones(date(since, 1, 1), date(until, 1, 1))
