"""An independent checker of plans: it knows only the rules, minute by minute, and nothing of how a plan is found."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

    from binder.figures.plan_question import PlanQuestion, Resource, Task


def faults_of(question: PlanQuestion, starts: Mapping[str, int], taken: Mapping[str, str] | None = None) -> list[str]:
    """What a plan breaks, in words; nothing for a plan that keeps every rule."""
    return [
        *_task_faults(question, starts),
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


def _gap_faults(question: PlanQuestion, starts: Mapping[str, int]) -> list[str]:
    minutes = {task.key: task.minutes for task in question.tasks}
    faults = []
    for gap in question.gaps:
        between = starts[gap.after] - starts[gap.before] - minutes[gap.before]
        if between < gap.least or (gap.most is not None and between > gap.most):
            faults.append(f"{gap.before} to {gap.after}: {between} minutes")
    return faults


def _apart_faults(question: PlanQuestion, starts: Mapping[str, int]) -> list[str]:
    minutes = {task.key: task.minutes for task in question.tasks}
    faults = []
    for apart in question.aparts:
        runs = [(starts[first], starts[last] + minutes[last]) for first, last in (apart.first, apart.second)]
        (_begin, end), (begin, _end) = sorted(runs)
        if begin < end + apart.minutes:
            faults.append(f"{apart.first[0]} and {apart.second[0]} interleave")
    return faults


def _uses(task: Task, resource: Resource, taken: Mapping[str, str]) -> int:
    if resource.key in task.either:
        return task.places if taken.get(task.key) == resource.key else 0
    return task.needs.get(resource.key, 0)


def _resource_faults(
    question: PlanQuestion, resource: Resource, starts: Mapping[str, int], taken: Mapping[str, str]
) -> list[str]:
    users = [task for task in question.tasks if task.minutes and _uses(task, resource, taken)]
    absent = [one for one in question.absences if one.resource == resource.key]
    faults = []
    for minute in sorted({starts[task.key] for task in users} | {one.start for one in absent}):
        used = sum(
            _uses(task, resource, taken)
            for task in users
            if starts[task.key] <= minute < starts[task.key] + task.minutes
        )
        away = sum(min(one.amount, resource.capacity) for one in absent if one.start <= minute < one.end)
        if used and used + away > resource.capacity:
            faults.append(f"{resource.key} is overfull at minute {minute}")
    return faults + _change_faults(resource, users, starts)


def _change_faults(resource: Resource, users: list[Task], starts: Mapping[str, int]) -> list[str]:
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
            if not together and idle < resource.change:
                faults.append(f"{resource.key} changes from {first.key} to {second.key} in {idle} minutes")
    return faults
