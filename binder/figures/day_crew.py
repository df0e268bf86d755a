"""Who does what in a plan: hands are given out in the order tasks begin, to whoever is there, free and able."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.day_kitchen import PEOPLE, PRESENTER, DayKitchen

if TYPE_CHECKING:
    from collections.abc import Mapping

    from binder.figures.plan_question import PlanQuestion, Task
    from binder.kitchen.day import Person


def who_does_what(question: PlanQuestion, kitchen: DayKitchen, starts: Mapping[str, int]) -> dict[str, tuple[str, ...]]:
    """The people (their ids) of each task. A task that no one free can do stays without: the plan counts heads only."""
    away = {
        (absence.key.removeprefix("person "), absence.start, absence.end)
        for absence in question.absences
        if absence.key.startswith("person ")
    }
    busy: dict[str, int] = {}
    given: dict[str, tuple[str, ...]] = {}
    for task in sorted(question.tasks, key=lambda one: (starts[one.key], one.key)):
        if not task.needs.get(PEOPLE):
            continue
        start, end = starts[task.key], starts[task.key] + task.minutes
        free = [
            person
            for person in kitchen.people
            if busy.get(person.id, -1) <= start
            and _able(person, task)
            and not any(who == person.id and begin < end and start < until for who, begin, until in away)
        ]
        chosen = tuple(person.id for person in sorted(free, key=lambda one: _rank(one, task))[: task.needs[PEOPLE]])
        busy |= dict.fromkeys(chosen, end)
        given[task.key] = chosen
    return given


def _able(person: Person, task: Task) -> bool:
    """Whether someone has the skills a task asks for, and is the presenter where it is filmed."""
    asked = {key.removeprefix("skill ") for key in task.needs if key.startswith("skill ")}
    return asked <= set(person.skills) and (PRESENTER not in task.needs or person.on_camera)


def _rank(person: Person, task: Task) -> tuple[bool, int, int]:
    """Prep goes to those not on camera first, then to those with the fewest skills to spare."""
    return (person.on_camera and PRESENTER not in task.needs, len(person.skills), person.position)
