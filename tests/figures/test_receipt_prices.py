"""The price book takes in what was paid: one change, one undo."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from binder.figures.price import chosen_pack
from binder.figures.receipt_prices import prices_from_receipts
from binder.figures.receipts import food_receipts
from binder.kitchen.binder import Binder
from binder.kitchen.buying import Purchase
from binder.kitchen.change import apply
from binder.kitchen.price import Quote
from binder.kitchen.record import Record
from tests.kitchen_binder import small_binder

SMALL = small_binder()
BOUGHT_ON = date(2026, 12, 2)


def jar(key: str = "p", **fields: object) -> Purchase:
    given = {"pack": "pack-tahini", "planned": 600, "on": BOUGHT_ON, **fields}
    return Purchase(id=key, shoot="day", food="tahini", **given)  # type: ignore[arg-type]


def updated(*records: Record) -> Binder:
    binder = small_binder(*records)
    change = prices_from_receipts(binder, "day")
    after = apply(binder, change)
    assert apply(after, change.inverse()) == binder
    return after


def newest(binder: Binder) -> Quote:
    return max(binder.quotes.where("pack", "pack-tahini"), key=lambda quote: quote.on)


def test_what_was_paid_becomes_the_price_of_the_day() -> None:
    after = updated(jar(paid=660))
    quote = newest(after)
    assert (quote.price, quote.on, quote.source) == (660, BOUGHT_ON, "receipt of Bean day")
    assert len(after.quotes.where("pack", "pack-tahini")) == 2
    chosen = chosen_pack(after, "tahini")
    assert chosen.price == 660  # type: ignore[union-attr]
    assert prices_from_receipts(small_binder(jar(paid=660)), "day").label == "Take prices from the receipts of Bean day"


def test_the_books_say_the_same_before_and_after() -> None:
    before, after = small_binder(jar(paid=660)), updated(jar(paid=660))
    for binder in (before, after):
        (found,) = [one for one in food_receipts(binder, "day") if one.food == "tahini"]
        assert (found.planned, found.paid, found.variance) == (600, 660, 60)


def test_three_jars_give_the_price_of_one() -> None:
    assert newest(updated(jar(paid=2000, count=3))).price == 667


def test_a_price_asked_that_day_gives_way() -> None:
    same_day = Quote(id="that-day", pack="pack-tahini", price=640, on=BOUGHT_ON)
    after = updated(same_day, jar(paid=660))
    assert after.quotes["that-day"].price == 660
    assert len(after.quotes.where("pack", "pack-tahini")) == 2


def test_an_offer_that_the_receipt_bears_out_stays() -> None:
    offered = replace(SMALL.quotes["quote-tahini"], bundle_packs=3, bundle_price=1200)
    quote = newest(updated(offered, jar(paid=1200, count=3)))
    assert (quote.price, quote.bundle_packs, quote.bundle_price, quote.on) == (600, 3, 1200, BOUGHT_ON)
    ended = newest(updated(offered, jar(paid=1800, count=3)))
    assert (ended.price, ended.bundle_packs) == (600, None)


def test_two_receipts_of_a_day_give_their_mean() -> None:
    assert newest(updated(jar(paid=600), jar("q", paid=700))).price == 650


def test_what_has_no_receipt_or_no_pack_changes_nothing() -> None:
    for purchase in (jar(), jar(pack=None, paid=600), jar(count=0, paid=0)):
        assert prices_from_receipts(small_binder(purchase), "day").empty


def test_taking_prices_twice_changes_nothing_more() -> None:
    assert prices_from_receipts(updated(jar(paid=660)), "day").empty


def test_a_receipt_without_a_day_is_of_the_day_of_the_shoot() -> None:
    assert newest(updated(jar(paid=660, on=None))).on == date(2026, 12, 3)


def test_what_was_taken_instead_is_priced_as_what_it_is() -> None:
    flour = jar(pack="pack-flour", instead="flour", paid=175)
    after = updated(flour)
    assert max(after.quotes.where("pack", "pack-flour"), key=lambda quote: quote.on).price == 175
    assert newest(after).price == 600


def test_a_receipt_for_a_trace_of_a_pack_gives_no_price_beyond_what_anything_costs() -> None:
    for count in (1e-12, 5e-324):
        assert prices_from_receipts(small_binder(jar(paid=600, count=count)), "day").empty
    assert newest(updated(jar(paid=600, count=1e-9))).price == 600 * 10**9
