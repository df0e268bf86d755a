"""Prices over time, by the unit a food is sold by, and a rise of all of them that is only a question."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.figures.cost import dish_cost
from binder.figures.price_history import price_history, raised_by, sold_by, unit_price, unit_price_text
from binder.figures.shopping import shopping_list
from binder.kitchen.binder import Binder, every_record
from binder.kitchen.money import LARGEST_PRICE
from binder.kitchen.price import Pack, Quote
from binder.kitchen.settings import Measures
from tests.kitchen_binder import small_binder
from tests.strategies import binders

SMALL = small_binder()
POUND = 453.59237


def each(binder: Binder, pack: str, quote: str) -> str:
    found = unit_price(binder, binder.packs[pack], binder.quotes[quote])
    assert found is not None
    return unit_price_text(binder, found)


def test_a_history_runs_from_the_oldest_and_says_how_prices_rose() -> None:
    binder = small_binder(
        Quote(id="b", pack="pack-tahini", price=500, on=date(2026, 3, 1)),
        Quote(id="a", pack="pack-tahini", price=400, on=date(2025, 3, 1)),
    )
    points = price_history(binder, "pack-tahini")
    assert [(point.on, point.price) for point in points] == [
        (date(2025, 3, 1), 400),
        (date(2026, 3, 1), 500),
        (date(2026, 11, 2), 600),
    ]
    assert [point.change for point in points] == [None, pytest.approx(0.25), pytest.approx(0.2)]
    assert [point.each.minor for point in points if point.each] == pytest.approx([4000 / 3, 5000 / 3, 2000])


def test_a_pack_without_a_price_has_no_history() -> None:
    assert price_history(small_binder(Pack(id="bare", food="oil", size=1, unit="l")), "bare") == ()


def test_packs_in_grams_are_priced_by_the_kilogram_and_in_ounces_by_the_pound() -> None:
    assert each(SMALL, "pack-tahini", "quote-tahini") == "$20.00 a kg"
    assert each(SMALL, "pack-onion", "quote-onion") == "$0.90 a lb"
    assert each(SMALL, "pack-oil", "quote-oil") == "$18.00 a l"


def test_packs_of_one_food_are_compared_by_one_unit() -> None:
    # a lemon of 110 g as bought beside a bag of 2 lb: by the pound a lemon is 69 x 453.59 / 110 = 284.5
    lemons = small_binder(
        Pack(id="one", food="onion", size=1, unit="each"), Quote(id="one/1", pack="one", price=69, on=date(2026, 11, 2))
    )
    assert sold_by(lemons, "onion") == "lb"
    found = unit_price(lemons, lemons.packs["one"], lemons.quotes["one/1"])
    assert found is not None
    assert found.minor == pytest.approx(69 * POUND / (110 / 0.9))


def test_what_is_only_sold_by_the_piece_is_priced_by_the_piece() -> None:
    six = replace(SMALL.packs["pack-onion"], size=6, unit="each")
    binder = small_binder(six)
    assert sold_by(binder, "onion") == "each"
    assert each(binder, "pack-onion", "quote-onion") == "$0.30 each"
    assert each(small_binder(replace(six, size=60)), "pack-onion", "quote-onion") == "$0.030 each"


def test_tins_go_by_the_binders_own_measures() -> None:
    tin = replace(SMALL.packs["pack-tahini"], size=1, unit="(14 oz) can")
    assert sold_by(small_binder(tin), "tahini") == "lb"
    metric = replace(SMALL.settings, measures=Measures.METRIC)
    assert sold_by(small_binder(tin, metric), "tahini") == "kg"
    assert sold_by(SMALL, "water") == "lb"


def test_what_cannot_be_weighed_has_no_unit_price() -> None:
    odd = replace(SMALL.packs["pack-tahini"], size=1, unit="bunch")
    assert unit_price(small_binder(odd), odd, SMALL.quotes["quote-tahini"]) is None


def test_a_rise_of_all_prices_is_a_value_of_its_own() -> None:
    before = every_record(SMALL)
    dearer = raised_by(SMALL, 4)
    assert dearer.quotes["quote-tahini"].price == 624
    assert every_record(SMALL) == before
    cost, raised = (dish_cost(binder, "dish-spread").per_portion for binder in (SMALL, dearer))
    assert raised == pytest.approx((cost or 0) * 1.04)
    assert shopping_list(dearer, "day").spend == 2423  # each pack rounded: 416 + 187 + 936 + 624 + 156 + 104


def test_offers_rise_as_well_and_halves_round_up() -> None:
    offered = small_binder(replace(SMALL.quotes["quote-tahini"], price=50, bundle_packs=2, bundle_price=90))
    quote = raised_by(offered, 5).quotes["quote-tahini"]
    assert (quote.price, quote.bundle_price) == (53, 95)  # 52.5 and 94.5


def test_no_price_falls_below_nothing_or_rises_out_of_bounds() -> None:
    assert {quote.price for quote in raised_by(SMALL, -150).quotes.values()} == {0}
    assert {quote.price for quote in raised_by(SMALL, 1e300).quotes.values()} == {LARGEST_PRICE}


@given(binders(), st.floats(-100, 1000))
def test_any_book_can_be_raised_and_read(binder: Binder, percent: float) -> None:
    after = raised_by(binder, percent)
    assert {key: quote.pack for key, quote in after.quotes.items()} == {
        key: quote.pack for key, quote in binder.quotes.items()
    }
    for pack in binder.packs:
        points = price_history(after, pack)
        assert [point.on for point in points] == sorted(point.on for point in points)
        assert all(unit_price_text(after, point.each) for point in points if point.each)
    if percent == 0:
        assert after == binder
