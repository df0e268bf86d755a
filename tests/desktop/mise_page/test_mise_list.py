"""The mise list on screen: days before, then by station or by hour, for each build and in all."""

from __future__ import annotations

from datetime import datetime, timedelta

import pytest

from binder.desktop.latest import Latest
from binder.desktop.mise_page.mise_list import HOUR, STATION, DayTimes, MiseList, day_times
from binder.desktop.mise_page.portions import by_hour, line_of
from binder.desktop.sheet.cell import Tone
from binder.desktop.sheet.sheet import NotEditableError, Sight
from binder.figures.date_text import time_text
from binder.figures.day_plan import DayPlan
from binder.figures.leads import Lead, shoot_leads
from binder.figures.mise import mise_list
from binder.figures.missing import Place
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.edits.shoots import set_shoot
from binder.paper.plan_words import starts_by_step
from tests.desktop.day_page.straight_plan import straight_plan
from tests.desktop.sheets import after_typing, is_even
from tests.kitchen_binder import small_binder


def sheet_of(binder: Binder, times: DayTimes | None = None, *, stale: bool = False) -> MiseList:
    leads: Latest[tuple[Lead, ...]] = Latest(shoot_leads(binder, "day"), stale)
    return MiseList(leads, times or DayTimes())


@pytest.fixture
def day(chickpeas: Binder) -> Sight:
    return Sight(chickpeas, "day", STATION)


@pytest.fixture(scope="module")
def plan(chickpeas: Binder) -> DayPlan:
    """Everything one after another, made without a solver."""
    made = straight_plan(chickpeas)
    assert made is not None
    return made


def test_what_must_begin_on_days_before_stands_first(day: Sight) -> None:
    rows = sheet_of(day.binder).rows(day)
    leads = shoot_leads(day.binder, "day")
    assert [row.key for row in rows[: len(leads) + 1]] == ["before", *(f"lead:{one.conversion}" for one in leads)]
    soak = rows[1]
    assert [cell.text for cell in soak.cells[:4]] == [
        "dishes 1, 2, 3, 4 and 5",
        "Soak overnight",
        "chickpeas, dried",
        "Thu, Nov 5, 5:45\u202fPM",
    ]
    assert soak.cells[1].leads_to == Place("conversions", "soak")
    assert sheet_of(day.binder, stale=True).rows(day)[1].cells[3].tone is Tone.QUIET


def test_by_hour_days_before_are_as_the_day_is_planned(chickpeas: Binder, plan: DayPlan) -> None:
    rows = sheet_of(chickpeas, day_times(plan)).rows(Sight(chickpeas, "day", HOUR))
    soak = next(one for one in plan.activities if one.activity.conversion == "soak")
    row = next(row for row in rows if row.key == "lead:soak")
    assert row.cells[3].text.endswith(time_text(chickpeas, soak.start.time()))
    assert f"Nov {soak.start.day}," in row.cells[3].text
    assert rows[0].cells[3].text == "as the day is planned"
    assert day_times(None) == DayTimes()


def test_every_item_stands_at_its_station(day: Sight) -> None:
    sheet = sheet_of(day.binder)
    rows = sheet.rows(day)
    assert len([row for row in rows if row.key.startswith("mise:")]) == len(mise_list(day.binder, "day"))
    assert [row.cells[0].text for row in rows if row.key.startswith("station:")] == [
        "cold prep",
        "plating",
        "stove",
        "oven",
        "fridge",
    ]
    assert is_even(sheet, day)


def test_a_dish_is_named_once_at_each_station(day: Sight) -> None:
    rows = sheet_of(day.binder).rows(day)
    named = [row.cells[0].text for row in rows if row.key.startswith("mise:") and row.cells[0].text]
    assert named[:2] == ["1 Silky hummus with lemon", "2 Herb fritters"]


def test_equal_builds_are_counted_and_others_named(day: Sight) -> None:
    rows = sheet_of(day.binder).rows(day)
    shown = {row.cells[1].text: row.cells[3].text for row in reversed(rows) if row.key.startswith("mise:")}
    assert shown["chickpeas, soaked"] == "hero 300 g, swap-out 300 g, spare 150 g"
    assert shown["chickpeas, cooked"] == "2 × 400 g"
    assert shown["flat-leaf parsley"] in {"to taste", "hero 60 g, swap-out 60 g, spare 30 g"}


def test_by_hour_each_line_stands_when_its_step_begins(day: Sight, plan: DayPlan) -> None:
    starts = starts_by_step(plan)
    sheet, sight = sheet_of(day.binder, DayTimes(starts)), Sight(day.binder, "day", HOUR)
    hours = [row for row in sheet.rows(sight) if row.key.startswith("hour:")]
    assert hours.pop().cells[0].text == "Without a time in the plan", "steps of builds whose place another takes"
    moments = [datetime.fromisoformat(row.key.removeprefix("hour:")) for row in hours]
    assert moments == sorted(moments)
    assert len(moments) > 1
    assert hours[0].cells[0].text == f"Fri, Nov 6, from {time_text(Binder(), moments[0].time())}"
    for hour, portions in by_hour(day.binder, "day", starts):
        for portion in portions:
            step = day.binder.lines[portion.item.line].step
            assert {starts.get((build.build, step)) for build in portion.builds} == {portion.at}
            if hour is not None and portion.at is not None:
                assert hour <= portion.at < hour + timedelta(hours=1)
            else:
                assert hour is portion.at
    assert is_even(sheet, sight)


def test_by_hour_it_is_said_whose_a_part_is(day: Sight, plan: DayPlan) -> None:
    sheet, sight = sheet_of(day.binder, DayTimes(starts_by_step(plan))), Sight(day.binder, "day", HOUR)
    shown = [row.cells[3].text for row in sheet.rows(sight) if row.cells[1].text == "chickpeas, soaked"]
    assert sorted(shown) == ["hero 300 g", "spare 150 g", "swap-out 300 g"]


def test_by_hour_no_build_is_lost_and_amounts_add_up(day: Sight, plan: DayPlan) -> None:
    starts = starts_by_step(plan)
    portions = [one for _hour, group in by_hour(day.binder, "day", starts) for one in group]
    for item in mise_list(day.binder, "day"):
        parts = [one for one in portions if (one.item.line, one.item.number) == (item.line, item.number)]
        assert sorted(build.build for one in parts for build in one.builds) == sorted(b.build for b in item.builds)
        if item.total.grams is not None:
            assert sum(one.total.grams or 0.0 for one in parts) == pytest.approx(item.total.grams)


def test_without_a_plan_everything_still_stands_there(day: Sight) -> None:
    sight = Sight(day.binder, "day", HOUR)
    rows = sheet_of(day.binder).rows(sight)
    (heading,) = [row for row in rows if row.key.startswith("hour:")]
    assert heading.cells[0].text == "Not planned yet"
    assert len([row for row in rows if row.key.startswith("mise:")]) == len(mise_list(day.binder, "day"))


def test_a_preparation_is_edited_where_it_is_read(day: Sight, plan: DayPlan) -> None:
    sheets = [(sheet_of(day.binder), day)]
    sheets.append((sheet_of(day.binder, DayTimes(starts_by_step(plan))), Sight(day.binder, "day", HOUR)))
    for sheet, sight in sheets:
        row = next(row for row in sheet.rows(sight) if row.key.startswith("mise:"))
        assert row.place is not None
        assert line_of(row.key) == row.place.id
        assert after_typing(sheet, sight, row.key, "preparation", "warm").lines[row.place.id].preparation == "warm"
        with pytest.raises(NotEditableError):
            sheet.edit(sight, row.key, "weight", "3")


def test_lines_with_any_id_are_found_again() -> None:
    """The ids of this binder hold strokes."""
    binder = small_binder()
    sheet, sight = sheet_of(binder), Sight(binder, "day", STATION)
    rows = [row for row in sheet.rows(sight) if row.key.startswith("mise:")]
    assert all(line_of(row.key) in binder.lines for row in rows)
    assert any(row.key.startswith("mise:spread/1/2|0|") for row in rows), "made ahead for the bread"


def test_what_is_ready_by_call_says_so_where_there_is_one(day: Sight) -> None:
    def said(binder: Binder) -> str:
        rows = sheet_of(binder).rows(Sight(binder, "day", STATION))
        return next(row.cells[3].text for row in rows if row.key == "station:oven")

    assert said(day.binder) == "ready by 7:00\u202fAM, Fri, Nov 6"
    assert said(apply(day.binder, set_shoot(day.binder.shoots["day"], call=None))) == ""


def test_no_shoot_nothing_to_set_out(chickpeas: Binder) -> None:
    assert sheet_of(chickpeas).rows(Sight(chickpeas, None, STATION)) == []
