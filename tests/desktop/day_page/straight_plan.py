"""A plan made without a solver: everything one after another, as its gaps ask. Quick, and known in advance."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from binder.desktop.day_page.planning_work import Answer, Asked, Hearing
from binder.figures.day_plan import DayPlan, planned
from binder.figures.day_question import DayQuestion, day_question
from binder.figures.plan_question import Plan
from binder.kitchen.binder import Binder


def straight_plan(binder: Binder, shoot: str = "day", *, proven: bool = True) -> DayPlan | None:
    """Tasks in the order they were gathered, each when what it waits for is there; pins are kept."""
    asked = day_question(binder, shoot)
    return None if asked is None else planned(asked, straight(asked, proven=proven), fewest=False)


def straight(asked: DayQuestion, *, proven: bool = True) -> Plan:
    """The answer in minutes."""
    question = asked.question
    call = asked.clock.at(asked.clock.call)
    starts: dict[str, int] = {}
    left = [task.key for task in question.tasks]
    free = call
    while left:
        key = next(key for key in left if all(gap.before in starts for gap in question.gaps if gap.after == key))
        left.remove(key)
        before = [
            starts[gap.before] + question.by_key[gap.before].minutes + gap.least
            for gap in question.gaps
            if gap.after == key
        ]
        is_wait = key.endswith("/wait")
        start = question.pinned.get(key, max([*before, *([] if is_wait else [free])], default=free))
        starts[key] = start
        free = free if is_wait else max(free, start + question.by_key[key].minutes)
    end = max(starts[key] + question.by_key[key].minutes for key in asked.aims.ends or starts)
    taken = {task.key: tuple(choice.resources[0] for choice in task.one_of) for task in question.tasks}
    return Plan(starts, end, end, proven, taken)


def straight_work(made: list[Binder] | None = None) -> Callable[[Asked, Hearing], Answer]:
    """What a Planning can be given to work with; it remembers the binders it was asked about."""

    def work(asked: Asked, hearing: Hearing) -> Answer:
        hearing.begun()
        if made is not None:
            made.append(asked.binder)
        return straight_answer(asked)

    return work


def straight_answer(asked: Asked) -> Answer:
    """The straight plan as an answer."""
    return Answer(straight_plan(asked.binder, asked.shoot), day_question(asked.binder, asked.shoot))


def unproven(plan: DayPlan) -> DayPlan:
    """The same plan, with a bound an hour earlier."""
    return replace(plan, proven=False, bound=plan.asked.wall(plan.found.end - 60))
