"""What must start before call, as dates."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

from binder.figures.leads import shelf_life_clashes, shoot_leads
from binder.kitchen.conversion import Conversion, Outcome
from binder.kitchen.food import Food
from binder.kitchen.recipe import Line
from tests.kitchen_binder import small_binder


def test_soaking_starts_the_evening_before() -> None:
    # Cooking takes 90 minutes and soaking 12 hours: 8:00 less 1:30 is 6:30, less 12 hours is 18:30 the day before.
    leads = {lead.conversion: lead for lead in shoot_leads(small_binder(), "day")}
    assert leads["cook"].starts == datetime(2026, 12, 3, 6, 30)  # noqa: DTZ001
    assert leads["soak"].starts == datetime(2026, 12, 2, 18, 30)  # noqa: DTZ001
    assert [lead.conversion for lead in shoot_leads(small_binder(), "day")] == ["soak", "cook"]


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
