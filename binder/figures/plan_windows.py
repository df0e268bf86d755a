"""Between which minutes each task of a plan can lie, by its gaps, its own times and the pins alone."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

    from binder.figures.plan_question import PlanQuestion

FAR = 10**9
"""A minute after every plan."""


def windows(question: PlanQuestion) -> Mapping[str, tuple[int, int]]:
    """For each task the earliest minute it can begin and the latest it can end; FAR where nothing says when.

    Where gaps contradict each other, what they have come to after as many rounds as there are tasks.
    """
    first = {task.key: question.pinned.get(task.key, task.earliest) for task in question.tasks}
    last = {task.key: _latest_start(question, task.key) for task in question.tasks}
    for _round in question.tasks:
        before = (dict(first), dict(last))
        for gap in question.gaps:
            minutes = question.by_key[gap.before].minutes
            first[gap.after] = max(first[gap.after], first[gap.before] + minutes + gap.least)
            last[gap.before] = min(last[gap.before], last[gap.after] - minutes - gap.least)
            if gap.most is not None:
                first[gap.before] = max(first[gap.before], first[gap.after] - minutes - gap.most)
                last[gap.after] = min(last[gap.after], last[gap.before] + minutes + gap.most)
        if before == (first, last):
            break
    return {key: (first[key], last[key] + question.by_key[key].minutes) for key in first}


def _latest_start(question: PlanQuestion, key: str) -> int:
    task = question.by_key[key]
    horizon = FAR if question.horizon is None else question.horizon
    latest = horizon if task.latest is None else min(task.latest, horizon)
    return question.pinned.get(key, latest - task.minutes)
