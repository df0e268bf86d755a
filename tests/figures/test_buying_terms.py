"""The producer's wishes on the shopping list: pantry, offers, counters, stores, waste."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from binder.figures.buying_terms import is_perishable, waste_rate
from binder.figures.shopping import ShoppingItem, next_best, shopping_list
from binder.figures.takes import takes
from binder.kitchen.binder import Binder
from binder.kitchen.buying import PantryItem
from binder.kitchen.food import Food, Keeping
from binder.kitchen.price import Pack, Quote, Store
from tests.kitchen_binder import small_binder

DAY = date(2026, 11, 2)


def item_of(binder: Binder, food: str) -> ShoppingItem:
    return next(item for item in shopping_list(binder, "day").items if item.food == food)


def test_what_is_at_home_is_not_bought() -> None:
    # Flour: 500 g needed; with 600 g at home none is bought, with 100 g one pack still is.
    there = item_of(small_binder(PantryItem(id="p", shoot="day", food="flour", amount=600, unit="g")), "flour")
    assert (there.packs, there.spend, there.missing) == ((), 0, None)
    assert there.left_over == pytest.approx(100)
    some = item_of(small_binder(PantryItem(id="p", shoot="day", food="flour", amount=100, unit="g")), "flour")
    assert some.spend == 150
    assert some.left_over == pytest.approx(600)


def test_a_food_at_home_needs_no_price() -> None:
    binder = small_binder()
    gone = small_binder(
        PantryItem(id="p", shoot="day", food="flour", amount=1, unit="kg"),
        replace(binder.packs["pack-flour"], on_sale=False),
    )
    assert item_of(gone, "flour").missing is None
    assert shopping_list(gone, "day").spend is not None


def test_a_pack_the_store_has_not_got_is_not_chosen() -> None:
    small = small_binder()
    gone = small_binder(replace(small.packs["pack-flour"], on_sale=False))
    assert item_of(gone, "flour").missing is not None
    other = Pack(id="other", food="flour", size=500, unit="g"), Quote(id="q", pack="other", price=120, on=DAY)
    assert item_of(small_binder(replace(small.packs["pack-flour"], on_sale=False), *other), "flour").spend == 120


def test_three_for_two_is_taken_where_it_pays() -> None:
    small = small_binder()
    tins = replace(small.packs["pack-tahini"], size=50, unit="g")
    quote = replace(small.quotes["quote-tahini"], price=100, bundle_packs=3, bundle_price=200)
    tahini = item_of(small_binder(tins, quote), "tahini")  # 150 g needed: three packs
    assert (tahini.packs[0].count, tahini.spend) == (3, 200)


def test_the_counter_sells_just_as_much_as_is_needed() -> None:
    small = small_binder()
    counter = replace(small.packs["pack-flour"], by_weight=True, least=50)
    flour = item_of(small_binder(counter), "flour")
    assert flour.packs[0].grams == 500
    assert (flour.spend, flour.left_over) == (75, 0)


def test_a_deposit_comes_back_and_is_told_apart() -> None:
    small = small_binder()
    oil = item_of(small_binder(replace(small.packs["pack-oil"], deposit=15)), "oil")
    assert (oil.spend, oil.deposit) == (900, 15)


def test_at_most_so_many_stores() -> None:
    elsewhere = (
        Store(id="far", name="Far Barn"),
        Pack(id="cheap", food="flour", store="far", size=1000, unit="g"),
        Quote(id="cheap-quote", pack="cheap", price=100, on=DAY),
    )
    small = small_binder()
    assert item_of(small_binder(*elsewhere), "flour").spend == 100
    one = replace(small.shoots["day"], most_stores=1)
    assert item_of(small_binder(*elsewhere, one), "flour").spend == 150
    dear_trip = small_binder(*elsewhere, Store(id="far", name="Far Barn", trip_cost=60))
    assert item_of(dear_trip, "flour").spend == 150
    only_far = replace(small.packs["pack-oil"], store="far")
    stuck = shopping_list(small_binder(*elsewhere, one, only_far), "day")
    assert stuck.spend is None
    assert "allow more stores" in stuck.missing[0].says


def test_a_big_pack_of_what_goes_off_is_not_cheap_where_waste_counts() -> None:
    small = small_binder()
    chilled = replace(small.foods["tahini"], keeping=Keeping.CHILLED)
    little = Pack(id="little", food="tahini", size=160, unit="g"), Quote(id="l", pack="little", price=620, on=DAY)
    assert item_of(small_binder(chilled, *little), "tahini").packs[0].priced.pack.id == "pack-tahini"
    waste = replace(small.shoots["day"], waste_value=1.0)
    assert item_of(small_binder(chilled, *little, waste), "tahini").packs[0].priced.pack.id == "little"
    assert waste_rate(small_binder(chilled, waste), "day", "tahini") == pytest.approx(2.0)
    assert waste_rate(small_binder(waste), "day", "tahini") == 0


def test_what_keeps_two_weeks_at_most_is_perishable() -> None:
    assert is_perishable(Food(id="f", name="f", keeps_days=14))
    assert not is_perishable(Food(id="f", name="f", keeps_days=15))
    assert is_perishable(Food(id="f", name="f", keeping=Keeping.CHILLED))


def test_why_this_pack_says_what_the_next_best_would_have_cost() -> None:
    other = Pack(id="other", food="flour", size=250, unit="g"), Quote(id="q", pack="other", price=90, on=DAY)
    best = next_best(small_binder(*other), "day", "flour")
    assert best is not None
    assert (best.packs[0].count, best.more) == (2, 30)
    assert next_best(small_binder(), "day", "flour") is None


def test_what_is_at_home_makes_more_takes() -> None:
    binder = small_binder(PantryItem(id="p", shoot="day", food="tahini", amount=120, unit="g"))
    without, found = takes(small_binder(), "dish-spread"), takes(binder, "dish-spread")
    assert (without.possible, without.limited_by) == (2, "tahini")
    assert (found.possible, found.limited_by) == (4, "cooked"), "both give out then, and tahini can be fetched"
