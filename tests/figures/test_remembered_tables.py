"""What is remembered across a change is what a binder that remembers nothing would work out."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date

from hypothesis import given
from hypothesis import strategies as st

from binder.figures import memory
from binder.figures.base import base_balance
from binder.figures.base_cost import base_cost
from binder.figures.base_repairs import base_repairs
from binder.figures.budget import shoot_budget
from binder.figures.cap_repairs import cap_standing
from binder.figures.checks import shoot_checks
from binder.figures.claims import claim_findings
from binder.figures.cost import shoot_costs
from binder.figures.leads import shoot_leads
from binder.figures.old_prices import old_prices
from binder.figures.safety import recipe_allergens
from binder.figures.shopping import shopping_list
from binder.figures.trips import buying_clashes, trip_plans
from binder.kitchen.binder import Binder, binder_of, every_record
from binder.kitchen.budget import BudgetLine, TaxRate
from binder.kitchen.buying import PantryItem, Purchase, Trip
from binder.kitchen.change import Change, apply
from binder.kitchen.claim import Claim, ClaimKind
from binder.kitchen.edits.buying import tick
from tests.kitchen_binder import small_binder
from tests.strategies import changes

FIGURES: list[Callable[[Binder], object]] = [
    lambda binder: shoot_costs(binder, "day"),
    lambda binder: base_balance(binder, "day"),
    lambda binder: base_cost(binder, "day"),
    lambda binder: base_repairs(binder, "day"),
    lambda binder: shopping_list(binder, "day"),
    lambda binder: trip_plans(binder, "day"),
    lambda binder: buying_clashes(binder, "day"),
    lambda binder: shoot_leads(binder, "day"),
    lambda binder: [recipe_allergens(binder, recipe) for recipe in binder.recipes],
    lambda binder: [cap_standing(binder, dish) for dish in binder.dishes],
    lambda binder: claim_findings(binder, "day"),
    lambda binder: shoot_budget(binder, "day"),
    lambda binder: old_prices(binder, "day"),
    lambda binder: shoot_checks(binder, "day"),
]

SMALL = small_binder()
FULL = small_binder(
    replace(SMALL.dishes["dish-spread"], cap=40),
    PantryItem(id="pantry", shoot="day", food="oil", amount=50),
    Trip(id="trip", shoot="day", store="corner", on=date(2026, 12, 2)),
    Purchase(id="bought", shoot="day", food="tahini", pack="pack-tahini", planned=600, paid=620),
    BudgetLine(id="hire", shoot="day", name="Hire", rate=1000),
    TaxRate(id="tax", shoot="day", rate=0.07),
    Claim(id="claim", shoot="day", says="Under", kind=ClaimKind.PORTION_UNDER, target=200),
    Claim(id="all", shoot="day", says="All", kind=ClaimKind.ALL_UNDER, target=3000),
)


def worked_out(binder: Binder) -> list[object]:
    return [figure(binder) for figure in FIGURES]


@given(st.data())
def test_no_change_leaves_a_figure_behind(data: st.DataObject) -> None:
    binder = binder_of(every_record(FULL))
    for _turn in range(2):
        worked_out(binder)
        change: Change = data.draw(changes(binder))
        binder = apply(binder, change)
        if "day" not in binder.shoots:
            return
        assert worked_out(binder) == worked_out(binder_of(every_record(binder)))


def test_a_tick_on_the_list_forgets_nothing_of_the_plan() -> None:
    binder = binder_of(every_record(FULL))
    bought, plans, costs = shopping_list(binder, "day"), trip_plans(binder, "day"), shoot_costs(binder, "day")
    after = apply(binder, tick(binder, binder.shoots["day"], binder.foods["flour"], paid=150))
    assert shopping_list(after, "day") is bought
    assert trip_plans(after, "day") is plans
    assert shoot_costs(after, "day") is costs
    assert memory.PLANS.isdisjoint({"purchases", "budget_lines", "tax_rates", "claims"})
