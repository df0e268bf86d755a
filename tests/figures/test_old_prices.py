"""Each price in use says of which day it is, and too old a one asks to be renewed."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

from binder.figures.old_prices import old_price_text, old_prices, priced_for, prices_in_use
from binder.kitchen.binder import Binder
from binder.kitchen.buying import Purchase
from binder.kitchen.price import Pack, Quote
from tests.kitchen_binder import small_binder

SMALL = small_binder()
DAY = SMALL.shoots["day"]  # 3 December 2026; every price is of 2 November, 31 days before


def old(binder: Binder) -> list[str]:
    return [one.priced.pack.food for one in old_prices(binder, "day")]


def test_a_price_within_the_days_allowed_is_not_old() -> None:
    assert old(small_binder(replace(DAY, quote_days=31))) == []
    assert len(old(small_binder(replace(DAY, quote_days=30)))) == 6


def test_an_old_price_says_what_it_was_and_when() -> None:
    binder = small_binder(replace(SMALL.quotes["quote-tahini"], on=date(2026, 9, 1)))
    (found,) = old_prices(binder, "day")
    assert found.days == 93
    assert old_price_text(binder, found) == (
        "tahini: $6.00 for 300 g was asked on Sep 1, 2026, 93 days before it is needed. Ask again."
    )


def test_only_prices_in_use_count() -> None:
    binder = small_binder(Quote(id="old", pack="pack-tahini", price=500, on=date(2020, 1, 1)))
    assert old(binder) == []
    assert {one.on for one in prices_in_use(binder, "day")} == {date(2026, 11, 2)}


def test_the_price_that_costs_are_worked_out_from_counts_beside_that_of_the_list() -> None:
    sack = [
        Pack(id="sack", food="tahini", store="corner", size=10, unit="kg"),
        Quote(id="sack/1", pack="sack", price=9000, on=date(2026, 11, 20)),
    ]
    in_use = {
        one.priced.pack.id for one in prices_in_use(small_binder(*sack), "day") if one.priced.pack.food == "tahini"
    }
    assert in_use == {"sack", "pack-tahini"}


def test_what_has_its_receipt_need_not_be_asked_again() -> None:
    aged = replace(SMALL.quotes["quote-tahini"], on=date(2026, 9, 1))
    paid = Purchase(id="p", shoot="day", food="tahini", pack="pack-tahini", paid=650)
    assert old(small_binder(aged, paid)) == []
    assert old(small_binder(aged, replace(paid, paid=None))) == ["tahini"]


def test_a_shoot_without_a_day_is_reckoned_from_the_newest_price() -> None:
    newest = date(2026, 11, 2) + timedelta(days=100)
    binder = small_binder(replace(DAY, on=None), replace(SMALL.quotes["quote-oil"], on=newest))
    assert priced_for(binder, "day") == newest
    assert "oil" not in old(binder)
    assert "tahini" in old(binder)


def test_the_oldest_comes_first() -> None:
    binder = small_binder(replace(SMALL.quotes["quote-oil"], on=date(2026, 1, 1)))
    ages = [one.days for one in prices_in_use(binder, "day")]
    assert ages == sorted(ages, reverse=True)
    assert prices_in_use(binder, "day")[0].priced.pack.food == "oil"
