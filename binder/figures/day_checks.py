"""The checks that need the day planned: whether there is a plan, and what it says about safety."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.checks import Check, Severity, gravest_first
from binder.figures.clash_words import clash_sentence
from binder.figures.day_question import day_question
from binder.figures.missing import Place
from binder.figures.safety_findings import SafetyKind, safety_findings
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from binder.figures.day_clash import DayClash
    from binder.figures.day_plan import DayPlan
    from binder.figures.day_repairs import DayRepair
    from binder.kitchen.binder import Binder


def day_checks(
    binder: Binder,
    shoot_id: str,
    plan: DayPlan | None,
    *,
    clash: DayClash | None = None,
    repairs: Sequence[DayRepair] = (),
) -> tuple[Check, ...]:
    """What a plan says that needs someone, the gravest first; without a plan, why there is none and what would help."""
    found = [*_no_plan(binder, shoot_id, clash, repairs)] if plan is None else [*_safety(binder, shoot_id, plan)]
    return gravest_first(found)


def _no_plan(binder: Binder, shoot_id: str, clash: DayClash | None, repairs: Sequence[DayRepair]) -> Iterator[Check]:
    place, name = Place("shoots", shoot_id), binder.shoots[shoot_id].name
    if clash is not None:
        helping = _(" Or: ").join(repair.says for repair in repairs if repair.enough)
        says = f"{clash_sentence(clash)} {helping}".strip()
        yield Check("no plan", Severity.STOP, place, name, says)
    elif day_question(binder, shoot_id) is not None:
        says = _("No plan of the day was found in the time there was: whether there is one is not known yet.")
        yield Check("no plan", Severity.WARN, place, name, says)


def _safety(binder: Binder, shoot_id: str, plan: DayPlan) -> Iterator[Check]:
    """Core temperatures are among the checks that need no plan. Nothing stops: a plan cannot see what is chilled."""
    for finding in safety_findings(binder, shoot_id, plan):
        if finding.kind is not SafetyKind.DONENESS:
            severity = Severity.WARN if finding.over else Severity.NOTE
            yield Check(finding.kind.value, severity, finding.place, finding.where, finding.says)
