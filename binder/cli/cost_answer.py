"""The answer of `binder cost --json`."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.cli.answer import Answer, answer_of, paid, weighed, worked_out
from binder.figures.cost import DishCost, LineCost, Verdict, shoot_costs
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Shoot


def cost_answer(binder: Binder, shoot: Shoot) -> Answer:
    """Every dish's cost a portion against its cap, and its lines."""
    dishes = [_dish(cost, binder.settings.currency) for cost in shoot_costs(binder, shoot.id)]
    return answer_of(binder, shoot, dishes=dishes)


def _dish(cost: DishCost, currency: str) -> Answer:
    missing = [lack.says for lack in cost.missing]
    if cost.cap is None:
        missing.append(_("No cap: set one for the dish or for the shoot."))
    return {
        "number": cost.number,
        "name": cost.name,
        "portions": cost.portions,
        "basis": cost.basis.value,
        "cost_per_portion": worked_out(cost.per_portion, currency),
        "cap": paid(cost.cap, currency),
        "headroom": worked_out(cost.headroom, currency),
        "verdict": (Verdict.UNKNOWN if cost.verdict is Verdict.NO_CAP else cost.verdict).value,
        "missing": missing,
        "lines": [_line(line, currency) for line in cost.lines],
    }


def _line(line: LineCost, currency: str) -> Answer:
    missing = [lack.says for lack in line.missing]
    if line.not_counted:
        says = _("{foods} to taste, without an amount: not counted.")
        missing.append(says.format(foods=listed(line.not_counted)))
    return {
        "food": line.name,
        "grams_as_purchased": weighed(line.purchased),
        "cost": worked_out(line.cost, currency),
        "share": line.share,
        "missing": missing,
    }
