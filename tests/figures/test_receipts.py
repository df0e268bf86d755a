"""What became of each line of the list: the plan as it was when ticked, what was paid, and what is still open."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from binder.figures.receipts import FoodReceipt, food_receipts
from binder.kitchen.binder import Binder
from binder.kitchen.buying import Purchase
from binder.kitchen.food import Food
from binder.kitchen.price import Pack, Quote
from binder.kitchen.record import Record
from tests.kitchen_binder import small_binder

SMALL = small_binder()  # its list asks for one jar of tahini, 300 g at 600, among other things


def bought(key: str = "p", **fields: object) -> Purchase:
    return Purchase(id=key, shoot="day", food="tahini", **fields)  # type: ignore[arg-type]


def tahini(*records: Record) -> FoodReceipt:
    return receipt(small_binder(*records), "tahini")


def receipt(binder: Binder, food: str) -> FoodReceipt:
    return next(one for one in food_receipts(binder, "day") if one.food == food)


def test_a_line_that_is_open() -> None:
    found = tahini()
    assert (found.planned, found.committed, found.paid, found.expected) == (600, None, None, 600)
    assert (found.planned_grams, found.expected_grams, found.paid_grams) == (300, 300, 0)
    assert (found.waits, found.variance, found.is_listed) == (True, None, True)


def test_a_line_that_is_ticked_costs_what_is_asked_until_its_receipt_is_in() -> None:
    found = tahini(bought(pack="pack-tahini", planned=600))
    assert (found.planned, found.committed, found.paid, found.expected) == (600, 600, None, 600)
    assert found.waits


def test_a_receipt_settles_a_line() -> None:
    found = tahini(bought(pack="pack-tahini", planned=600, paid=649))
    assert (found.committed, found.paid, found.expected, found.variance) == (649, 649, 649, 49)
    assert (found.paid_grams, found.waits) == (300, False)


def test_a_later_price_does_not_change_what_was_planned() -> None:
    later = Quote(id="later", pack="pack-tahini", price=649, on=date(2026, 12, 2))
    assert tahini(later).planned == 649
    assert tahini(later, bought(pack="pack-tahini", planned=600, paid=649)).variance == 49


def test_a_tick_without_a_plan_or_a_pack_is_the_line_as_it_stands() -> None:
    found = tahini(bought(paid=620))
    assert (found.planned, found.paid, found.variance) == (600, 620, 20)
    assert found.paid_grams == 300


def test_of_two_packs_one_may_be_open() -> None:
    # 450 g at home need not be bought; a need of 750 g takes a large tin and a small one
    tins = [
        Pack(id="large", food="tahini", store="corner", size=600, unit="g"),
        Quote(id="large/1", pack="large", price=900, on=date(2026, 11, 2)),
    ]
    more = replace(SMALL.lines["spread/1/2"], low=20.0, high=20.0)  # 15 g a spoon: 300 g a batch, 750 g in all
    found = tahini(*tins, more)
    assert (found.planned, found.planned_grams) == (1500, 900)
    half = tahini(*tins, more, bought(pack="large", planned=900, paid=950))
    assert (half.planned, half.committed, half.paid, half.expected) == (1500, 950, 950, 950 + 600)
    assert (half.waits, half.variance) == (True, None)
    both = tahini(*tins, more, bought(pack="large", paid=950), bought("q", pack="pack-tahini", paid=600))
    assert (both.planned, both.paid, both.variance) == (1500, 1550, 50)


def test_another_food_taken_instead_is_held_against_the_line() -> None:
    found = tahini(bought(pack="pack-flour", instead="flour", planned=600, paid=150))
    assert (found.planned, found.paid, found.variance) == (600, 150, -450)
    assert found.paid_grams == 1000
    unplanned = tahini(bought(pack="pack-flour", instead="flour", paid=150))
    assert unplanned.planned == 600


def test_what_was_not_to_be_had_is_settled_for_nothing() -> None:
    found = tahini(bought(count=0, planned=600, paid=0))
    assert (found.planned, found.paid, found.variance, found.paid_grams) == (600, 0, -600, 0)
    assert not found.waits


def test_what_was_bought_beside_the_list_was_not_planned() -> None:
    sumac = [
        Food(id="sumac", name="sumac"),
        Pack(id="sumac/1", food="sumac", size=50, unit="g"),
        Quote(id="sumac/1/1", pack="sumac/1", price=250, on=date(2026, 11, 2)),
        replace(bought(pack="sumac/1", count=2), food="sumac"),
    ]
    found = receipt(small_binder(*sumac), "sumac")
    assert (found.planned, found.committed, found.paid, found.is_listed) == (0, 500, None, False)
    assert found.committed_grams == 100


def test_an_offer_counts_where_no_receipt_says_otherwise() -> None:
    offered = replace(SMALL.quotes["quote-tahini"], bundle_packs=3, bundle_price=1200)
    assert tahini(offered, bought(pack="pack-tahini", count=4)).committed == 1200 + 600
    flour = replace(bought(pack="pack-tahini", count=4), food="flour")
    assert receipt(small_binder(offered, flour), "flour").committed == 1200 + 600


@pytest.mark.parametrize("count", [0.5, 2.5])
def test_at_the_counter_a_part_of_a_pack_costs_a_part_of_its_price(count: float) -> None:
    counter = replace(SMALL.packs["pack-tahini"], by_weight=True)
    flour = replace(bought(pack="pack-tahini", count=count), food="flour")
    found = receipt(small_binder(counter, flour), "flour")
    assert found.committed == 600 * count
    assert found.committed_grams == 300 * count


def test_a_food_without_a_price_is_not_known_until_it_is_bought() -> None:
    gone = replace(SMALL.packs["pack-tahini"], on_sale=False)
    open_line = tahini(gone)
    assert (open_line.planned, open_line.expected, open_line.waits) == (None, None, True)
    assert open_line.missing is not None
    assert tahini(gone, bought(paid=700)).paid == 700
