"""The days before as an iCalendar file, read back: RFC 5545's required properties, wall times, updates in place."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from icalendar import Calendar

from binder.exchange.calendar_file import calendar_bytes, event_id
from binder.figures.prep_calendar import EntryKind, PrepEntry
from binder.kitchen.shapes import tidy
from binder.kitchen.shoot import Shoot

BERLIN = Shoot(id="day", name="Bean day", on=date(2026, 10, 25), zone="Europe/Berlin")
SOAK = PrepEntry(
    key="conversion/soak",
    kind=EntryKind.CONVERSION,
    start=datetime(2026, 10, 24, 19, 30),  # noqa: DTZ001
    end=datetime(2026, 10, 24, 19, 35),  # noqa: DTZ001
    what="Soak",
    who=("Wren",),
    where="cold station",
    details=("Pick over, rinse; cover.", "Ready at 7:30."),
)
COOK = replace(SOAK, key="conversion/cook", what="Cook", start=datetime(2026, 10, 25, 6, 30), end=None)  # noqa: DTZ001
TRIP = PrepEntry("trip/corner/1", EntryKind.TRIP, date(2026, 10, 24), None, "Shop", where="Corner, Larder")


def written(*entries: PrepEntry, shoot: Shoot = BERLIN, revision: int = 0) -> bytes:
    return calendar_bytes(shoot, entries, as_of=date(2026, 10, 2), revision=revision)


def events_of(data: bytes) -> list[Any]:
    """The events of a calendar read back, which come without useful types."""
    return list(Calendar.from_ical(data).walk("VEVENT"))


def read_back(*entries: PrepEntry, shoot: Shoot = BERLIN) -> dict[str, Any]:
    return {str(event["SUMMARY"]): event for event in events_of(written(*entries, shoot=shoot))}


def test_a_calendar_has_what_rfc_5545_requires() -> None:
    calendar = Calendar.from_ical(written(SOAK, TRIP))
    assert calendar["VERSION"] == "2.0"
    assert calendar["PRODID"]
    for event in calendar.walk("VEVENT"):
        assert {"UID", "DTSTAMP", "DTSTART"} <= set(event)
    assert not calendar.errors
    lines = written(SOAK, TRIP).split(b"\r\n")
    assert lines[0] == b"BEGIN:VCALENDAR"
    assert all(len(line) <= 75 for line in lines)


def test_times_are_on_the_wall_in_the_shoots_zone_with_its_rules() -> None:
    calendar = Calendar.from_ical(written(SOAK, COOK))
    (zone,) = calendar.walk("VTIMEZONE")
    assert zone["TZID"] == "Europe/Berlin"
    soak, cook = (read_back(SOAK, COOK)[name] for name in ("Soak", "Cook"))
    assert soak["DTSTART"].params["TZID"] == "Europe/Berlin"
    assert soak["DTSTART"].dt == datetime(2026, 10, 24, 19, 30, tzinfo=ZoneInfo("Europe/Berlin"))
    # The clocks go back that night: eleven hours on the wall are twelve hours that pass.
    assert cook["DTSTART"].dt.astimezone(UTC) - soak["DTSTART"].dt.astimezone(UTC) == timedelta(hours=12)


def test_whole_days_end_on_the_next() -> None:
    trip = read_back(TRIP)["Shop"]
    assert (trip["DTSTART"].dt, trip["DTEND"].dt) == (date(2026, 10, 24), date(2026, 10, 25))
    assert trip["TRANSP"] == "TRANSPARENT"


def test_it_says_who_where_and_how() -> None:
    soak = read_back(SOAK)["Soak"]
    assert str(soak["LOCATION"]) == "cold station"
    assert str(soak["DESCRIPTION"]) == "Who: Wren\nPick over, rinse; cover.\nReady at 7:30."
    assert str(read_back(TRIP)["Shop"]["LOCATION"]) == "Corner, Larder"


def test_a_second_export_updates_and_does_not_double() -> None:
    later = replace(SOAK, start=datetime(2026, 10, 24, 18, 0), what="Soak them")  # noqa: DTZ001
    first, second = events_of(written(SOAK, TRIP, revision=4)), events_of(written(later, TRIP, revision=5))
    assert [event["UID"] for event in first] == [event["UID"] for event in second]
    assert {event["SEQUENCE"] for event in first} == {4}
    assert {event["SEQUENCE"] for event in second} == {5}


def test_ids_tell_entries_and_shoots_apart() -> None:
    other = replace(BERLIN, id="other")
    ids = {event_id(shoot, entry) for shoot in (BERLIN, other) for entry in (SOAK, COOK, TRIP)}
    assert len(ids) == 6


def test_the_stamp_is_of_the_data_and_the_same_data_give_the_same_bytes() -> None:
    assert written(SOAK, TRIP) == written(SOAK, TRIP)
    soak = read_back(SOAK)["Soak"]
    assert soak["DTSTAMP"].dt == datetime(2026, 10, 2, tzinfo=UTC)
    moment = datetime(2026, 10, 2, 15, 4, 5, 6, tzinfo=ZoneInfo("Europe/Berlin"))
    (event,) = events_of(calendar_bytes(BERLIN, [SOAK], as_of=moment))
    assert event["DTSTAMP"].dt == datetime(2026, 10, 2, 13, 4, 5, tzinfo=UTC)


@pytest.mark.parametrize("zone", ["", "Nowhere/Atall"])
def test_a_shoot_without_a_zone_has_times_without_one(zone: str) -> None:
    soak = read_back(SOAK, shoot=replace(BERLIN, zone=zone))["Soak"]
    assert soak["DTSTART"].dt == SOAK.start
    assert "TZID" not in soak["DTSTART"].params


def test_nothing_to_do_is_an_empty_calendar() -> None:
    assert events_of(written()) == []


@settings(max_examples=60)
@given(st.text(max_size=200).map(tidy), st.text(max_size=400).map(tidy))
def test_any_text_comes_back(what: str, detail: str) -> None:
    (event,) = events_of(written(replace(SOAK, what=what, who=(), details=(detail,))))
    assert str(event.get("SUMMARY", "")) == what
    assert str(event.get("DESCRIPTION", "")) == detail
