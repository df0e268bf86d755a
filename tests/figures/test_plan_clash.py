"""Why there is no plan, in the fewest demands."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given, settings

from binder.figures.plan_clash import demands_of, smallest_clash, without
from binder.figures.plan_program import can_be_planned
from binder.figures.plan_question import Absence, Gap, PlanQuestion, Resource, Task
from tests.figures.test_plan_program import questions


def ovens(capacity: int = 2) -> PlanQuestion:
    """Two bakes at different heats that must both be done by minute 60, and a third that has nothing to do with it."""
    tasks = (
        Task("roast", 40, {"oven": 1}, state=220, latest=60),
        Task("meringue", 40, {"oven": 1}, state=100, latest=60),
        Task("salad", 5, {"people": 1}),
    )
    resources = (Resource("oven", capacity, has_states=True, change=15), Resource("people", 1))
    return PlanQuestion(tasks, resources, (Gap("salad", "roast", 0, 500, "hold salad"),))


def test_the_clash_names_only_what_clashes() -> None:
    assert set(smallest_clash(ovens())) == {"latest", "resource oven"}


def test_a_pin_that_makes_the_rest_impossible_is_named() -> None:
    one = ovens().tasks[0], ovens().tasks[2]
    question = replace(ovens(), tasks=one, pinned={"salad": 200})
    assert set(smallest_clash(question)) == {"pin salad", "latest"}


def test_work_that_may_begin_too_late_is_named() -> None:
    call = PlanQuestion(
        (Task("film", 20, {"people": 1}, earliest=50, because="call", latest=60),), (Resource("people", 1),)
    )
    assert set(smallest_clash(call)) == {"earliest call", "latest"}


def test_a_hold_that_cannot_be_kept_is_named() -> None:
    tasks = (Task("fry", 5, {"people": 1}), Task("film", 5, {"people": 1}))
    question = PlanQuestion(
        tasks,
        (Resource("people", 1),),
        (Gap("fry", "film", 0, 10, "hold fry"),),
        (Absence("people", 20, 60, 1, "event lunch"),),
        pinned={"fry": 10, "film": 70},
    )
    assert "gap hold fry" in smallest_clash(question)


def test_a_task_longer_than_the_day_clashes_with_its_end() -> None:
    long = PlanQuestion((Task("cure", 3000, {"people": 1}),), (Resource("people", 1),), horizon=2000)
    assert smallest_clash(long) == ("horizon",)


def test_where_there_is_a_plan_nothing_clashes() -> None:
    assert smallest_clash(replace(ovens(), tasks=tuple(replace(task, latest=None) for task in ovens().tasks))) == ()


@settings(max_examples=60)
@given(questions())
def test_a_clash_cannot_be_met_and_giving_way_on_any_of_it_helps(question: PlanQuestion) -> None:
    tight = replace(
        question,
        tasks=tuple(replace(task, latest=task.earliest + task.minutes + 10, because="call") for task in question.tasks),
        gaps=tuple(replace(gap, key=f"hold {gap.before}") for gap in question.gaps),
        begun=frozenset(),
    )
    clash = smallest_clash(tight)
    if not clash:
        assert can_be_planned(tight, seconds=5) is not False
        return
    kept = tight
    for demand in demands_of(tight):
        if demand not in clash:
            kept = without(kept, demand)
    assert can_be_planned(kept, seconds=5) is False
    for demand in clash:
        assert can_be_planned(without(kept, demand), seconds=5) is True
