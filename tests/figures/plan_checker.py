"""An independent checker of plans: it knows only the rules, minute by minute, and nothing of how a plan is found."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from binder.figures.plan_question import PlanQuestion, Resource, Task


Taken = Mapping[str, Sequence[str]]
"""Which resource each task took of each of its choices."""


def faults_of(question: PlanQuestion, starts: Mapping[str, int], taken: Taken | None = None) -> list[str]:
    """What a plan breaks, in words; nothing for a plan that keeps every rule."""
    return [
        *_task_faults(question, starts),
        *_choice_faults(question, taken or {}),
        *_gap_faults(question, starts),
        *_apart_faults(question, starts),
        *(fault for one in question.resources for fault in _resource_faults(question, one, starts, taken or {})),
    ]


def _task_faults(question: PlanQuestion, starts: Mapping[str, int]) -> list[str]:
    faults = [f"{task.key} is not planned" for task in question.tasks if task.key not in starts]
    for task in question.tasks:
        begin = starts[task.key]
        if task.key in question.pinned:
            faults += [f"{task.key} left its pin"] if begin != question.pinned[task.key] else []
        elif begin < task.earliest or (task.latest is not None and begin + task.minutes > task.latest):
            faults.append(f"{task.key} is outside its time")
    return faults


def _choice_faults(question: PlanQuestion, taken: Taken) -> list[str]:
    faults = []
    for task in question.tasks:
        took = taken.get(task.key, ())
        if len(took) != len(task.one_of) or not all(
            one in choice.resources for one, choice in zip(took, task.one_of, strict=False)
        ):
            faults.append(f"{task.key} took {took}")
    return faults


def _gap_faults(question: PlanQuestion, starts: Mapping[str, int]) -> list[str]:
    minutes = {task.key: task.minutes for task in question.tasks}
    faults = []
    for gap in question.gaps:
        between = starts[gap.after] - starts[gap.before] - minutes[gap.before]
        if gap.after not in question.begun and (between < gap.least or (gap.most is not None and between > gap.most)):
            faults.append(f"{gap.before} to {gap.after}: {between} minutes")
    return faults


def _apart_faults(question: PlanQuestion, starts: Mapping[str, int]) -> list[str]:
    minutes = {task.key: task.minutes for task in question.tasks}
    faults = []
    for apart in question.aparts:
        runs = sorted((starts[first], starts[last] + minutes[last], (first, last)) for first, last in apart.runs)
        for at, (_begin, end, one) in enumerate(runs):
            for begin, _end, other in runs[at + 1 :]:
                if begin < end + apart.minutes and not {*one, *other} <= question.begun:
                    faults.append(f"{one[0]} and {other[0]} interleave")
    return faults


def _uses(task: Task, resource: Resource, taken: Taken) -> int:
    chosen = zip(taken.get(task.key, ()), task.one_of, strict=True)
    return task.needs.get(resource.key, 0) + sum(choice.amount for took, choice in chosen if took == resource.key)


def _resource_faults(question: PlanQuestion, resource: Resource, starts: Mapping[str, int], taken: Taken) -> list[str]:
    users = [task for task in question.tasks if task.minutes and _uses(task, resource, taken)]
    absent = [one for one in question.absences if one.resource == resource.key]
    faults = []
    for minute in sorted({starts[task.key] for task in users} | {one.start for one in absent}):
        now = [task for task in users if starts[task.key] <= minute < _lets_go(question, task, starts)]
        used = sum(_uses(task, resource, taken) for task in now)
        away = sum(one.amount for one in absent if one.start <= minute < one.end)
        planned = any(task.key not in question.begun for task in now)
        if planned and used + away > resource.capacity:
            faults.append(f"{resource.key} is overfull at minute {minute}")
    return faults + _change_faults(question, resource, users, starts)


def _lets_go(question: PlanQuestion, task: Task, starts: Mapping[str, int]) -> int:
    """When a task no longer has what it took: at its end, or when the last that it is kept for begins."""
    end = starts[task.key] + task.minutes
    if task.key in question.begun:
        return end
    return max([end, *(starts[one] for one in task.until if one not in question.begun)])


def _change_faults(
    question: PlanQuestion, resource: Resource, users: list[Task], starts: Mapping[str, int]
) -> list[str]:
    if not (resource.change or resource.has_states):
        return []
    faults = []
    for at, one in enumerate(users):
        for other in users[at + 1 :]:
            if resource.has_states:
                together = abs(one.state - other.state) <= resource.tolerance
            else:
                together = one.group == other.group
            first, second = sorted((one, other), key=lambda task: starts[task.key])
            idle = starts[second.key] - starts[first.key] - first.minutes
            if not together and idle < resource.change and not {one.key, other.key} <= question.begun:
                faults.append(f"{resource.key} changes from {first.key} to {second.key} in {idle} minutes")
    return faults
