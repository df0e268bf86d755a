"""The books close to the cent: by food, by dish and in all.

The small shoot's list: beans 400, onion 180, oil 900, tahini 600, flour 150, salt 100: 2330.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from binder.figures.receipt_prices import prices_from_receipts
from binder.figures.shopping import shopping_list
from binder.figures.till_shares import LEFT_OVER, BearerKind
from binder.figures.wrap import Account, BearerAccount, FoodAccount, Wrap, added, shoot_wrap
from binder.kitchen.binder import Binder
from binder.kitchen.budget import BudgetLine
from binder.kitchen.buying import Purchase
from binder.kitchen.change import apply
from binder.kitchen.edits.buying import not_to_be_had, take_instead, tick
from binder.kitchen.record import Record
from tests.figures.test_budget import purchases
from tests.figures.test_cap_repairs import sunflower
from tests.kitchen_binder import small_binder
from tests.samples.opened import sample, shoot_of
from tests.strategies import binders

SMALL = small_binder()


def bought(food: str, paid: int | None, planned: int, **fields: object) -> Purchase:
    given = {"pack": f"pack-{food}", "planned": planned, "paid": paid, **fields}
    return Purchase(id=f"bought-{food}", shoot="day", food=food, **given)  # type: ignore[arg-type]


ALL_AS_PLANNED = [
    bought("beans", 400, 400),
    bought("onion", 180, 180),
    bought("oil", 900, 900),
    bought("tahini", 600, 600),
    bought("flour", 150, 150),
    bought("salt", 100, 100),
]


def wrap(*records: Record) -> Wrap:
    return shoot_wrap(small_binder(*records), "day")


def food(found: Wrap, name: str) -> FoodAccount:
    return next(one for one in found.foods if one.receipt.food == name)


def bearer(found: Wrap, dish: str) -> BearerAccount:
    return next(one for one in found.bearers if one.bearer.dish == dish)


def test_before_anything_is_bought_all_is_open() -> None:
    found = wrap()
    assert found.total == Account(2330, 0, 2330)
    assert found.total.variance == 0
    assert found.closes
    assert (found.worth, found.caps) == (0, ())


def test_bought_as_planned_closes_without_variance() -> None:
    found = wrap(*ALL_AS_PLANNED)
    assert found.total == Account(2330, 2330, 0)
    assert found.closes
    assert all(one.account.variance == 0 for one in found.foods)
    assert all(one.account.variance == 0 for one in found.bearers)


def test_a_dearer_jar_is_a_variance_by_food_and_by_dish() -> None:
    found = wrap(*ALL_AS_PLANNED[:3], bought("tahini", 650, 600), *ALL_AS_PLANNED[4:])
    assert (found.total.variance, food(found, "tahini").account.variance) == (50, 50)
    # 300 g: the spread uses 120 g, the bread 30 g, 150 g are left over
    assert bearer(found, "dish-spread").account.variance == 20
    assert bearer(found, "dish-bread").account.variance == 5
    assert [one.account.variance for one in found.bearers if one.bearer == LEFT_OVER] == [25]
    assert [cap.before.name for cap in found.caps] == ["Bean spread", "Onion flatbread"]
    assert found.closes


def test_what_is_left_over_is_worth_what_was_paid_for_it() -> None:
    found = wrap(*ALL_AS_PLANNED)
    jar = food(found, "tahini")
    assert jar.left == pytest.approx(150)
    assert jar.worth == 300
    left = [one.account.paid for one in found.bearers if one.bearer == LEFT_OVER]
    assert [found.worth] == left


def test_what_was_taken_instead_and_what_was_not_to_be_had() -> None:
    small = small_binder(*sunflower())
    day = small.shoots["day"]
    change = take_instead(
        small, day, small.foods["oil"], instead=small.foods["sun"], pack=small.packs["sun/1"], planned=900, paid=270
    )
    once = apply(small, change)
    twice = apply(once, not_to_be_had(once, day, small.foods["salt"], planned=100))
    found = shoot_wrap(twice, "day")
    oil, salt = food(found, "oil"), food(found, "salt")
    assert (oil.instead, oil.account.variance, oil.without) == (("sunflower oil",), -630, False)
    assert (salt.without, salt.account, salt.left) == (True, Account(100, 0, 0), 0)
    assert found.caps[0].instead == (("olive oil", "sunflower oil"),)
    assert found.closes


def test_own_lines_and_food_are_the_whole_of_what_was_paid() -> None:
    hire = BudgetLine(id="hire", shoot="day", name="Hire", rate=1000, actual=950)
    found = wrap(*ALL_AS_PLANNED, hire)
    assert found.budget.total.actual == 2330 + 950


def test_a_food_without_a_price_is_named_apart() -> None:
    gone = replace(SMALL.packs["pack-onion"], on_sale=False)
    found = wrap(gone)
    assert [one.food for one in found.not_planned] == ["onion"]
    assert found.closes


def test_what_has_neither_a_price_nor_a_receipt_is_not_settled() -> None:
    gone = replace(SMALL.packs["pack-onion"], on_sale=False)
    others = [one for one in ALL_AS_PLANNED if one.food != "onion"]
    ticked = Purchase(id="onion", shoot="day", food="onion")
    for records in ((), (ticked,)):
        found = wrap(gone, *others, *records)
        assert not found.total.open
        assert [one.food for one in found.unsettled] == ["onion"]
    assert wrap(gone, *others, replace(ticked, paid=250)).unsettled == ()
    assert wrap(*ALL_AS_PLANNED).unsettled == ()
    assert wrap(*others).unsettled == ()  # its price is known: it is open


def as_listed(binder: Binder, shoot: str, percent: int) -> Binder:
    """Everything on the list bought, for so many per cent of what it said."""
    for item in shopping_list(binder, shoot).items:
        for pack in item.packs:
            change = tick(
                binder,
                binder.shoots[shoot],
                binder.foods[item.food],
                pack=pack.priced.pack,
                count=pack.count,
                planned=pack.price,
                paid=pack.price * percent // 100,
            )
            binder = apply(binder, change)
    return binder


@pytest.mark.parametrize("name", ["chickpeas", "four_birds"])
def test_the_samples_close_to_the_cent(name: str) -> None:
    binder = sample(name)
    shoot = shoot_of(binder)
    after = as_listed(binder, shoot, 103)
    found = shoot_wrap(after, shoot)
    assert found.closes
    assert found.total.open == 0
    assert found.total.planned == shopping_list(binder, shoot).spend
    paid = sum(purchase.paid or 0 for purchase in after.purchases.values())
    assert found.total.paid == paid == sum(one.account.paid for one in found.bearers)
    assert sum(one.account.paid for one in found.bearers if one.bearer.kind is BearerKind.LEFT_OVER) == found.worth


@given(purchases)
def test_receipts_of_any_kind_close(some: list[Purchase]) -> None:
    found = wrap(*some)
    assert found.closes
    assert found.total.paid == sum(one.paid or 0 for one in some)
    assert found.total.planned + found.total.variance == found.total.paid + found.total.open


@settings(suppress_health_check=[HealthCheck.too_slow])
@given(binders())
def test_the_books_of_any_binder_close(binder: Binder) -> None:
    for shoot in binder.shoots:
        found = shoot_wrap(binder, shoot)
        assert found.closes
        assert found.total.paid == sum(one.paid or 0 for one in binder.purchases.where("shoot", shoot))
        change = prices_from_receipts(binder, shoot)
        assert apply(apply(binder, change), change.inverse()) == binder


@given(st.lists(st.tuples(st.integers(0, 99), st.integers(0, 99), st.integers(0, 99))))
def test_accounts_add_up(rows: list[tuple[int, int, int]]) -> None:
    whole = added([Account(*row) for row in rows])
    assert whole.variance == sum(Account(*row).variance for row in rows)
