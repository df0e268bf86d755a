"""The solver at work: what a search comes to, what ends it, and that one worker's search is the same every time."""

from __future__ import annotations

from random import Random
from typing import Any

import pytest
from ortools.sat.python import cp_model

from binder.figures.plan_solver import Outcome, Work, solved

ALONE = Work(seconds=20, work=0.001, kind="no_lp")
RACING = Work(seconds=20)


def busy_kitchen(dishes: int = 20, cooks: int = 10) -> tuple[Any, list[Any]]:
    """Each dish goes through the hands of every cook, in an order of its own: quick to plan, long to plan best."""
    model, dice = cp_model.CpModel(), Random(1)
    end = model.new_int_var(0, 10_000, "end")
    starts, hands = [], [list[Any]() for _cook in range(cooks)]
    for dish in range(dishes):
        before: Any = 0
        for cook in dice.sample(range(cooks), cooks):
            minutes = dice.randint(5, 45)
            start = model.new_int_var(0, 10_000, f"{dish} of {cook}")
            model.add(start >= before)
            hands[cook].append(model.new_fixed_size_interval_var(start, minutes, ""))
            starts.append(start)
            before = start + minutes
        model.add(end >= before)
    for work in hands:
        model.add_no_overlap(work)
    model.minimize(end)
    return model, starts


@pytest.mark.parametrize("work", [ALONE, RACING], ids=["alone", "racing"])
def test_what_cannot_be_is_known(work: Work) -> None:
    model = cp_model.CpModel()
    number = model.new_int_var(0, 9, "number")
    model.add(number * 2 == 7)
    assert solved(model, work, going_on=lambda: True)[0] is Outcome.NONE


@pytest.mark.parametrize("work", [ALONE, RACING], ids=["alone", "racing"])
def test_the_best_is_known_as_the_best(work: Work) -> None:
    model = cp_model.CpModel()
    number = model.new_int_var(0, 9, "number")
    model.add(number * 2 <= 7)
    model.maximize(number)
    outcome, solver = solved(model, work, going_on=lambda: True)
    assert outcome is Outcome.BEST
    assert solver.value(number) == 3


def test_work_ends_at_the_same_point_of_the_search_every_time() -> None:
    def planned() -> list[int]:
        model, starts = busy_kitchen()
        outcome, solver = solved(model, Work(seconds=60, work=0.03, kind="no_lp"), going_on=lambda: True)
        assert outcome is Outcome.FOUND
        return [solver.value(start) for start in starts]

    assert planned() == planned()


def test_a_search_ends_where_whoever_is_told_has_enough() -> None:
    told: list[float] = []

    def enough(values: Any) -> bool:  # noqa: ANN401 - the solver comes without types
        told.append(values.objective_value)
        return False

    outcome, _solver = solved(busy_kitchen()[0], Work(seconds=60, work=5.0), going_on=lambda: True, tell=enough)
    assert outcome is Outcome.FOUND
    assert len(told) == 1


def test_a_search_that_nobody_wants_ends() -> None:
    looks: list[None] = []

    def going_on() -> bool:
        looks.append(None)
        return False

    outcome, _solver = solved(busy_kitchen()[0], Work(seconds=600), going_on=going_on)
    assert outcome in {Outcome.OPEN, Outcome.FOUND}
    assert looks
