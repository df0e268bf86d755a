"""Verdicts as a word and a shape, the same wherever a table shows them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.base import BaseVerdict
from binder.figures.checks import Severity
from binder.figures.cost import Verdict
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.figures.cost import DishCost
    from binder.figures.spend import Spend


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


def budget_mark(spend: Spend) -> str:
    """How the till stands to the budget."""
    if spend.budget is not None and spend.known > spend.budget:
        return _("◣ over")
    return _("◌ not known") if spend.till is None else _("○ within")


def severity_mark(severity: Severity) -> str:
    """How much a check matters."""
    return {Severity.STOP: _("◣ stop"), Severity.WARN: _("△ warn"), Severity.NOTE: _("· note")}[severity]
