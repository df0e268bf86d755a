"""Whatever is said about buying can be undone, and says the same thing only once."""

from __future__ import annotations

from datetime import date

import pytest

from binder.kitchen.binder import Binder
from binder.kitchen.change import Change, apply
from binder.kitchen.edits.buying import (
    add_pantry_item,
    add_trip,
    move_section,
    not_to_be_had,
    purchases_of,
    remove_bundle,
    remove_pantry_item,
    remove_trip,
    set_bundle,
    set_counter,
    set_on_sale,
    set_pantry_item,
    set_purchase,
    set_store,
    set_trip,
    take_instead,
    tick,
    untick,
    walking_order,
)
from binder.kitchen.food import Section
from binder.kitchen.record import UnfitValueError
from tests.kitchen_binder import small_binder

SMALL = small_binder()
DAY = SMALL.shoots["day"]
TAHINI, FLOUR = SMALL.foods["tahini"], SMALL.foods["flour"]
JAR = SMALL.packs["pack-tahini"]
CORNER = SMALL.stores["corner"]


def done(change: Change, binder: Binder = SMALL) -> Binder:
    """The binder after a change that undoes."""
    after = apply(binder, change)
    assert apply(after, change.inverse()) == binder
    assert change.label
    return after


def test_the_pantry_is_filled_corrected_and_emptied() -> None:
    change, item = add_pantry_item(SMALL, DAY, TAHINI, amount=200)
    assert change.label == "Add tahini to the pantry"
    filled = done(change)
    corrected = done(set_pantry_item(filled, item, amount=1, unit="tbsp"), filled)
    now = corrected.pantry_items[item.id]
    assert (now.amount, now.unit) == (1, "tbsp")
    assert not done(remove_pantry_item(corrected, now), corrected).pantry_items


def test_trips_stand_in_the_order_they_were_made() -> None:
    change, first = add_trip(SMALL, DAY, CORNER, on=date(2026, 12, 1))
    once = done(change)
    change, second = add_trip(once, DAY, CORNER, on=date(2026, 12, 2))
    twice = done(change, once)
    assert [trip.id for trip in twice.trips.where("shoot", "day")] == [first.id, second.id]
    later = done(set_trip(twice, twice.trips[second.id], on=date(2026, 12, 3)), twice)
    assert later.trips[second.id].on == date(2026, 12, 3)
    left = done(remove_trip(later, first), later)
    assert [trip.position for trip in left.trips.values()] == [0]


def test_a_line_is_ticked_once_however_often_it_is_tapped() -> None:
    once = done(tick(SMALL, DAY, TAHINI, pack=JAR, count=1, planned=600))
    again = done(tick(once, DAY, TAHINI, pack=JAR, count=2, planned=1200, paid=1150, on=date(2026, 12, 1)), once)
    (purchase,) = purchases_of(again, DAY.id, TAHINI.id)
    assert (purchase.count, purchase.planned, purchase.paid) == (2, 1200, 1150)
    dearer = done(set_purchase(again, purchase, paid=1199), again)
    assert dearer.purchases[purchase.id].paid == 1199
    assert not done(untick(dearer, dearer.purchases[purchase.id]), dearer).purchases


def test_two_packs_of_one_food_are_two_ticks() -> None:
    once = done(tick(SMALL, DAY, TAHINI, pack=JAR))
    assert len(done(tick(once, DAY, TAHINI), once).purchases) == 2


def test_another_food_taken_instead_puts_an_end_to_what_was_ticked() -> None:
    once = done(tick(SMALL, DAY, TAHINI, pack=JAR, paid=600))
    instead = done(
        take_instead(once, DAY, TAHINI, instead=FLOUR, pack=SMALL.packs["pack-flour"], planned=600, paid=150), once
    )
    (purchase,) = purchases_of(instead, DAY.id, TAHINI.id)
    assert (purchase.food, purchase.instead, purchase.pack) == ("tahini", "flour", "pack-flour")
    found = done(tick(instead, DAY, TAHINI, pack=JAR, paid=610), instead)
    assert [one.instead for one in purchases_of(found, DAY.id, TAHINI.id)] == [None]


def test_what_is_not_to_be_had_is_said_and_taken_back() -> None:
    without = done(not_to_be_had(SMALL, DAY, TAHINI, planned=600))
    (purchase,) = purchases_of(without, DAY.id, TAHINI.id)
    assert (purchase.count, purchase.paid, purchase.planned) == (0, 0, 600)
    assert purchases_of(done(tick(without, DAY, TAHINI, pack=JAR), without), DAY.id, TAHINI.id)[0].count == 1


def test_a_store_without_a_pack_is_said_by_name() -> None:
    change = set_on_sale(SMALL, JAR, on_sale=False)
    assert change.label == "tahini is not on sale"
    gone = done(change)
    assert not gone.packs[JAR.id].on_sale
    assert set_on_sale(gone, gone.packs[JAR.id], on_sale=True).label == "tahini is on sale again"


def test_a_counter_sells_by_weight_from_so_much_upward() -> None:
    pack = done(set_counter(SMALL, JAR, by_weight=True, least=100)).packs[JAR.id]
    assert (pack.by_weight, pack.least) == (True, 100)


def test_what_a_trip_costs_and_what_avoiding_it_is_worth() -> None:
    store = done(set_store(CORNER, trip_cost=450, avoided=100)).stores["corner"]
    assert (store.trip_cost, store.avoided) == (450, 100)


def test_every_section_has_a_place_on_the_way_through_the_store() -> None:
    assert walking_order(CORNER) == tuple(str(section) for section in Section)
    store = done(move_section(CORNER, Section.FROZEN, to=0)).stores["corner"]
    assert walking_order(store)[:2] == ("frozen", "produce")
    assert set(walking_order(store)) == set(Section)
    last = move_section(store, "frozen", to=99).edits[0].after
    assert last is not None
    assert walking_order(last)[-1] == "frozen"  # type: ignore[arg-type]


def test_an_offer_on_several_packs_comes_and_goes() -> None:
    quote = SMALL.quotes["quote-tahini"]
    offered = done(set_bundle(SMALL, quote, packs=3, price=1200))
    now = offered.quotes[quote.id]
    assert (now.bundle_packs, now.bundle_price) == (3, 1200)
    assert done(remove_bundle(offered, now), offered) == SMALL
    with pytest.raises(UnfitValueError):
        set_bundle(SMALL, quote, packs=1, price=600)
