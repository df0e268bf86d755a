"""Why there is no plan: the smallest set of demands that clash, found by leaving them out one after another."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from binder.figures.plan_program import can_be_planned

if TYPE_CHECKING:
    from collections.abc import Callable

    from binder.figures.plan_question import PlanQuestion

LATEST = "latest"
"""The demand that tasks end by a time."""


def demands_of(question: PlanQuestion) -> tuple[str, ...]:
    """The demands that someone could give way on: gaps and absences by their key, pins, latest ends, resources."""
    gaps = [f"gap {gap.key}" for gap in question.gaps if gap.most is not None or gap.key == "running order"]
    absences = [f"absence {absence.key}" for absence in question.absences]
    pins = [f"pin {key}" for key in question.pinned if key not in question.begun]
    late = [LATEST] if any(task.latest is not None for task in question.tasks) else []
    resources = [
        f"resource {one.key}" for one in question.resources if any(task.may_use(one.key) for task in question.tasks)
    ]
    return tuple(dict.fromkeys([*pins, *gaps, *absences, *late, *resources]))


def without(question: PlanQuestion, demand: str) -> PlanQuestion:
    """The question with a demand dropped."""
    kind, _space, key = demand.partition(" ")
    if kind == "gap" and key == "running order":
        return replace(question, gaps=tuple(gap for gap in question.gaps if gap.key != key))
    if kind == "gap":
        return replace(
            question, gaps=tuple(replace(gap, most=None) if gap.key == key else gap for gap in question.gaps)
        )
    if kind == "absence":
        return replace(question, absences=tuple(one for one in question.absences if one.key != key))
    if kind == "pin":
        return replace(question, pinned={task: at for task, at in question.pinned.items() if task != key})
    if kind == LATEST:
        return replace(question, tasks=tuple(replace(task, latest=None) for task in question.tasks))
    return _without_resource(question, key)


def _without_resource(question: PlanQuestion, key: str) -> PlanQuestion:
    """As if there were as much of a resource as anyone asks for."""
    tasks = tuple(
        replace(
            task,
            needs={one: amount for one, amount in task.needs.items() if one != key},
            one_of=tuple(choice for choice in task.one_of if key not in choice.resources),
        )
        for task in question.tasks
    )
    return replace(question, tasks=tasks)


def smallest_clash(
    question: PlanQuestion, *, seconds_each: float = 2.0, going_on: Callable[[], bool] = lambda: True
) -> tuple[str, ...]:
    """Demands that cannot all be met, none of which could be left out of the clash; empty where there is a plan.

    Demands are dropped one after another for as long as there is no plan without them: what stays is the clash. Where a
    trial is not settled in `seconds_each`, the demand is kept, and the clash may then be larger than it need be.
    """
    if can_be_planned(question, seconds=seconds_each) is not False:
        return ()
    clash = list(demands_of(question))
    for demand in tuple(clash):
        if not going_on():
            break
        smaller = without(question, demand)
        if can_be_planned(smaller, seconds=seconds_each) is False:
            question = smaller
            clash.remove(demand)
    return tuple(clash)
