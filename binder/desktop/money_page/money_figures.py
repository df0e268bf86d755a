"""What the page of money shows of a shoot, gathered, so that what is slow can be worked out beside the window."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.desktop.quick_shopping import shopping_is_quick
from binder.figures.budget import Budget, shoot_budget
from binder.figures.cap_repairs import CapStanding, cap_standing
from binder.figures.claims import ClaimFinding, claim_findings
from binder.figures.cost import Verdict, shoot_costs
from binder.figures.old_prices import PriceInUse, prices_in_use
from binder.figures.wrap import Wrap, shoot_wrap

if TYPE_CHECKING:
    from collections.abc import Mapping

    from binder.desktop.latest import Latest
    from binder.kitchen.binder import Binder

    LatestBudget = Latest["BudgetFigures"]
    LatestJudged = Latest["Judged"]


@dataclass(frozen=True)
class BudgetFigures:
    """The budget of a shoot, the prices it counts on, and its books as they stand."""

    budget: Budget
    prices: tuple[PriceInUse, ...]
    wrap: Wrap


def budget_figures(binder: Binder, shoot: str) -> BudgetFigures:
    """The figures of a shoot."""
    return BudgetFigures(shoot_budget(binder, shoot), prices_in_use(binder, shoot), shoot_wrap(binder, shoot))


def budget_is_quick(binder: Binder, shoot: str) -> bool:
    """Whether they are there within a frame."""
    return shopping_is_quick(binder, shoot)


@dataclass(frozen=True)
class Judged:
    """How the dishes of a shoot stand to their caps, by dish, with what would mend it; and how its claims stand."""

    caps: Mapping[str, CapStanding]
    claims: tuple[ClaimFinding, ...]


def judged(binder: Binder, shoot: str) -> Judged:
    """The figures of a shoot that try many things out, and so take longest."""
    dishes = binder.dishes.where("shoot", shoot)
    return Judged({dish.id: cap_standing(binder, dish.id) for dish in dishes}, claim_findings(binder, shoot))


def judged_is_quick(binder: Binder, shoot: str) -> bool:
    """Whether nothing is to be tried out: no dish is over its cap, and nothing is claimed."""
    over = any(cost.verdict is Verdict.OVER for cost in shoot_costs(binder, shoot))
    return not over and not binder.claims.where("shoot", shoot)
