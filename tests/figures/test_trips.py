"""When things are bought."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, time, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.figures.shopping import needed_to_buy
from binder.figures.trips import Window, buying_clashes, buying_window, fewest_days, to_order, trip_plans
from binder.kitchen.buying import Trip
from binder.kitchen.food import Food, Keeping, Section
from binder.kitchen.price import Store
from binder.kitchen.recipe import Line
from tests.kitchen_binder import small_binder

SHOOT = date(2026, 12, 3)


def test_the_base_is_there_when_its_soaking_starts() -> None:
    # Soaking starts on 2 December at 18:30, so the beans may be fetched that day; flour the day before the shoot.
    assert buying_window(small_binder(), "day", "beans") == Window(None, date(2026, 12, 2))
    early = replace(small_binder().conversions["soak"], lead_minutes=24 * 60)
    assert buying_window(small_binder(early), "day", "beans") == Window(None, date(2026, 11, 30) + timedelta(days=1))


def test_what_keeps_three_days_is_bought_three_days_before_at_the_earliest() -> None:
    fresh = replace(small_binder().foods["onion"], keeps_days=3)
    assert buying_window(small_binder(fresh), "day", "onion") == Window(date(2026, 11, 30), date(2026, 12, 2))


def test_all_from_one_store_on_one_day_where_that_fits() -> None:
    (plan,) = trip_plans(small_binder(), "day")
    assert (plan.on, plan.store) == (date(2026, 12, 2), "corner")
    assert plan.price == sum(line.price for line in plan.lines)


def test_two_days_where_the_base_takes_long_and_the_herbs_wilt() -> None:
    small = small_binder()
    binder = small_binder(
        replace(small.conversions["soak"], lead_minutes=5 * 24 * 60), replace(small.foods["onion"], keeps_days=2)
    )
    days = {plan.on: [line.item.food for line in plan.lines] for plan in trip_plans(binder, "day")}
    assert len(days) == 2
    assert days[date(2026, 11, 27)] == ["beans"]
    assert "onion" in days[date(2026, 12, 2)]


def test_the_producers_own_days_come_first_and_a_bad_one_is_named() -> None:
    trip = Trip(id="t", shoot="day", store="corner", on=date(2026, 11, 28))
    fresh = replace(small_binder().foods["onion"], keeps_days=3)
    binder = small_binder(trip, fresh)
    assert {plan.on for plan in trip_plans(binder, "day")} == {date(2026, 11, 28)}
    (clash,) = buying_clashes(binder, "day")
    assert "onion" in clash.says
    assert clash.place.id == "onion"
    assert "on Nov 28, 2026 does not keep" in clash.says
    assert "from Nov 30, 2026 on" in clash.says
    late = buying_clashes(small_binder(replace(trip, on=SHOOT)), "day")
    assert late
    assert all("on Dec 3, 2026, after it is needed on Dec 2, 2026" in clash.says for clash in late)


def test_the_list_is_walked_in_the_stores_own_order() -> None:
    corner = Store(id="corner", name="Corner Larder", sections=(str(Section.BAKING), str(Section.OILS_AND_VINEGARS)))
    (plan,) = trip_plans(small_binder(corner), "day")
    assert [line.item.food for line in plan.lines[:2]] == ["flour", "oil"]


def test_what_is_ordered_ahead_has_a_day_to_phone_by() -> None:
    ordered = replace(small_binder().foods["onion"], order_days=4)
    ((by, plan, line),) = to_order(small_binder(ordered), "day")
    assert (by, line.item.food) == (date(2026, 11, 28), "onion")
    assert plan.on == date(2026, 12, 2)


def test_what_nobody_is_known_to_sell_is_ordered_ahead_too() -> None:
    small = small_binder()
    sumac = Food(id="sumac", name="sumac", order_days=4)
    line = Line(id="sumac-line", step="bread/2", position=1, food="sumac", low=1, high=1, unit="g")
    ((by, plan, ordered),) = to_order(small_binder(sumac, line), "day")
    assert (by, ordered.item.food, ordered.packs) == (date(2026, 11, 28), "sumac", ())
    assert (plan.on, plan.store) == (date(2026, 12, 2), None)
    earlier = Trip(id="t", shoot="day", store="corner", on=date(2026, 11, 30))
    ((by, plan, _ordered),) = to_order(small_binder(sumac, line, earlier), "day")
    assert (by, plan.on) == (date(2026, 11, 26), date(2026, 11, 30))
    undated = replace(small.shoots["day"], on=None)
    assert to_order(small_binder(sumac, line, undated), "day") == ()


def test_the_first_day_of_the_calendar_has_no_day_before() -> None:
    small = small_binder()
    first = replace(small.shoots["day"], on=date.min)
    binder = small_binder(first, replace(small.foods["onion"], keeps_days=3, order_days=4))
    assert buying_window(binder, "day", "onion") == Window(date.min, date.min)
    assert {plan.on for plan in trip_plans(binder, "day")} == {date.min}
    assert [by for by, _plan, _line in to_order(binder, "day")] == [date.min]


def test_without_a_date_there_is_a_list_without_days() -> None:
    (plan,) = trip_plans(small_binder(replace(small_binder().shoots["day"], on=None)), "day")
    assert plan.on is None
    assert len(plan.lines) == 6


WINDOWS = st.lists(
    st.tuples(st.integers(0, 20), st.integers(0, 10)).map(
        lambda pair: Window(SHOOT - timedelta(days=pair[0] + pair[1]), SHOOT - timedelta(days=pair[0]))
    ),
    max_size=7,
)


@given(WINDOWS)
def test_no_fewer_days_would_do(windows: list[Window]) -> None:
    days = fewest_days(windows)
    assert all(any((one.first or day) <= day <= one.last for day in days) for one in windows)
    assert len(days) == _fewest_by_trying(windows)


def _fewest_by_trying(windows: list[Window]) -> int:
    import itertools

    ends = sorted({one.last for one in windows})
    for count in range(len(ends) + 1):
        for days in itertools.combinations(ends, count):
            if all(any((one.first or day) <= day <= one.last for day in days) for one in windows):
                return count
    pytest.fail("the last days of all windows always do")


@pytest.mark.parametrize(
    ("call", "grams", "last"),
    [
        # 24 hours in the refrigerator up to 5 pounds; in the morning nothing is there yet that is fetched that day.
        (time(9, 0), 400, date(2026, 12, 1)),
        (time(14, 0), 400, date(2026, 12, 2)),
        # 5 kg are 11.02 pounds: 24 hours for each 4 of them begun.
        (time(14, 0), 5000, date(2026, 11, 30)),
    ],
)
def test_what_is_frozen_is_there_in_time_to_thaw(call: time, grams: float, last: date) -> None:
    small = small_binder()
    shoot = replace(small.shoots["day"], call=call)
    fish = Food(id="fish", name="fish", keeping=Keeping.FROZEN, temperature_control=True)
    line = Line(id="fish-line", step="bread/2", position=1, food="fish", low=grams, high=grams, unit="g")
    binder = small_binder(shoot, fish, line)
    assert needed_to_buy(binder, "day")["fish"] == pytest.approx(grams)
    assert buying_window(binder, "day", "fish") == Window(None, last)
    peas = replace(fish, temperature_control=False)
    assert buying_window(small_binder(shoot, peas, line), "day", "fish") == Window(None, date(2026, 12, 2))
