"""Why a shoot has no plan: the fewest demands that clash, and the dishes without which they would not."""

from __future__ import annotations

import time
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TYPE_CHECKING

from binder.figures.day_question import DayQuestion, day_question
from binder.figures.plan_clash import demands_of, is_order, smallest_clash, smallest_part, without
from binder.figures.plan_program import can_be_planned
from binder.figures.plan_question import RUNNING_ORDER, Gap

if TYPE_CHECKING:
    from collections.abc import Callable, Collection, Iterable

    from binder.figures.plan_question import PlanQuestion
    from binder.kitchen.binder import Binder


@dataclass(frozen=True)
class DayClash:
    """Demands (as `plan_clash` has them) and dishes (ids) that cannot all be had.

    `question` asks for just these; `certain` is false where time ran out, and the clash may be larger than it need be.
    """

    asked: DayQuestion
    demands: tuple[str, ...]
    dishes: tuple[str, ...]
    question: PlanQuestion
    certain: bool


def day_clash(
    binder: Binder, shoot_id: str, *, seconds: float = 20.0, going_on: Callable[[], bool] = lambda: True
) -> DayClash | None:
    """Why a shoot has no plan; None where it has one, has nothing to plan, or that is not settled in time."""
    asked = day_question(binder, shoot_id)
    return None if asked is None else clash_of(asked, seconds=seconds, going_on=going_on)


def clash_of(
    asked: DayQuestion, *, seconds: float = 20.0, going_on: Callable[[], bool] = lambda: True
) -> DayClash | None:
    """Why a question has no plan; None where it has one, or that is not settled in time."""
    ends_at = time.monotonic() + seconds

    def in_time() -> bool:
        return time.monotonic() < ends_at and going_on()

    demands = smallest_clash(asked.question, seconds_each=seconds / 10, going_on=in_time)
    if not demands:
        return None
    only = without(asked.question, *(one for one in demands_of(asked.question) if one not in demands))
    dishes = _dishes(asked, only, seconds / 10, in_time)
    gone = [one.dish for one in asked.work.activities.values() if one.dish is not None and one.dish not in dishes]
    return DayClash(asked, demands, dishes, without_dishes(asked, only, gone), in_time())


def _dishes(
    asked: DayQuestion, question: PlanQuestion, seconds_each: float, going_on: Callable[[], bool]
) -> tuple[str, ...]:
    """The dishes that a clash would not be one without."""
    every = tuple(dict.fromkeys(one.dish for one in asked.work.activities.values() if one.dish is not None))

    def clashes(kept: Iterable[str]) -> bool:
        less = without_dishes(asked, question, set(every) - set(kept))
        return can_be_planned(less, seconds=seconds_each, going_on=going_on) is False

    return smallest_part(every, clashes, going_on=going_on)


def without_dishes(asked: DayQuestion, question: PlanQuestion, dishes: Collection[str]) -> PlanQuestion:
    """A question without the builds and the filming of some dishes; the running order closes up."""
    gone = {key for key, one in asked.work.activities.items() if one.dish in set(dishes)}
    runs = [run for dish, run in asked.work.filmed.items() if dish not in set(dishes)]
    gaps = [gap for gap in question.gaps if not gone & {gap.before, gap.after} and not is_order(gap)]
    order = [gap for gap in question.gaps if is_order(gap)]
    gaps += [Gap(last, first, order[0].least, key=RUNNING_ORDER) for (_, last), (first, _) in pairwise(runs) if order]
    return replace(
        question,
        tasks=tuple(
            replace(task, until=tuple(one for one in task.until if one not in gone))
            for task in question.tasks
            if task.key not in gone
        ),
        gaps=tuple(gaps),
        aparts=tuple(
            replace(one, runs=tuple(run for run in one.runs if run[0] not in gone)) for one in question.aparts
        ),
        pinned={key: at for key, at in question.pinned.items() if key not in gone},
        begun=question.begun - gone,
    )
