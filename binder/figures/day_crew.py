"""Who does what in a plan: as few people as can do it, prep by those not on camera where they can."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

from binder.figures.plan_question import taken_away
from binder.figures.plan_solver import Outcome, Work, solved

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from binder.figures.day_kitchen import Crew, DayKitchen
    from binder.figures.plan_question import Plan, PlanQuestion

_SHARING = Work(seconds=2.0, work=0.2)
_SOMEONE_MORE = 1000
"""One person more weighs as much as so many tasks of prep done by someone on camera."""


@dataclass(frozen=True)
class _Work:
    """A task with hands: when it is, and the crews that could do it."""

    key: str
    start: int
    end: int
    crews: tuple[str, ...]
    took: str


def who_does_what(
    question: PlanQuestion,
    kitchen: DayKitchen,
    plan: Plan,
    *,
    fewest: bool = True,
    already: Mapping[str, tuple[str, ...]] | None = None,
) -> dict[str, tuple[str, ...]]:
    """The people (their ids) of each task that takes hands; `fewest`: shared out anew, among as few as can do it all.

    The plan has chosen a crew for each task, and within a crew anyone will do; `already` says who has begun what.
    """
    work = list(_work(question, kitchen, plan))
    chosen = {one.key: one.took for one in work}
    if fewest:
        chosen = _Sharing(question, kitchen, work).fewest() or chosen
    given: dict[str, tuple[str, ...]] = {}
    for crew in kitchen.crews:
        given |= _shared_out(crew, [one for one in work if chosen[one.key] == crew.key], already or {})
    return given


def _work(question: PlanQuestion, kitchen: DayKitchen, plan: Plan) -> Iterator[_Work]:
    crews = {crew.key for crew in kitchen.crews}
    for task in question.tasks:
        start = plan.starts[task.key]
        for at, choice in enumerate(task.one_of):
            if crews.issuperset(choice.resources):
                took = plan.taken[task.key][at]
                yield _Work(task.key, start, start + task.minutes, choice.resources, took)
        for key in crews.intersection(task.needs):
            yield _Work(task.key, start, start + task.minutes, (key,), key)


def _shared_out(
    crew: Crew, work: Sequence[_Work], already: Mapping[str, tuple[str, ...]]
) -> dict[str, tuple[str, ...]]:
    """Each task to the first of a crew who is free: never more of them than are at work at once."""
    busy: dict[str, int] = {}
    given: dict[str, tuple[str, ...]] = {}
    for one in sorted(work, key=lambda one: (one.key not in already, one.start, one.key)):
        free = [person.id for person in crew.people if busy.get(person.id, one.start) <= one.start]
        given[one.key] = already.get(one.key) or tuple(free[:1])
        busy |= dict.fromkeys(given[one.key], one.end)
    return given


class _Sharing:
    """Work to be shared out among as few people as can do it: which crew does what."""

    def __init__(self, question: PlanQuestion, kitchen: DayKitchen, work: Sequence[_Work]) -> None:
        from ortools.sat.python import cp_model

        self.model, self.question, self.kitchen, self.work = cp_model.CpModel(), question, kitchen, work
        self.does: dict[tuple[str, str], Any] = {
            (one.key, crew): self.model.new_bool_var(f"{one.key} by {crew}") for one in work for crew in one.crews
        }
        self.people = {crew.key: self.model.new_int_var(0, len(crew.people), crew.key) for crew in kitchen.crews}
        for one in work:
            self.model.add_exactly_one(self.does[one.key, crew] for crew in one.crews)
        for crew in kitchen.crews:
            self._no_one_twice(crew)

    def _no_one_twice(self, crew: Crew) -> None:
        work = [one for one in self.work if crew.key in one.crews]
        away = _away(self.question, crew)
        for minute in sorted({one.start for one in work} | {start for start, _end, _amount in away}):
            used = sum(self.does[one.key, crew.key] for one in work if one.start <= minute < one.end)
            there = len(crew.people) - sum(amount for start, end, amount in away if start <= minute < end)
            self.model.add(used <= self.people[crew.key])
            self.model.add(used <= there)

    def fewest(self) -> dict[str, str] | None:
        """The crew of each task; None where that is not settled in time."""
        on_camera = {crew.key for crew in self.kitchen.crews if crew.on_camera}
        aside = [
            self.does[one.key, crew] for one in self.work for crew in on_camera.intersection(one.crews) if one.crews
        ]
        self.model.minimize(_SOMEONE_MORE * sum(self.people.values()) + sum(aside))
        outcome, solver = solved(self.model, _SHARING, going_on=lambda: True)
        if outcome not in {Outcome.BEST, Outcome.FOUND}:
            return None
        return {key: crew for (key, crew), does in self.does.items() if solver.value(does)}


def _away(question: PlanQuestion, crew: Crew) -> Sequence[tuple[int, int, int]]:
    """When how many of a crew are not there."""
    resource = next(one for one in question.resources if one.key == crew.key)
    return taken_away(replace(question, begun=frozenset()), resource)
