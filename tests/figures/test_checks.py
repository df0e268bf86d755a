"""The checks tell the truth, the gravest first."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date

from binder.figures.cap_basis import portion_by_food
from binder.figures.checks import Check, Severity, failed, shoot_checks
from binder.kitchen.budget import BudgetLine
from binder.kitchen.buying import Trip
from binder.kitchen.claim import Claim, ClaimKind
from binder.kitchen.food import Food
from binder.kitchen.recipe import Line
from binder.kitchen.record import Record
from binder.kitchen.shoot import CapBasis
from tests.kitchen_binder import small_binder


def kinds(*others: Record) -> dict[str, Severity]:
    return {check.kind: check.severity for check in shoot_checks(small_binder(*others), "day")}


def test_a_shoot_that_is_well_has_only_notes() -> None:
    found = kinds()
    assert set(found) == {"not counted", "allergens", "nobody named", "no time"}
    assert set(found.values()) == {Severity.NOTE}
    assert not failed(shoot_checks(small_binder(), "day"))


def test_over_cap_stops_and_says_what_it_is_mostly() -> None:
    small = small_binder()
    checks = shoot_checks(small_binder(replace(small.dishes["dish-spread"], cap=50)), "day")
    assert checks[0].kind == "over cap"
    assert failed(checks)
    assert "1 Bean spread is over its cap" in checks[0].says
    assert "the cap is $0.50" in checks[0].says
    assert checks[0].place.id == "dish-spread"


def test_over_cap_names_the_basis_and_the_food_that_costs_most_on_it() -> None:
    small = small_binder()
    dish = replace(small.dishes["dish-spread"], cap=1)
    says = {
        basis: shoot_checks(small_binder(dish, replace(small.shoots["day"], cap_basis=basis)), "day")[0].says
        for basis in CapBasis
    }
    assert "a portion (used cost), the cap is $0.01" in says[CapBasis.USED]
    assert "a portion (whole packs over portions)" in says[CapBasis.WHOLE_PACKS]
    for basis, said in says.items():
        binder = small_binder(dish, replace(small.shoots["day"], cap_basis=basis))
        costs = portion_by_food(binder, dish)
        assert isinstance(costs, Mapping)
        dearest = max(costs, key=lambda food: costs[food])
        assert said.endswith(f"Most of it is {binder.foods[dearest].name}.")


def test_a_missing_price_is_named_where_it_is_mended() -> None:
    sumac = Food(id="sumac", name="sumac"), Line(id="x", step="spread/2", food="sumac", low=1, high=1, unit="g")
    checks = shoot_checks(small_binder(*sumac), "day")
    price = next(check for check in checks if check.kind == "price missing")
    assert (price.place.table, price.place.id, price.severity) == ("foods", "sumac", Severity.STOP)
    assert any(check.kind == "cost not known" and "sumac" in check.says for check in checks)


def test_what_cannot_be_converted_is_named() -> None:
    line = Line(id="x", step="spread/2", food="tahini", low=1, high=1, unit="bunch")
    assert kinds(line)["cannot convert"] is Severity.STOP


def test_too_little_base_stops() -> None:
    shoot = replace(small_binder().shoots["day"], base_amount=300, base_unit="g")
    assert kinds(shoot)["short of base"] is Severity.STOP


def test_too_small_a_budget_warns() -> None:
    assert kinds(replace(small_binder().shoots["day"], budget=100))["over budget"] is Severity.WARN


def test_a_shoot_may_be_over_budget_with_its_shopping_within() -> None:
    hire = BudgetLine(id="hire", shoot="day", name="Studio kitchen", rate=5000)
    (says,) = [check.says for check in shoot_checks(small_binder(hire), "day") if check.kind == "over budget"]
    assert says == "The shoot is expected to come to $73.30 in all, the budget is $50.00."


def test_an_old_price_warns_and_leads_to_its_pack() -> None:
    aged = replace(small_binder().quotes["quote-tahini"], on=date(2026, 9, 1))
    (check,) = [check for check in shoot_checks(small_binder(aged), "day") if check.kind == "old price"]
    assert (check.severity, check.place.table, check.place.id) == (Severity.WARN, "packs", "pack-tahini")
    assert "93 days" in check.says


def test_a_food_fetched_on_the_wrong_day_warns() -> None:
    late = Trip(id="late", shoot="day", store="corner", on=date(2026, 12, 4))
    found = [check for check in shoot_checks(small_binder(late), "day") if check.kind == "wrong day"]
    assert {check.severity for check in found} == {Severity.WARN}
    assert len({check.place for check in found}) == len(found) == 6


def test_a_claim_is_told_by_whether_it_may_be_said() -> None:
    def said(target: float) -> list[Check]:
        claim = Claim(
            id="c", shoot="day", says="Half price", kind=ClaimKind.PORTION_UNDER, dish="dish-spread", target=target
        )
        return [check for check in shoot_checks(small_binder(claim), "day") if check.kind.startswith("claim")]

    (wrong,) = said(10)
    assert (wrong.kind, wrong.severity, wrong.place.id) == ("claim does not hold", Severity.WARN, "c")
    assert wrong.says == "“Half price”: Does not hold."
    (condition,) = said(45)
    assert (condition.kind, condition.severity) == ("claim holds only if", Severity.NOTE)
    assert "without the garnish" in condition.says
    assert said(1000) == []


def test_poultry_without_a_core_temperature_warns_with_source_and_deference() -> None:
    chicken = (
        Food(id="chicken", name="chicken thigh", doneness="poultry"),
        Line(id="c", step="bread/1", food="chicken", low=1, high=1, unit="g"),
    )
    says = next(c.says for c in shoot_checks(small_binder(*chicken), "day") if c.kind == "temperature not stated")
    assert "165 °F" in says
    assert "USDA FSIS" in says
    assert says.endswith("Follow your local food code and your own food-safety lead.")


def test_no_base_no_dishes_and_no_builds_each_say_what_to_add() -> None:
    small = small_binder()
    assert "no base" in kinds(replace(small.shoots["day"], base=None))
    alone = replace(small.shoots["day"], id="empty", name="empty")
    assert "no dishes" in {check.kind for check in shoot_checks(small_binder(alone), "empty")}
    extra = replace(small.dishes["dish-bread"], id="bare", position=2)
    assert "no build" in kinds(extra)


def test_the_gravest_come_first() -> None:
    shoot = replace(small_binder().shoots["day"], budget=100, cap=1)
    order = [check.severity for check in shoot_checks(small_binder(shoot), "day")]
    assert order == sorted(order, key=list(Severity).index)


def test_over_cap_names_the_food_also_where_no_line_has_a_cost_of_its_own() -> None:
    # The beans are cooked with salt that has no price; with staples free the dish still has its cost, of beans alone.
    small = small_binder()
    lines = [
        replace(line, food="cooked", low=100.0, high=100.0, unit="g")
        for line in small.lines.values()
        if line.id.startswith("spread/")
    ]
    shoot = replace(small.shoots["day"], cap=1, cap_basis=CapBasis.STAPLES_FREE)
    binder = small_binder(*lines, shoot, replace(small.packs["pack-salt"], on_sale=False))
    (says,) = [
        check.says
        for check in shoot_checks(binder, "day")
        if check.kind == "over cap" and check.place.id == "dish-spread"
    ]
    assert says.endswith("the cap is $0.01. Most of it is beans, dried.")
