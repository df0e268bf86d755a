"""Windows of tasks: by gaps alone, and never narrower than a plan that keeps every rule."""

from __future__ import annotations

from hypothesis import given, settings

from binder.figures.plan_program import find_plan
from binder.figures.plan_question import Aims, Gap, PlanQuestion, Task
from binder.figures.plan_windows import windows
from tests.figures.test_plan_program import questions


def test_gaps_pins_and_ends_narrow_a_window() -> None:
    tasks = (Task("soak", 5), Task("cook", 10), Task("film", 20, earliest=100, latest=200))
    gaps = (Gap("soak", "cook", 60), Gap("cook", "film", 0, 15))
    found = windows(PlanQuestion(tasks, (), gaps, horizon=1000))
    assert found == {"soak": (0, 110), "cook": (75, 180), "film": (100, 200)}
    pinned = windows(PlanQuestion(tasks, (), gaps, pinned={"film": 130}, horizon=1000))
    assert pinned["cook"] == (105, 130)


@settings(max_examples=60)
@given(questions())
def test_a_plan_lies_within_the_windows(question: PlanQuestion) -> None:
    plan = find_plan(question, Aims(), seconds=5)
    if plan is None or question.begun:
        return
    for key, (first, last) in windows(question).items():
        assert first <= plan.starts[key] <= last - question.by_key[key].minutes
