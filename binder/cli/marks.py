"""Verdicts as a word and a shape, the same wherever a table shows them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.base import BaseVerdict
from binder.figures.checks import Severity
from binder.figures.cost import Verdict
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.figures.budget import Budget
    from binder.figures.cost import DishCost


def cap_mark(cost: DishCost) -> str:
    """How a dish stands to its cap."""
    if cost.cap is None and cost.per_portion is not None:
        return _("– no cap")
    marks = {Verdict.WITHIN: _("○ within"), Verdict.OVER: _("◣ over")}
    return marks.get(cost.verdict, _("◌ not known"))


def base_mark(verdict: BaseVerdict) -> str:
    """Whether the base ingredient goes round."""
    marks = {BaseVerdict.ENOUGH: _("○ enough"), BaseVerdict.SHORT: _("◣ short")}
    return marks.get(verdict, _("◌ not known"))


def budget_mark(budget: Budget) -> str:
    """How what a shoot is expected to cost stands to its budget; what is known of it may be over already."""
    expected, allowed = budget.total.expected, budget.allowed
    if allowed is not None and (budget.known if expected is None else expected) > allowed:
        return _("◣ over")
    return _("◌ not known") if expected is None else _("○ within")


def severity_mark(severity: Severity) -> str:
    """How much a check matters."""
    return {Severity.STOP: _("◣ stop"), Severity.WARN: _("△ warn"), Severity.NOTE: _("· note")}[severity]
