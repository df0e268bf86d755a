"""Figures worked out at once, as the window has them once they are there."""

from __future__ import annotations

from binder.desktop.latest import Latest
from binder.desktop.money_page.money_figures import BudgetFigures, Judged, budget_figures, judged
from binder.kitchen.binder import Binder

DAY = "day"


def budget_of(binder: Binder) -> Latest[BudgetFigures]:
    """The budget figures of the chickpea day."""
    return Latest(budget_figures(binder, DAY))


def judged_of(binder: Binder) -> Latest[Judged]:
    """Its caps and claims."""
    return Latest(judged(binder, DAY))
