"""Figures at the lowest, chosen and highest prices, without the binder being any different."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.figures.cost import dish_cost
from binder.figures.missing import Missing
from binder.figures.price import chosen_pack
from binder.figures.price_levels import PriceLevel, at_level, packs_at_level
from binder.figures.shopping import shopping_list
from binder.kitchen.binder import Binder, every_record
from binder.kitchen.price import Pack, Quote
from tests.kitchen_binder import small_binder

JAR_NOW = small_binder().quotes["quote-tahini"]  # 600 for 300 g on 2 November
PAIL = Pack(id="pail", food="tahini", store="corner", label="pail", size=1, unit="kg")
PAIL_OLD = Quote(id="pail/1", pack="pail", price=700, on=date(2026, 8, 1))
PAIL_NOW = Quote(id="pail/2", pack="pail", price=800, on=date(2026, 10, 1))
JAR_ONCE = Quote(id="jar/1", pack="pack-tahini", price=900, on=date(2025, 1, 1))
ALL = (PAIL, PAIL_OLD, PAIL_NOW, JAR_ONCE)


def a_gram(binder: Binder, food: str = "tahini") -> float:
    priced = chosen_pack(binder, food)
    assert not isinstance(priced, Missing)
    return priced.per_gram


def test_lowest_is_what_is_asked_now_and_highest_what_was_ever_asked() -> None:
    binder = small_binder(*ALL)
    assert a_gram(binder) == 2  # the jar's price is the newest
    assert a_gram(at_level(binder, PriceLevel.LOWEST)) == 0.8  # the pail as it is asked for now, not the 0.7 of August
    assert a_gram(at_level(binder, PriceLevel.CHOSEN)) == 2
    assert a_gram(at_level(binder, PriceLevel.HIGHEST)) == 3


def test_an_old_price_that_is_pinned_is_chosen_and_no_price_is_lower() -> None:
    binder = small_binder(*ALL[:1], replace(PAIL_OLD, pinned=True), *ALL[2:])
    assert a_gram(binder) == a_gram(at_level(binder, PriceLevel.LOWEST)) == 0.7


def test_a_pack_that_is_not_on_sale_counts_at_no_level() -> None:
    binder = small_binder(replace(PAIL, on_sale=False), *ALL[1:])
    assert a_gram(at_level(binder, PriceLevel.LOWEST)) == 2


def test_the_binder_itself_is_as_before() -> None:
    binder = small_binder(*ALL)
    before = every_record(binder)
    at_level(binder, PriceLevel.HIGHEST)
    packs_at_level(binder, PriceLevel.HIGHEST)
    assert every_record(binder) == before


def test_at_the_till_every_pack_may_still_be_chosen() -> None:
    binder = small_binder(*ALL)  # 2 x 60 + 30 + 30 g of tahini are wanted: one jar
    till = {level: _tahini(packs_at_level(binder, level)) for level in PriceLevel}
    assert till == {PriceLevel.LOWEST: 600, PriceLevel.CHOSEN: 600, PriceLevel.HIGHEST: 800}


def test_a_pack_pinned_by_the_producer_stays_the_only_one_at_the_highest() -> None:
    pinned = small_binder(PAIL, PAIL_OLD, replace(PAIL_NOW, pinned=True))
    assert _tahini(pinned) == 800
    assert _tahini(packs_at_level(pinned, PriceLevel.HIGHEST)) == 800
    assert _tahini(packs_at_level(pinned, PriceLevel.LOWEST)) == 600


def _tahini(binder: Binder) -> int | None:
    return next(item.spend for item in shopping_list(binder, "day").items if item.food == "tahini")


def quotes() -> st.SearchStrategy[list[Quote]]:
    priced = st.tuples(st.integers(1, 5000), st.integers(0, 400), st.sampled_from(["pail", "pack-tahini", "pack-oil"]))
    return st.lists(priced, min_size=1, max_size=8).map(
        lambda rows: [
            Quote(id=f"any/{at}", pack=pack, price=price, on=date.fromordinal(date(2026, 1, 1).toordinal() + day))
            for at, (price, day, pack) in enumerate(rows)
        ]
    )


@given(quotes(), st.integers(0, 8))
def test_the_levels_are_in_order_whatever_was_ever_asked(priced: list[Quote], pin: int) -> None:
    pinned = [replace(one, pinned=True) if at == pin else one for at, one in enumerate(priced)]
    binder = small_binder(PAIL, *pinned)
    costs = [dish_cost(at_level(binder, level), "dish-spread").per_portion for level in PriceLevel]
    assert None not in costs
    assert costs == sorted(costs)  # type: ignore[type-var]
    tills = [shopping_list(packs_at_level(binder, level), "day").spend for level in PriceLevel]
    assert tills == sorted(tills)  # type: ignore[type-var]
    assert costs[1] == pytest.approx(dish_cost(binder, "dish-spread").per_portion)
