"""What must start before call, as dates."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime

from binder.figures.leads import shelf_life_clashes, shoot_leads
from binder.kitchen.conversion import Addition, Conversion, Outcome
from binder.kitchen.food import Food
from binder.kitchen.recipe import Line
from tests.kitchen_binder import small_binder


def test_soaking_starts_the_evening_before() -> None:
    # Cooking takes 90 minutes and soaking 12 hours: 8:00 less 1:30 is 6:30, less 12 hours is 18:30 the day before.
    leads = {lead.conversion: lead for lead in shoot_leads(small_binder(), "day")}
    assert leads["cook"].starts == datetime(2026, 12, 3, 6, 30)  # noqa: DTZ001
    assert leads["soak"].starts == datetime(2026, 12, 2, 18, 30)  # noqa: DTZ001
    assert [lead.conversion for lead in shoot_leads(small_binder(), "day")] == ["soak", "cook"]


def test_times_on_the_wall_are_right_across_a_night_the_clocks_change() -> None:
    # The European Union's clocks went back at 3:00 on 25 October 2026 (Directive 2000/84/EC): that night has an hour
    # more, and 13 hours and 30 minutes before 8:00 it was 19:30.
    night = replace(small_binder().shoots["day"], on=date(2026, 10, 25), zone="Europe/Berlin")
    leads = {lead.conversion: lead for lead in shoot_leads(small_binder(night), "day")}
    assert leads["soak"].starts == datetime(2026, 10, 24, 19, 30)  # noqa: DTZ001
    assert leads["cook"].starts == datetime(2026, 10, 25, 6, 30)  # noqa: DTZ001


def test_a_start_before_the_calendar_begins_is_none() -> None:
    first = replace(small_binder().shoots["day"], on=date.min, zone="Europe/Berlin")
    leads = {lead.conversion: lead for lead in shoot_leads(small_binder(first), "day")}
    assert leads["soak"].starts is None


def test_each_says_which_dishes_it_is_for() -> None:
    leads = shoot_leads(small_binder(), "day")
    assert all(lead.for_dishes == ("dish-spread", "dish-bread") for lead in leads)


def test_ageing_counts_before_use() -> None:
    aged = replace(small_binder().foods["cooked"], good_from_days=2)
    leads = {lead.conversion: lead for lead in shoot_leads(small_binder(aged), "day")}
    assert leads["cook"].starts == datetime(2026, 12, 1, 6, 30)  # noqa: DTZ001


def test_a_conversion_that_nothing_needs_is_not_run() -> None:
    mill = (
        Conversion(id="mill", takes="beans", name="Mill"),
        Outcome(id="m/1", conversion="mill", form="meal", ratio=0.9),
    )
    meal = Food(id="meal", name="bean meal", form_of="beans")
    assert {lead.conversion for lead in shoot_leads(small_binder(meal, *mill), "day")} == {"soak", "cook"}


def test_a_form_that_cannot_keep_until_its_fellow_is_fit_is_named() -> None:
    small = small_binder()
    binder = small_binder(
        replace(small.foods["cooked"], good_from_days=3), replace(small.foods["liquid"], keeps_days=1)
    )
    (clash,) = shelf_life_clashes(binder, "day")
    assert "bean liquid" in clash.says
    assert clash.place.id == "liquid"
    assert shelf_life_clashes(small_binder(), "day") == ()


def test_without_a_date_there_is_still_how_long_before() -> None:
    binder = small_binder(replace(small_binder().shoots["day"], on=None))
    leads = shoot_leads(binder, "day")
    assert [lead.starts for lead in leads] == [None, None]
    assert [lead.minutes_before for lead in leads] == [810, 90]


def test_no_line_no_lead() -> None:
    small = small_binder()
    bare = [replace(line, food="tahini") for line in small.lines.values() if line.food in {"cooked", "liquid"}]
    assert shoot_leads(small_binder(*bare), "day") == ()
    assert all(isinstance(line, Line) for line in bare)


def test_a_form_that_spoils_before_it_is_made_on_is_named() -> None:
    # The liquid must age three days after cooking, the cooked is mashed at call: it would wait three days.
    small = small_binder()
    mash = (
        Food(id="mash", name="bean mash", form_of="beans"),
        Conversion(id="mash", takes="cooked", name="Mash"),
        Outcome(id="mash/1", conversion="mash", form="mash", ratio=1.0),
        replace(small.lines["spread/1/1"], food="mash"),
        replace(small.foods["liquid"], good_from_days=3),
    )
    (clash,) = shelf_life_clashes(small_binder(*mash, replace(small.foods["cooked"], keeps_days=2)), "day")
    assert "cooked beans keeps 2 days and would be 3.0 days old" in clash.says
    assert shelf_life_clashes(small_binder(*mash, replace(small.foods["cooked"], keeps_days=3)), "day") == ()


def test_a_form_that_is_added_to_another_is_ready_for_it() -> None:
    stew = (
        Food(id="stew", name="bean stew", form_of="beans"),
        Conversion(id="stew", takes="beans", name="Stew", lead_minutes=60),
        Outcome(id="stew/1", conversion="stew", form="stew", ratio=2.0),
        Addition(id="stew/2", conversion="stew", food="liquid", ratio=1.0),
        Line(id="x", step="bread/2", position=5, food="stew", low=100, high=100, unit="g"),
    )
    leads = {lead.conversion: lead for lead in shoot_leads(small_binder(*stew), "day")}
    assert leads["stew"].minutes_before == 60
    assert leads["cook"].minutes_before == 60 + 90
    assert leads["stew"].for_dishes == ("dish-bread",)


def test_before_the_calendar_begins_there_is_no_date_but_still_a_time() -> None:
    binder = small_binder(replace(small_binder().shoots["day"], on=date(1, 1, 1)))
    leads = shoot_leads(binder, "day")
    assert [(lead.starts is None, lead.minutes_before) for lead in leads] == [(True, 810), (False, 90)]
