"""What the shopping costs at the till, against the shoot's budget."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.shopping import shopping_list

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder


@dataclass(frozen=True)
class Spend:
    """Whole packs at the till and the budget in minor currency units; None where not known.

    `known` is the part of the till's sum that is known.
    """

    till: int | None
    known: int
    budget: int | None

    @property
    def room(self) -> int | None:
        """Minor units of the budget left; below zero where it is overspent, None where either is not known."""
        return None if self.till is None or self.budget is None else self.budget - self.till


def shoot_spend(binder: Binder, shoot_id: str) -> Spend:
    """What a shoot's shopping costs against its budget."""
    bought = shopping_list(binder, shoot_id)
    return Spend(bought.spend, bought.known_spend, binder.shoots[shoot_id].budget)
