"""Why there is no plan: the smallest set of demands that clash, found by leaving them out one after another."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from binder.figures.plan_program import can_be_planned
from binder.figures.plan_question import RUNNING_ORDER

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from binder.figures.plan_question import Gap, PlanQuestion

LATEST, HORIZON = "latest", "horizon"
"""The demands that some tasks end by a time, and that everything does."""

GAP, ABSENCE, PIN, RESOURCE, EARLIEST = "gap ", "absence ", "pin ", "resource ", "earliest "
"""What the other demands begin with; they end with the key of gap or absence, of the task, of the resource, or with
what a task begins no earlier because of."""

_MOST_PARTS = 4
"""Into so many parts the demands are cut at first, each left out at once."""


def demands_of(question: PlanQuestion) -> tuple[str, ...]:
    """The demands that someone could give way on: pins, gaps and absences by key, latest ends, resources.

    A gap without a key is what a task is, not what someone asks for; one with a key and without a most is an order.
    """
    gaps = [f"{GAP}{gap.key}" for gap in question.gaps if gap.key and (gap.most is not None or is_order(gap))]
    absences = [f"{ABSENCE}{absence.key}" for absence in question.absences]
    pins = [f"{PIN}{key}" for key in question.pinned if key not in question.begun]
    early = [f"{EARLIEST}{task.because}" for task in question.tasks if task.earliest > 0 and task.because]
    late = [LATEST] if any(task.latest is not None for task in question.tasks) else []
    horizon = [HORIZON] if question.horizon is not None else []
    used = (one for one in question.resources if any(task.may_use(one.key) for task in question.tasks))
    return tuple(
        dict.fromkeys([*gaps, *(f"{RESOURCE}{one.key}" for one in used), *absences, *pins, *early, *late, *horizon])
    )


def is_order(gap: Gap) -> bool:
    """Whether a gap only puts one task after another, because someone wants that order."""
    return gap.key == RUNNING_ORDER


def without(question: PlanQuestion, *demands: str) -> PlanQuestion:
    """The question with demands dropped."""
    for demand in demands:
        question = _without(question, demand)
    return question


def _without(question: PlanQuestion, demand: str) -> PlanQuestion:  # noqa: PLR0911 - one for each kind of demand
    if demand.startswith(GAP):
        return _without_gaps(question, demand.removeprefix(GAP))
    if demand.startswith(ABSENCE):
        left = (one for one in question.absences if one.key != demand.removeprefix(ABSENCE))
        return replace(question, absences=tuple(left))
    if demand.startswith(PIN):
        key = demand.removeprefix(PIN)
        return replace(question, pinned={task: at for task, at in question.pinned.items() if task != key})
    if demand.startswith(EARLIEST):
        because = demand.removeprefix(EARLIEST)
        freed = (replace(task, earliest=0) if task.because == because else task for task in question.tasks)
        return replace(question, tasks=tuple(freed))
    if demand == LATEST:
        return replace(question, tasks=tuple(replace(task, latest=None) for task in question.tasks))
    if demand == HORIZON:
        return replace(question, horizon=None)
    return _without_resource(question, demand.removeprefix(RESOURCE))


def _without_gaps(question: PlanQuestion, key: str) -> PlanQuestion:
    """Gaps without their most; those of an order not at all."""
    kept = (gap for gap in question.gaps if gap.key != key or not is_order(gap))
    return replace(question, gaps=tuple(replace(gap, most=None) if gap.key == key else gap for gap in kept))


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

    Demands are dropped, many at once and then one after another, for as long as there is no plan without them: what
    stays is the clash. Where a trial is not settled in `seconds_each`, the demand is kept, and the clash may then be
    larger than it need be.
    """

    def clashes(kept: Iterable[str]) -> bool:
        dropped = set(everything) - set(kept)
        tried = without(question, *(demand for demand in everything if demand in dropped))
        return can_be_planned(tried, seconds=seconds_each, going_on=going_on) is False

    everything = demands_of(question)
    if not clashes(everything):
        return ()
    return smallest_part(everything, clashes, going_on=going_on)


def smallest_part(
    whole: tuple[str, ...], clashes: Callable[[Iterable[str]], bool], *, going_on: Callable[[], bool]
) -> tuple[str, ...]:
    """A part of `whole` that still clashes, and would not without any one of its own."""
    kept = list(whole)
    size = max(1, len(kept) // _MOST_PARTS)
    while going_on():
        for part in [kept[at : at + size] for at in range(0, len(kept), size)]:
            left = [one for one in kept if one not in part]
            if going_on() and clashes(left):
                kept = left
        if size == 1:
            break
        size = max(1, size // 2)
    return tuple(kept)
