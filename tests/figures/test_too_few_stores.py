"""Where too few stores may be gone to: it is said which come nearest, and what to get elsewhere."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from binder.figures.shopping import shopping_list
from binder.figures.too_few_stores import too_few_stores_text
from binder.kitchen.binder import Binder
from binder.kitchen.buying import PantryItem
from binder.kitchen.price import Pack, Quote, Store
from tests.kitchen_binder import small_binder

SMALL = small_binder(Store(id="far", name="Far Barn"), Store(id="hall", name="Market Hall"))


def one_store(*others: Pack | PantryItem | Quote) -> Binder:
    """One store may be gone to, and oil is sold elsewhere only."""
    small = small_binder()
    shoot = replace(small.shoots["day"], most_stores=1)
    return small_binder(Store(id="far", name="Far Barn"), shoot, replace(small.packs["pack-oil"], store="far"), *others)


def test_the_store_that_comes_nearest_is_named_with_what_it_has_not() -> None:
    assert shopping_list(one_store(), "day").missing[0].says == (
        "No store alone sells everything on the list. Corner Larder comes nearest, without olive oil: "
        "allow more stores."
    )


def test_of_many_foods_the_first_are_named() -> None:
    sold = {"oil": ["far"], "flour": ["hall"], "onion": ["corner"], "tahini": ["corner"]}
    assert "Corner Larder comes nearest, without flour and olive oil:" in too_few_stores_text(SMALL, 1, sold)
    assert "Corner Larder and Far Barn come nearest, without flour:" in too_few_stores_text(SMALL, 2, sold)
    more = {**sold, "salt": ["far"], "beans": ["far", "hall"], "water": ["hall"]}
    assert "Far Barn comes nearest, without flour, onion, tahini and water:" in too_few_stores_text(SMALL, 1, more)
    last = {**more, "cooked": ["hall"], "soaked": ["far"]}
    assert "without cooked beans, flour, onion and 2 more:" in too_few_stores_text(SMALL, 1, last)


def test_what_there_is_enough_of_at_home_is_not_in_question() -> None:
    home = PantryItem(id="home", shoot="day", food="flour", amount=5, unit="kg")
    items = {item.food: item for item in shopping_list(one_store(home), "day").items}
    assert items["flour"].missing is None
    assert items["onion"].missing is not None


def test_what_is_missing_for_a_reason_of_its_own_says_that() -> None:
    small = small_binder()
    gone = replace(small.packs["pack-flour"], on_sale=False)
    bought = shopping_list(one_store(gone), "day")
    flour = next(item for item in bought.items if item.food == "flour")
    assert flour.missing is not None
    assert "No price for flour" in flour.missing.says
    assert "without olive oil:" in bought.missing[0].says


def test_what_any_store_sells_needs_no_store_more() -> None:
    anywhere = Pack(id="any", food="oil", size=1, unit="l")
    binder = one_store(anywhere, Quote(id="any/1", pack="any", price=1500, on=date(2026, 11, 2)))
    assert shopping_list(binder, "day").spend is not None
