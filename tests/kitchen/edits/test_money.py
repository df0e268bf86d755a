"""Budget, tax and claims are edited like everything else: each edit has a name and can be undone."""

from __future__ import annotations

from binder.kitchen.binder import Binder
from binder.kitchen.change import Change, apply
from binder.kitchen.claim import ClaimKind
from binder.kitchen.edits.money import (
    add_budget_line,
    add_claim,
    move_budget_line,
    move_claim,
    remove_budget_line,
    remove_claim,
    remove_tax,
    set_budget_line,
    set_cap_basis,
    set_claim,
    set_tax,
)
from binder.kitchen.edits.shoots import remove_dish
from binder.kitchen.food import Section
from binder.kitchen.shoot import CapBasis
from tests.kitchen_binder import small_binder

SMALL = small_binder()
DAY = SMALL.shoots["day"]


def done(change: Change, binder: Binder = SMALL) -> Binder:
    """The binder after a change that undoes."""
    after = apply(binder, change)
    assert apply(after, change.inverse()) == binder
    assert change.label
    return after


def test_budget_lines_come_change_places_and_go() -> None:
    change, hire = add_budget_line(SMALL, DAY, "Studio kitchen", heading="Hire", rate=45000)
    assert change.label == "Add Studio kitchen to the budget"
    one = done(change)
    change, gas = add_budget_line(one, DAY, "Gas", rate=1200, taxed=False)
    two = done(change, one)
    assert [line.name for line in two.budget_lines.where("shoot", "day")] == ["Studio kitchen", "Gas"]
    moved = done(move_budget_line(two, gas, to=0), two)
    assert [line.name for line in moved.budget_lines.where("shoot", "day")] == ["Gas", "Studio kitchen"]
    paid = done(set_budget_line(moved.budget_lines[hire.id], actual=44000), moved)
    assert paid.budget_lines[hire.id].actual == 44000
    left = done(remove_budget_line(paid, paid.budget_lines[gas.id]), paid)
    assert [line.position for line in left.budget_lines.values()] == [0]


def test_a_section_has_one_tax_rate() -> None:
    once = done(set_tax(SMALL, DAY, Section.DRINKS, 0.19))
    twice = done(set_tax(once, DAY, Section.DRINKS, 0.07), once)
    assert [tax.rate for tax in twice.tax_rates.values()] == [0.07]
    both = done(set_tax(twice, DAY, None, 0.05), twice)
    assert {tax.section: tax.rate for tax in both.tax_rates.values()} == {Section.DRINKS: 0.07, None: 0.05}
    (plain,) = [tax for tax in both.tax_rates.values() if tax.section is None]
    assert done(remove_tax(both, plain), both) == twice


def test_claims_come_change_places_and_go() -> None:
    change, first = add_claim(SMALL, DAY, "Every plate under two dollars", ClaimKind.PORTION_UNDER, target=200)
    one = done(change)
    change, second = add_claim(one, DAY, "All from one bag", ClaimKind.ALL_FROM_BASE)
    two = done(change, one)
    moved = done(move_claim(two, second, to=0), two)
    assert [claim.id for claim in moved.claims.where("shoot", "day")] == [second.id, first.id]
    edited = done(set_claim(moved.claims[first.id], target=180), moved)
    assert edited.claims[first.id].target == 180
    assert set(done(remove_claim(edited, second), edited).claims) == {first.id}


def test_a_dish_goes_with_what_is_claimed_of_it() -> None:
    change, claim = add_claim(SMALL, DAY, "Under two", ClaimKind.PORTION_UNDER, dish="dish-spread", target=200)
    one = done(change)
    change, _every = add_claim(one, DAY, "All under two", ClaimKind.PORTION_UNDER, target=200)
    two = done(change, one)
    left = done(remove_dish(two, two.dishes["dish-spread"]), two)
    assert claim.id not in left.claims
    assert [one.position for one in left.claims.values()] == [0]


def test_the_basis_of_caps_is_the_producers_to_choose() -> None:
    assert done(set_cap_basis(DAY, CapBasis.WHOLE_PACKS)).shoots["day"].cap_basis is CapBasis.WHOLE_PACKS
