"""The shopping list line by line."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from binder.exchange.shopping_lines import (
    day_words,
    lines_without_packs,
    shopping_trips,
    to_order_first,
)
from binder.exchange.shopping_text import shopping_text
from binder.figures.shopping import shopping_list
from binder.kitchen.buying import Purchase
from binder.kitchen.price import Pack, Quote
from tests.exchange.buying_day import buying_day
from tests.kitchen_binder import small_binder


def test_every_item_of_the_list_stands_in_it_once() -> None:
    binder = buying_day()
    fetched = [line.item.food for trip in shopping_trips(binder, "day") for line in trip.lines]
    others = [line.item.food for line in lines_without_packs(binder, "day")]
    assert sorted(fetched + others) == sorted(item.food for item in shopping_list(binder, "day").items)
    assert others == ["sumac", "salt"]


def test_trips_come_to_what_the_list_does() -> None:
    binder = buying_day()
    trips = shopping_trips(binder, "day")
    assert sum(trip.price for trip in trips) == shopping_list(binder, "day").known_spend
    assert [(trip.on, trip.store, trip.price, trip.deposit) for trip in trips] == [
        (date(2026, 12, 2), "Corner Larder", 1746, 25),
        (date(2026, 12, 2), "Market Hall", 1400, 0),
    ]


def test_sections_stand_in_walking_order() -> None:
    (corner, _hall) = shopping_trips(buying_day(), "day")
    assert [section for section, _lines in corner.sections] == [
        "baking",
        "oils and vinegars",
        "produce",
        "tins and jars",
    ]


def test_a_food_in_two_packs_says_what_is_needed_once() -> None:
    small = small_binder()
    binder = small_binder(
        replace(small.shoots["day"], base_amount=1.2),
        Pack(id="little", food="beans", store="corner", size=200, unit="g"),
        Quote(id="little-price", pack="little", price=85, on=date(2026, 11, 2)),
    )
    (trip,) = shopping_trips(binder, "day")
    beans = [line for line in trip.lines if line.item.food == "beans"]
    assert [(line.take, line.needed, line.left_over) for line in beans] == [
        ("1 × 1000 g", 1200.0, 0.0),
        ("1 × 200 g", None, None),
    ]


def test_an_offer_is_named_where_it_counts() -> None:
    (_corner, hall) = shopping_trips(buying_day(), "day")
    (beans,) = hall.lines
    assert (beans.take, beans.offer, beans.price) == ("4 × 250 g, sack", "3 for $10.00", 1400)


@pytest.mark.parametrize(
    ("purchase", "done"),
    [
        (Purchase(id="x", shoot="day", food="onion", pack="pack-onion"), "bought"),
        (Purchase(id="x", shoot="day", food="onion"), "bought"),
        (Purchase(id="x", shoot="day", food="onion", count=0), "not to be had"),
        (Purchase(id="x", shoot="day", food="onion", instead="flour"), "flour instead"),
        (Purchase(id="x", shoot="day", food="onion", pack="pack-oil"), ""),
        (Purchase(id="x", shoot="day", food="oil"), ""),
    ],
)
def test_what_became_of_a_line_is_said(purchase: Purchase, done: str) -> None:
    (trip,) = shopping_trips(small_binder(purchase), "day")
    assert next(line.done for line in trip.lines if line.item.food == "onion") == done


def test_what_is_ordered_ahead_comes_by_the_day_to_call() -> None:
    late = replace(buying_day().foods["onion"], order_days=1)
    orders = to_order_first(shopping_trips(buying_day(late), "day"))
    assert [(line.food, line.order_by) for _trip, line in orders] == [
        ("beans, dried", date(2026, 11, 28)),
        ("onion", date(2026, 12, 1)),
    ]


def test_what_nobody_is_known_to_sell_is_ordered_ahead_too() -> None:
    binder = buying_day(replace(buying_day().foods["sumac"], order_days=7))
    orders = to_order_first(shopping_trips(binder, "day"), lines_without_packs(binder, "day"))
    trip, line = orders[0]
    assert (line.food, line.order_by, line.take) == ("sumac", date(2026, 11, 25), "")
    assert (trip.on, trip.store) == (None, "")
    assert "sumac" in shopping_text(binder, "day").partition("Corner Larder")[0]


def test_a_day_has_its_day_of_the_week_in_the_binders_language() -> None:
    german = replace(small_binder().settings, locale="de_DE")
    unknown = replace(small_binder().settings, locale="xx_XX")
    assert day_words(small_binder(), date(2026, 12, 2)) == "Wed, Dec 2, 2026"
    assert day_words(small_binder(german), date(2026, 12, 2)) == "Mi., 2. Dez. 2026"
    assert day_words(small_binder(unknown), date(2026, 12, 2)) == "Wed, Dec 2, 2026"
