"""Where the money of a shoot goes: the parts of its budget, the largest first."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from binder.figures.budget_rows import RowKind

if TYPE_CHECKING:
    from collections.abc import Iterator

    from binder.figures.budget import Budget


@dataclass(frozen=True)
class MoneyPart:
    """A part of the money: minor units that are expected, and of them planned. `key` is another for every part."""

    key: str
    name: str
    expected: int
    planned: int


def money_parts(budget: Budget) -> tuple[MoneyPart, ...]:
    """Dish by dish; the producer's own by heading; trips, tax and contingency as they are. What is nothing is left out.

    They add up to what is known of the budget's total.
    """
    parts = [part for part in _parts(budget) if part.expected or part.planned]
    return tuple(sorted(parts, key=lambda part: -part.expected))


def _parts(budget: Budget) -> Iterator[MoneyPart]:
    own: dict[str, MoneyPart] = {}
    for row in budget.rows if budget.tax_contained else (*budget.rows, *budget.tax):
        expected, planned = row.amounts.expected or 0, row.amounts.planned or 0
        if row.kind is not RowKind.OWN:
            key = f"{row.place.table}:{row.place.id}" if row.kind is RowKind.DISH else f"{row.kind.value}:{row.name}"
            yield MoneyPart(key, row.name, expected, planned)
            continue
        name = row.heading or row.name
        before = own.get(name, MoneyPart(f"heading:{name}", name, 0, 0))
        own[name] = replace(before, expected=before.expected + expected, planned=before.planned + planned)
    yield from own.values()
