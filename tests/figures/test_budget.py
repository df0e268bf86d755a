"""The budget: every column adds up, and nothing unknown passes for nothing.

The small shoot's list: beans 400, onion 180, oil 900, tahini 600, flour 150, salt 100: 2330.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from binder.figures.budget import FOOD, Budget, shoot_budget, side_by_side
from binder.figures.budget_rows import Amounts, BudgetRow, RowKind, own_amounts
from binder.figures.money_words import money
from binder.figures.shopping import shopping_list
from binder.kitchen.binder import Binder
from binder.kitchen.budget import BudgetLine, TaxRate
from binder.kitchen.buying import Purchase
from binder.kitchen.food import Section
from binder.kitchen.money import parse_money
from binder.kitchen.record import Record
from binder.kitchen.shoot import Build, BuildKind, Dish
from tests.kitchen_binder import small_binder
from tests.samples.opened import sample, shoot_of
from tests.strategies import binders

SMALL = small_binder()
DAY = SMALL.shoots["day"]


def budget(*others: Record) -> Budget:
    return shoot_budget(small_binder(*others), "day")


def row(found: Budget, name: str) -> BudgetRow:
    return next(one for one in (*found.rows, *found.tax) if one.name == name)


def own(key: str = "hire", **fields: object) -> BudgetLine:
    return BudgetLine(id=key, shoot="day", **{"name": "Studio kitchen", **fields})  # type: ignore[arg-type]


def test_a_receipt_says_what_a_food_without_a_price_comes_to() -> None:
    gone = replace(SMALL.packs["pack-onion"], on_sale=False)
    allowed = replace(DAY, budget=3000)
    ticked = Purchase(id="p", shoot="day", food="onion")
    open_, begun = budget(gone, allowed), budget(gone, allowed, ticked)
    for found in (open_, begun):
        assert found.missing
        assert (found.total.expected, found.room) == (None, None)
    settled = budget(gone, allowed, replace(ticked, paid=250))
    assert settled.missing == ()
    assert settled.total.expected == 2330 - 180 + 250
    assert settled.room == 3000 - 2400


def test_food_by_dish_adds_up_to_the_till() -> None:
    found = budget()
    assert [one.kind for one in found.rows] == [RowKind.DISH, RowKind.DISH, RowKind.LEFT_OVER, RowKind.BASE_REST]
    assert found.of(*FOOD) == Amounts(2330, None, None, 2330)
    assert found.total.planned == shopping_list(SMALL, "day").spend == 2330
    assert row(found, "1 Bean spread").place.id == "dish-spread"


def test_what_the_crew_tastes_is_a_line_of_its_own() -> None:
    taste = Build(id="taste", dish="dish-spread", position=2, kind=BuildKind.TASTING)
    found = budget(taste)
    assert (row(found, "The crew's tasting").amounts.planned or 0) > 0
    assert found.of(*FOOD).planned == shopping_list(small_binder(taste), "day").spend


def test_own_lines_are_so_many_at_a_rate() -> None:
    assert own_amounts(own(quantity=7.5, rate=2450)) == Amounts(18375, None, None, 18375)
    assert own_amounts(own(quantity=0.5, rate=25)).planned == 13
    assert own_amounts(own(rate=100, committed=120)).expected == 120
    assert own_amounts(own(rate=100, committed=120, actual=90)) == Amounts(100, 120, 90, 90)
    assert own_amounts(own(rate=100, actual=90)).over == -10


def test_planned_committed_and_actual_stand_beside_each_other() -> None:
    jar = Purchase(id="p", shoot="day", food="tahini", pack="pack-tahini", planned=600, paid=650)
    flour = Purchase(id="q", shoot="day", food="flour", pack="pack-flour", planned=150)
    found = budget(jar, flour, own(rate=45000, committed=44000))
    assert found.total == Amounts(47330, 650 + 150 + 44000, 650, 2330 + 50 + 44000)
    assert found.total.over == 50 - 1000
    # 50 cents more for 300 g, of which the spread uses 120 g and the bread 30 g
    assert row(found, "1 Bean spread").amounts.over == 20
    assert row(found, "2 Onion flatbread").amounts.over == 5
    assert row(found, "Left over in packs").amounts.over == 25


def test_tax_in_the_prices_is_shown_and_not_added() -> None:
    found = budget(
        TaxRate(id="t", shoot="day", rate=0.25), own(rate=1000), own("x", name="Loan", rate=500, taxed=False)
    )
    assert found.tax_contained
    assert row(found, "Tax of 25%").amounts.planned == (2330 + 1000) / 5
    assert found.total.planned == 3830


def test_tax_on_top_is_added_by_rate() -> None:
    found = budget(
        replace(DAY, prices_taxed=False),
        TaxRate(id="all", shoot="day", rate=0.075),
        TaxRate(id="tins", shoot="day", section=Section.TINS_AND_JARS, rate=0.2),
        own(rate=1000),
        own("x", name="Loan", rate=500, taxed=False),
    )
    assert row(found, "Tax of 20%").amounts.planned == 120
    assert row(found, "Tax of 7.5%").amounts.planned == 205  # 2730 at 7.5 % are 204.75
    assert found.total.planned == 2330 + 1000 + 500 + 120 + 205


def test_contingency_is_kept_back_of_the_budget() -> None:
    found = budget(replace(DAY, contingency=0.1))
    assert row(found, "Contingency").amounts.planned == 500
    assert (found.allowed, found.total.planned, found.room) == (5000, 2830, 2170)
    without = budget(replace(DAY, contingency=0.1, budget=None))
    assert (row(without, "Contingency").amounts.planned, without.room) == (233, None)


def test_going_to_a_store_costs_what_it_costs() -> None:
    found = budget(replace(SMALL.stores["corner"], trip_cost=450))
    assert row(found, "Trips to stores").amounts.planned == 450
    assert found.total.planned == 2780


def test_deposits_come_back_and_are_in_no_row() -> None:
    found = budget(replace(SMALL.packs["pack-oil"], deposit=25))
    assert (found.deposits, found.total.planned) == (25, 2330)


def test_what_has_no_price_makes_its_dishes_and_the_whole_unknown() -> None:
    found = budget(replace(SMALL.packs["pack-onion"], on_sale=False))
    assert row(found, "2 Onion flatbread").amounts.planned is None
    assert row(found, "1 Bean spread").amounts.planned is not None
    assert (found.total.planned, found.total.over, found.room) == (None, None, None)
    assert found.known < 2330
    assert [lack.place.id for lack in found.missing] == ["onion"]


def test_what_cannot_be_weighed_makes_its_dish_unknown() -> None:
    odd = replace(SMALL.lines["bread/1/2"], unit="bunch")
    found = budget(odd)
    assert row(found, "2 Onion flatbread").amounts.planned is None
    assert found.total.planned is None


def test_two_shoots_side_by_side() -> None:
    other = [
        replace(DAY, id="other", name="Other day", on=date(2026, 12, 10)),
        Dish(id="again", shoot="other", recipe="bread", portions=2),
        Build(id="again/hero", dish="again"),
        BudgetLine(id="gas", shoot="other", name="Gas", rate=900),
    ]
    binder = small_binder(own(rate=1000), *other)
    rows = {side.name: side for side in side_by_side(binder, "day", "other")}
    assert rows["Onion flatbread"].left is not None
    assert rows["Onion flatbread"].right is not None
    assert (rows["Studio kitchen"].right, rows["Studio kitchen"].more) == (None, -1000)
    assert (rows["Gas"].left, rows["Gas"].more) == (None, 900)
    left, right = (shoot_budget(binder, shoot).total.expected for shoot in ("day", "other"))
    assert left is not None
    assert right is not None
    assert sum(side.more or 0 for side in rows.values()) == right - left


def test_the_samples_add_up_to_the_cent() -> None:
    for name in ("chickpeas", "four_birds"):
        binder = sample(name)
        found = shoot_budget(binder, shoot_of(binder))
        assert found.of(*FOOD).planned == shopping_list(binder, shoot_of(binder)).spend


@pytest.mark.parametrize(("currency", "digits"), [("JPY", 0), ("EUR", 2), ("KWD", 3)])
def test_what_is_shown_adds_up_in_minor_units_of_iso_4217(currency: str, digits: int) -> None:
    binder = small_binder(replace(SMALL.settings, currency=currency), replace(DAY, contingency=0.07), own(rate=999))
    found = shoot_budget(binder, "day")
    shown = [money(binder, one.amounts.planned or 0) for one in found.rows]
    assert all(len(text.partition(".")[2]) == digits for text in shown)
    assert sum(parse_money(text, currency, "en_US") for text in shown) == found.total.planned


def columns(found: Budget) -> list[Amounts]:
    counted = [*found.rows, *(() if found.tax_contained else found.tax)]
    return [one.amounts for one in counted]


@settings(suppress_health_check=[HealthCheck.too_slow])
@given(binders())
def test_any_budget_adds_up(binder: Binder) -> None:
    for shoot in binder.shoots:
        found = shoot_budget(binder, shoot)
        rows = columns(found)
        assert sum(one.committed or 0 for one in rows) == (found.total.committed or 0)
        assert sum(one.actual or 0 for one in rows) == (found.total.actual or 0)
        assert sum(one.planned or 0 for one in rows) == found.known
        if found.total.planned is not None:
            assert found.total.planned == found.known
            assert sum(one.expected or 0 for one in rows) == found.total.expected
        assert (found.total.planned is None) >= bool(found.missing)


purchases = st.lists(
    st.builds(
        Purchase,
        id=st.uuids().map(str),
        shoot=st.just("day"),
        food=st.sampled_from(["tahini", "oil", "beans", "flour", "water"]),
        pack=st.sampled_from([None, "pack-tahini", "pack-oil", "pack-flour"]),
        count=st.sampled_from([0.0, 0.5, 1.0, 3.0]),
        planned=st.none() | st.integers(0, 5000),
        paid=st.none() | st.integers(0, 5000),
        instead=st.sampled_from([None, "flour"]),
    ),
    max_size=6,
)


@given(purchases)
def test_receipts_of_any_kind_are_divided_to_the_cent(bought: list[Purchase]) -> None:
    found = budget(*bought)
    assert (found.total.actual or 0) == sum(one.paid or 0 for one in bought)
    assert found.total.planned == sum(one.planned or 0 for one in columns(found))
    assert found.total.expected == sum(one.expected or 0 for one in columns(found))
