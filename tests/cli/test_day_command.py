"""`binder day`: when everything starts."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, time
from pathlib import Path
from typing import Any

import pytest
from icalendar import Calendar

from binder.kitchen.day import FixedEvent, Person
from binder.kitchen.edits.day import add_event
from binder.storage.contents import Contents
from binder.storage.document import OpenDocument
from binder.storage.new_file import create_file
from tests.cli.conftest import Ask, Run, squeezed, written
from tests.figures.test_clash_words import two_heats
from tests.figures.test_day_plan import timed
from tests.kitchen_binder import small_binder

KEYS = ["binder", "shoot", "currency", "activities", "wrap", "bound", "proven_optimal", "assumed", "clash", "repairs"]
ACTIVITY = ["kind", "dish", "build", "step", "start", "end", "resources", "people", "pinned"]


def events_of(calendar: Path) -> list[Any]:
    """The events of a calendar file, which come without useful types."""
    return list(Calendar.from_ical(calendar.read_bytes()).walk("VEVENT"))


@pytest.fixture
def timed_day(tmp_path: Path) -> Path:
    """The small shoot with times, two people, and a plan."""
    people = (
        Person(id="host", shoot="day", name="Ode", on_camera=True),
        Person(id="cook", shoot="day", name="Wren", position=1, arrives=time(6, 0)),
    )
    return written(timed(*people), tmp_path / "timed.json")


@pytest.fixture
def hot_day(tmp_path: Path) -> Path:
    """One oven for two heats, too little time: no plan."""
    return written(two_heats(time(11, 15)), tmp_path / "hot.json")


def test_json_has_exactly_the_keys_that_programs_rely_on(ask: Ask, timed_day: Path) -> None:
    answer = ask("day", timed_day)
    assert list(answer) == [*KEYS, "missing"]
    assert all(list(one) == ACTIVITY for one in answer["activities"])
    assert (answer["proven_optimal"], answer["clash"], answer["repairs"], answer["missing"]) == (True, [], [], [])
    assert answer["bound"] == answer["wrap"]
    assert answer["wrap"].startswith("2026-12-03T")


def test_json_says_what_is_done_when_by_whom_and_where(ask: Ask, timed_day: Path) -> None:
    activities = ask("day", timed_day)["activities"]
    fried = next(one for one in activities if one["step"] == "Fry" and one["build"] == "swap-out")
    assert (fried["dish"], fried["kind"], fried["pinned"]) == ("Onion flatbread", "prep", False)
    assert fried["resources"] == ["burners"]
    assert len(fried["people"]) == 1
    start, end = (datetime.fromisoformat(fried[key]) for key in ("start", "end"))
    assert (end - start).total_seconds() == 8 * 60
    assert [one["start"] for one in activities] == sorted(one["start"] for one in activities)


def test_the_table_goes_by_day_and_time_and_marks_the_camera(run: Run, timed_day: Path) -> None:
    result = run("day", timed_day)
    assert result.exit_code == 0
    assert "\nDec 3, 2026\n" in result.stdout
    shown = squeezed(result.stdout).replace("\u202f", " ")
    assert "● Blend of dish 1 (hero) Ode" in shown
    assert "This plan wraps at" in shown
    assert "◌ The kitchen is assumed to have: " in shown
    assert max(map(len, result.stdout.splitlines())) <= 80


def test_what_happens_at_a_fixed_time_stands_among_what_is_done(run: Run, tmp_path: Path) -> None:
    lunch = FixedEvent(id="lunch", shoot="day", name="Lunch", at=time(8, 30), minutes=45)
    guest = FixedEvent(id="guest", shoot="day", name="Guest comes", at=time(9, 30), stops_work=False)
    result = run("day", written(timed(lunch, guest), tmp_path / "timed.json"))
    shown = squeezed(result.stdout).replace("\u202f", " ")
    assert "8:30 AM 9:15 AM ○ Lunch nobody works\n9:15 AM" in shown
    assert "9:30 AM 9:30 AM ○ Guest comes\n" in shown


@pytest.mark.parametrize("since", ["call", "8:20", "2", "onion flatbread"])
def test_a_part_of_the_day(ask: Ask, timed_day: Path, since: str) -> None:
    every, part = ask("day", timed_day)["activities"], ask("day", timed_day, "--from", since)["activities"]
    assert 0 < len(part) < len(every)
    assert part == [one for one in every if one["start"] >= part[0]["start"]] or since == "2"


def test_a_part_that_is_none_is_wrong_usage(run: Run, timed_day: Path) -> None:
    result = run("day", timed_day, "--from", "25:00")
    assert result.exit_code == 2
    assert result.stderr == ("“25:00” is neither “call”, nor a dish by its number or name, nor a time such as 9:30.\n")


def test_no_plan_ends_with_1_and_says_why_and_what_helps(run: Run, ask: Ask, hot_day: Path) -> None:
    result = run("day", hot_day)
    assert (result.exit_code, result.stderr) == (1, "")
    shown = " ".join(result.stdout.split())
    assert "◣ no plan There is no plan, because these cannot all be had:" in shown
    assert "oven at 220 °C for dish 1 and at 150 °C for dish 2" in shown
    assert "○ helps Have a second oven." in shown
    answer = ask("day", hot_day)
    assert (answer["activities"], answer["wrap"], answer["bound"], answer["proven_optimal"]) == ([], None, None, None)
    assert answer["clash"]
    assert {"says": "Have a second oven.", "enough": True} in answer["repairs"]
    assert answer["missing"][0].startswith("There is no plan")


def test_a_shoot_without_a_date_says_so(run: Run, tmp_path: Path) -> None:
    undated = replace(small_binder().shoots["day"], on=None)
    result = run("day", written(small_binder(undated), tmp_path / "a.json"))
    assert result.exit_code == 1
    assert "The shoot has no date" in result.stdout


def test_the_days_before_are_written_as_a_calendar(run: Run, timed_day: Path, tmp_path: Path) -> None:
    to = tmp_path / "before.ics"
    result = run("day", timed_day, "--to", to)
    assert result.exit_code == 0
    assert "Wrote the days before to" in result.stdout
    events = events_of(to)
    assert {"Soak", "Shop at Corner Larder", "Bean day"} <= {str(event["SUMMARY"]) for event in events}
    assert {event["DTSTAMP"].dt for event in events} == {datetime(2026, 11, 2, tzinfo=UTC)}


def test_a_calendar_of_a_file_counts_its_changes(run: Run, tmp_path: Path) -> None:
    file, to = tmp_path / "day.binder", tmp_path / "before.ics"
    create_file(file, Contents(timed()))
    run("day", file, "--to", to)
    first = events_of(to)
    document = OpenDocument.open(file)
    change, _event = add_event(document.binder, document.binder.shoots["day"], "Lunch", time(13, 0))
    document.make(change)
    document.close()
    run("day", file, "--to", to)
    second = events_of(to)
    assert [event["UID"] for event in first] == [event["UID"] for event in second]
    assert {event["SEQUENCE"] for event in first} == {0}
    assert {event["SEQUENCE"] for event in second} == {1}


def test_another_kind_of_file_is_wrong_usage(run: Run, timed_day: Path, tmp_path: Path) -> None:
    result = run("day", timed_day, "--to", tmp_path / "before.txt")
    assert (result.exit_code, result.stdout) == (2, "")
    assert "end “before.txt” so" in result.stderr
