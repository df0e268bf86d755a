"""What a shoot costs, planned, committed and actual, against its budget; and two shoots side by side."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from binder.figures.budget_rows import (
    Amounts,
    BudgetRow,
    RowKind,
    added,
    contingency_rows,
    food_rows,
    own_rows,
    tax_by_rate,
    trip_rows,
)
from binder.figures.memory import PLANS, remembered_from
from binder.figures.receipts import food_receipts
from binder.figures.shopping import shopping_list, what_lacks
from binder.kitchen.edits.shoots import dish_name

if TYPE_CHECKING:
    from collections.abc import Mapping

    from binder.figures.missing import Missing
    from binder.kitchen.binder import Binder


@dataclass(frozen=True)
class Budget:
    """A shoot's budget: rows that add up to `total`, with the tax unless the prices contain it already.

    `known` is what is planned as far as it is known, `allowed` the shoot's budget, `deposits` what comes back with the
    empties and is in no row: minor units.
    """

    rows: tuple[BudgetRow, ...]
    tax: tuple[BudgetRow, ...]
    tax_contained: bool
    total: Amounts
    known: int
    allowed: int | None
    deposits: int
    missing: tuple[Missing, ...]

    @property
    def room(self) -> int | None:
        """What the budget allows beyond what is expected; below zero where it is over."""
        return None if self.allowed is None or self.total.expected is None else self.allowed - self.total.expected

    def of(self, *kinds: RowKind) -> Amounts:
        """The sum of the rows of some kinds."""
        return added([row.amounts for row in self.rows if row.kind in kinds])


FOOD = (RowKind.DISH, RowKind.TASTING, RowKind.LEFT_OVER, RowKind.BASE_REST)
"""The rows that together are what the food costs at the till."""


@remembered_from(PLANS | {"purchases", "budget_lines", "tax_rates"})
def shoot_budget(binder: Binder, shoot_id: str) -> Budget:
    """The budget of a shoot."""
    bought, shoot = shopping_list(binder, shoot_id), binder.shoots[shoot_id]
    missing = _missing(binder, shoot_id)
    rows = [*food_rows(binder, shoot_id), *trip_rows(binder, shoot_id), *own_rows(binder, shoot_id)]
    tax = tax_by_rate(binder, shoot_id)
    on_top = [] if shoot.prices_taxed else tax
    kept = contingency_rows(binder, shoot_id, _known([*rows, *on_top]))
    total = added([row.amounts for row in (*rows, *on_top, *kept)])
    return Budget(
        rows=(*rows, *kept),
        tax=tuple(tax),
        tax_contained=shoot.prices_taxed,
        total=replace(total, planned=None, expected=None) if missing else total,
        known=_known([*rows, *on_top, *kept]),
        allowed=shoot.budget,
        deposits=sum(item.deposit for item in bought.items),
        missing=missing,
    )


def _missing(binder: Binder, shoot_id: str) -> tuple[Missing, ...]:
    """What is not known of the list, but for the prices that receipts have said meanwhile."""
    paid = {one.food for one in food_receipts(binder, shoot_id) if one.purchases and not one.waits}
    items = shopping_list(binder, shoot_id).items
    return what_lacks(binder, shoot_id, (item for item in items if item.food not in paid))


def _known(rows: list[BudgetRow]) -> int:
    return sum(row.amounts.planned or 0 for row in rows)


@dataclass(frozen=True)
class SideRow:
    """One line of two budgets beside each other; None where a shoot has no such line."""

    kind: RowKind
    name: str
    left: Amounts | None
    right: Amounts | None

    @property
    def more(self) -> int | None:
        """What is expected at the right beyond the left; a line that is not there costs nothing."""
        left = self.left.expected if self.left else 0
        right = self.right.expected if self.right else 0
        return None if left is None or right is None else right - left


def side_by_side(binder: Binder, left: str, right: str) -> tuple[SideRow, ...]:
    """The lines of two shoots' budgets, matched by what they are of, those of the left first in each kind."""
    budgets = [_by_line(binder, shoot_budget(binder, shoot)) for shoot in (left, right)]
    order = list(RowKind)
    keys = sorted(dict.fromkeys([*budgets[0], *budgets[1]]), key=lambda key: order.index(key[0]))
    return tuple(
        SideRow(kind, name, budgets[0].get((kind, name, at)), budgets[1].get((kind, name, at)))
        for kind, name, at in keys
    )


def _by_line(binder: Binder, budget: Budget) -> Mapping[tuple[RowKind, str, int], Amounts]:
    """The rows by kind and name, and by count where a name comes again; a dish goes by its name without its number."""
    found: dict[tuple[RowKind, str, int], Amounts] = {}
    for row in (*budget.rows, *budget.tax):
        name = dish_name(binder, binder.dishes[row.place.id]) if row.kind is RowKind.DISH else row.name
        again = sum(1 for kind, other, _at in found if (kind, other) == (row.kind, name))
        found[(row.kind, name, again)] = row.amounts
    return found
