"""Where the money goes: every part once, the largest first, together the budget."""

from __future__ import annotations

from hypothesis import given

from binder.figures.budget import shoot_budget
from binder.figures.money_parts import money_parts
from binder.kitchen.binder import Binder
from binder.kitchen.budget import BudgetLine
from tests.kitchen_binder import small_binder
from tests.strategies import binders


def test_own_lines_of_one_heading_are_one_part() -> None:
    gas = BudgetLine(id="gas", shoot="day", name="gas", heading="Gas", rate=500, actual=700)
    more = BudgetLine(id="more", shoot="day", name="more gas", heading="Gas", rate=300)
    budget = shoot_budget(small_binder(gas, more), "day")
    (part,) = (part for part in money_parts(budget) if part.name == "Gas")
    assert (part.expected, part.planned) == (1000, 800)


@given(binders())
def test_the_parts_of_any_budget_come_to_what_is_expected_the_largest_first(binder: Binder) -> None:
    for shoot in binder.shoots:
        budget = shoot_budget(binder, shoot)
        parts = money_parts(budget)
        assert len({part.key for part in parts}) == len(parts)
        assert [part.expected for part in parts] == sorted((part.expected for part in parts), reverse=True)
        if budget.total.expected is not None:
            assert sum(part.expected for part in parts) == budget.total.expected
