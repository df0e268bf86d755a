"""When what is frozen goes into the refrigerator, and whether it is there by then."""

from __future__ import annotations

from datetime import date, datetime, time

import pytest

from binder.figures.prep_calendar import EntryKind, prep_calendar
from binder.figures.safety_findings import SafetyKind, safety_findings
from binder.figures.thawing import Thaw, thaws
from binder.kitchen.binder import Binder
from binder.kitchen.buying import Trip
from binder.kitchen.food import Food, Keeping
from binder.kitchen.price import Pack, Quote, Store
from binder.kitchen.recipe import Line
from binder.kitchen.record import Record
from tests.figures.pinned_day import pinned_day, planned_day


def frozen_fish(grams: float, *others: Record) -> Binder:
    """Fish from the freezer, used at 10:00."""
    fish = Food(id="fish", name="fish", keeping=Keeping.FROZEN, temperature_control=True)
    line = Line(id="s1/fish", step="s1", food="fish", low=grams, high=grams, unit="g")
    return pinned_day([("10:00", {})], fish, line, *others)


def bought_on(day: date) -> tuple[Record, ...]:
    return (
        Store(id="quay", name="Quayside"),
        Pack(id="pack", food="fish", store="quay", size=1, unit="kg"),
        Quote(id="quote", pack="pack", price=900, on=date(2026, 11, 1)),
        Trip(id="trip", shoot="day", store="quay", on=day),
    )


def thaw_of(binder: Binder) -> Thaw:
    (thaw,) = thaws(binder, "day", planned_day(binder))
    return thaw


@pytest.mark.parametrize(
    ("grams", "on", "in_water"),
    [(400, date(2026, 12, 2), 30), (2000, date(2026, 12, 2), 150), (4000, date(2026, 11, 30), 270)],
)
def test_a_day_for_every_four_pounds_and_half_an_hour_a_pound_in_water(grams: float, on: date, in_water: int) -> None:
    """USDA FSIS, The Big Thaw and Turkey Basics: up to 5 lb in a day."""
    thaw = thaw_of(frozen_fish(grams))
    assert thaw.by == datetime.combine(on, time(10, 0))
    assert thaw.in_water == in_water
    assert not thaw.too_late


def test_the_days_before_say_when_to_thaw() -> None:
    binder = frozen_fish(2000)
    (entry,) = [one for one in prep_calendar(binder, "day", planned_day(binder)) if one.kind is EntryKind.THAW]
    assert (entry.key, entry.on, entry.what, entry.where) == (
        "thaw/fish",
        date(2026, 12, 2),
        "Thaw fish",
        "refrigerator",
    )
    assert entry.end is None
    assert "by 10:00 on 2 Dec 2026" in entry.details[0]


def test_what_is_fetched_after_its_thawing_has_to_begin_is_found() -> None:
    in_time, late = frozen_fish(4000, *bought_on(date(2026, 11, 29))), frozen_fish(4000, *bought_on(date(2026, 12, 1)))
    assert not thaw_of(in_time).too_late
    assert thaw_of(late).too_late
    (finding,) = [one for one in safety_findings(late, "day", planned_day(late)) if one.kind is SafetyKind.THAWING]
    assert finding.over
    assert "It is fetched on 1 Dec 2026, too late for the refrigerator" in finding.says


def test_what_needs_no_cold_is_not_thawed() -> None:
    peas = Food(id="peas", name="peas", keeping=Keeping.FROZEN)
    line = Line(id="s1/peas", step="s1", food="peas", low=100, high=100, unit="g")
    binder = pinned_day([("10:00", {})], peas, line)
    assert list(thaws(binder, "day", planned_day(binder))) == []
