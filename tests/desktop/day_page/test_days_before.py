"""The days before: by date, with who and where, each leading to where it comes from; taken along as a calendar."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

from icalendar import Calendar as ReadCalendar
from pytestqt.qtbot import QtBot

from binder.desktop.day_page.days_before import DaysBefore, calendar_of
from binder.desktop.day_page.page import BEFORE, DayPage
from binder.desktop.day_page.planning import planning_of
from binder.desktop.latest import Latest
from binder.desktop.main_window import MainWindow
from binder.desktop.sheet.sheet import Sight
from binder.figures.day_plan import DayPlan
from binder.figures.missing import Place
from binder.figures.prep_calendar import EntryKind, PrepEntry
from binder.kitchen.binder import Binder
from binder.kitchen.edits.shoots import set_shoot
from tests.desktop.conftest import Answers


def early(chickpeas: Binder, plan: DayPlan) -> DayPlan:
    """The plan with its soaking the evening before."""
    soak = next(one for one in plan.activities if one.activity.conversion == "soak")
    before = replace(soak, start=soak.start.replace(day=5, hour=19), end=soak.end.replace(day=5, hour=19))
    return replace(plan, activities=(before, *(one for one in plan.activities if one is not soak)))


def test_every_entry_stands_under_its_day(chickpeas: Binder, plan: DayPlan) -> None:
    calendar = calendar_of(chickpeas, "day", early(chickpeas, plan))
    rows = DaysBefore(Latest(calendar)).rows(Sight(chickpeas, "day"))
    texts = [row.cells[0].text for row in rows if row.key.startswith("day:")]
    assert "Thursday, November 5, 1 day before" in texts
    assert texts[-1] == "Friday, November 6"
    soak = next(row for row in rows if row.key == "conversion/soak")
    assert soak.cells[0].text.startswith("7:00\u202fPM")
    assert soak.cells[2].text == "Soak overnight"
    assert soak.cells[2].leads_to == Place("conversions", "soak")
    assert "Ready at" in soak.cells[4].text


def test_each_kind_leads_to_where_it_comes_from(chickpeas: Binder) -> None:
    day = date(2026, 11, 4)
    entries = (
        PrepEntry("order/tahini", EntryKind.ORDER, day, None, "Order tahini"),
        PrepEntry("trip/corner/1", EntryKind.TRIP, day, None, "Shop", where="Corner grocer", details=("a", "b")),
        PrepEntry("ahead/step", EntryKind.PREP, day, None, "Toast"),
    )
    latest = Latest(replace(calendar_of(chickpeas, "day", None), entries=entries))
    order, trip, prep = DaysBefore(latest).rows(Sight(chickpeas, "day"))[1:]
    assert (order.place, trip.place, prep.place) == (Place("foods", "tahini"), None, Place("steps", "step"))
    assert order.cells[0].text == "in the day"
    assert trip.cells[4].text == "2 things to buy"
    assert trip.cells[4].tip == "a\nb"
    assert trip.cells[3].text == "Corner grocer"


def test_nothing_before_is_said(chickpeas: Binder) -> None:
    latest = Latest(replace(calendar_of(chickpeas, "day", None), entries=()))
    (row,) = DaysBefore(latest).rows(Sight(chickpeas, "day"))
    assert "Nothing has to be done" in row.cells[0].text


def test_the_page_lists_them_and_writes_a_calendar(
    page: DayPage, day_window: MainWindow, answers: Answers, tmp_path: Path
) -> None:
    page.show_part(BEFORE)
    assert page.before.sheet_model.rowCount() > 0
    answers.file = tmp_path / "days.ics"
    page.export.click()
    assert answers.asked[-1].endswith(".ics")
    read = ReadCalendar.from_ical(answers.file.read_bytes())
    events = list(read.walk("VEVENT"))
    assert events
    assert {str(event["UID"]) for event in events}


def test_a_second_calendar_has_the_same_events_and_a_higher_number(
    page: DayPage, day_window: MainWindow, answers: Answers, tmp_path: Path, qtbot: QtBot
) -> None:
    read = []
    for minutes in (6.0, 9.0):
        day_window.desk.make(set_shoot(day_window.desk.binder.shoots["day"], reset_minutes=minutes))
        qtbot.waitUntil(lambda: not page.planning.busy)
        answers.file = tmp_path / f"{minutes}.ics"
        assert page.begin("calendar")
        read.append(ReadCalendar.from_ical(answers.file.read_bytes()))
    first, second = ({str(event["UID"]): int(str(event["SEQUENCE"])) for event in one.walk("VEVENT")} for one in read)
    assert set(first) == set(second)
    assert all(second[uid] > number for uid, number in first.items())


def test_thinking_better_of_it_writes_nothing(page: DayPage, answers: Answers) -> None:
    answers.file = None
    assert page.begin("calendar") is False


def test_a_folder_that_cannot_be_written_is_said(page: DayPage, day_window: MainWindow, answers: Answers) -> None:
    answers.file = Path("/no/such/folder/days.ics")
    assert page.begin("calendar") is False
    assert "days.ics" in day_window.frame.strip.says


def test_the_calendar_waits_for_the_first_plan(window: MainWindow, answers: Answers, tmp_path: Path) -> None:
    planning = planning_of(window.desk)
    window.show_page("day")
    page = window.page("day")
    assert isinstance(page, DayPage)
    assert planning.plan is None
    answers.file = tmp_path / "days.ics"
    assert page.begin("calendar") is False
    assert "still being planned" in window.frame.strip.says
    assert not answers.file.exists()
