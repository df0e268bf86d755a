"""Plans: against published optima, against trying everything, and by a checker that knows only the rules."""

from __future__ import annotations

import csv
import itertools
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from binder.figures.plan_program import find_plan
from binder.figures.plan_question import (
    Absence,
    Aims,
    Apart,
    Gap,
    OneOf,
    Plan,
    PlanQuestion,
    Resource,
    Task,
    taken_away,
)
from tests.figures.plan_checker import faults_of

PUBLISHED = Path(__file__).parents[3] / "shared" / "reference" / "psplib"
"""Instances of the project scheduling problem library, set j30, where they are at hand beside the checkout.

R. Kolisch, A. Sprecher, PSPLIB, European Journal of Operational Research 96 (1997).
"""


def published() -> list[tuple[str, int]]:
    index = PUBLISHED / "optima.csv"
    if not index.is_file():
        return []
    with index.open(encoding="utf-8", newline="") as table:
        return [(row["problem"], int(row["optimum"])) for row in csv.DictReader(table)]


def read_instance(text: str) -> PlanQuestion:
    """A single-mode instance of the library as tasks, resources and gaps."""
    lines = text.splitlines()
    sections = {line.split(":")[0].strip(): at for at, line in enumerate(lines) if line.strip().endswith(":")}
    gaps = []
    for line in itertools.takewhile(lambda row: row[:1] != "*", lines[sections["PRECEDENCE RELATIONS"] + 2 :]):
        job, _modes, _count, *after = line.split()
        gaps += [Gap(job, follower) for follower in after]
    tasks = []
    for line in itertools.takewhile(lambda row: row[:1] != "*", lines[sections["REQUESTS/DURATIONS"] + 3 :]):
        job, _mode, minutes, *needs = line.split()
        tasks.append(Task(job, int(minutes), {f"R{at + 1}": int(need) for at, need in enumerate(needs) if int(need)}))
    capacities = lines[sections["RESOURCEAVAILABILITIES"] + 2].split()
    resources = tuple(Resource(f"R{at + 1}", int(capacity)) for at, capacity in enumerate(capacities))
    return PlanQuestion(tuple(tasks), resources, tuple(gaps))


@pytest.mark.skipif(not published(), reason="the published instances are not at hand beside this checkout")
@pytest.mark.parametrize(("name", "optimum"), published())
def test_published_instances_reach_the_published_optimum(name: str, optimum: int) -> None:
    question = read_instance((PUBLISHED / name).read_text(encoding="latin-1"))
    plan = find_plan(question, Aims(), seconds=60)
    assert plan is not None
    assert (plan.end, plan.bound, plan.proven) == (optimum, optimum, True)
    assert faults_of(question, plan.starts) == []


EITHER_OVEN, EITHER_CREW = OneOf(("oven", "second oven")), OneOf(("cooks", "host"))


@st.composite
def questions(draw: st.DrawFn) -> PlanQuestion:
    """Up to nine tasks on people, two crews, two ovens and a tool, with gaps, windows, absences, a pin and facts."""
    count = draw(st.integers(1, 9))
    tasks = tuple(
        Task(
            f"t{at}",
            draw(st.integers(0, 30)),
            needs=draw(
                st.sampled_from([{}, {"people": 1}, {"people": 2}, {"oven": 1}, {"tool": 1}, {"people": 1, "tool": 1}])
            ),
            one_of=draw(st.sampled_from([(), (EITHER_OVEN,), (EITHER_CREW,), (EITHER_CREW, EITHER_OVEN)])),
            state=draw(st.sampled_from([150, 160, 220])),
            earliest=draw(st.sampled_from([0, 0, 20])),
            group=draw(st.sampled_from(["a", "b"])),
        )
        for at in range(count)
    )
    gaps = tuple(
        Gap(
            f"t{at}",
            f"t{draw(st.integers(at + 1, count - 1))}",
            draw(st.integers(0, 15)),
            draw(st.sampled_from([None, None, 60])),
        )
        for at in range(count - 1)
        if draw(st.booleans())
    )
    absences = [Absence("people", 25, 40, 2), Absence("people", 30, 50, 1)] if draw(st.booleans()) else []
    absences += [Absence("cooks", 10, 30, 1)] if draw(st.booleans()) else []
    if draw(st.booleans()):
        after = {gap.before: gap.after for gap in gaps}
        tasks = tuple(replace(task, until=(after[task.key],)) if task.key in after else task for task in tasks)
    resources = (
        Resource("people", 2),
        Resource("oven", 2, has_states=True, tolerance=10, change=15),
        Resource("second oven", 1, has_states=True, change=15),
        Resource("tool", 1, change=5),
        Resource("cooks", 2),
        Resource("host", 1),
    )
    aparts = (Apart((("t0", "t1"), ("t2", "t3")), 5),) if count > 3 and draw(st.booleans()) else ()
    chained = tuple(Gap(*run) for apart in aparts for run in apart.runs)
    pinned = {f"t{at}": draw(st.integers(0, 60)) for at in range(count) if draw(st.integers(0, 4)) == 0}
    facts = frozenset(key for key in pinned if draw(st.booleans()))
    tasks = tuple(replace(task, one_of=()) if task.key in facts else task for task in tasks)
    pools = (EITHER_CREW.resources,)
    return PlanQuestion(tasks, resources, (*gaps, *chained), tuple(absences), aparts, pinned, facts, pools)


@settings(max_examples=300)
@given(questions())
def test_every_plan_keeps_every_rule(question: PlanQuestion) -> None:
    plan = find_plan(question, Aims(late={task.key: 1 for task in question.tasks}), seconds=2)
    if plan is None:
        return
    assert faults_of(question, plan.starts, plan.taken) == []
    assert plan.bound <= plan.end
    assert plan.end == max(plan.starts[task.key] + task.minutes for task in question.tasks)


@settings(max_examples=60)
@given(questions())
def test_what_gives_way_makes_plans_possible_and_is_counted(question: PlanQuestion) -> None:
    tight = replace(question, gaps=tuple(replace(gap, most=gap.least, key="hold") for gap in question.gaps))
    kept = find_plan(tight, Aims(), seconds=5)
    soft = find_plan(tight, Aims(give_way=frozenset({"hold"})), seconds=5)
    if kept is not None:
        assert soft is not None
        assert not soft.broken
    if soft is not None:
        loose = {gap: replace(gap, most=gap.least + soft.broken.get(gap, 0)) for gap in tight.gaps}
        allowed = replace(tight, gaps=tuple(loose.values()))
        assert faults_of(allowed, soft.starts, soft.taken) == []
        assert (kept is None) == bool(soft.broken)


def by_trying_everything(question: PlanQuestion, most: int) -> int | None:
    """The earliest end, by trying every beginning of every task up to a minute."""
    ends = [
        max(start + task.minutes for start, task in zip(starts, question.tasks, strict=True))
        for starts in itertools.product(range(most + 1), repeat=len(question.tasks))
        if not faults_of(question, {task.key: start for start, task in zip(starts, question.tasks, strict=True)})
    ]
    return min(ends, default=None)


def small(*tasks: Task, gaps: tuple[Gap, ...] = (), pinned: dict[str, int] | None = None) -> PlanQuestion:
    resources = (Resource("people", 1), Resource("oven", 2, has_states=True, tolerance=10, change=2))
    return PlanQuestion(tasks, resources, gaps, pinned=pinned or {})


@pytest.mark.parametrize(
    "question",
    [
        small(Task("a", 2, {"people": 1}), Task("b", 3, {"people": 1}), Task("c", 2)),
        small(
            Task("a", 2, {"oven": 1}, state=220),
            Task("b", 2, {"oven": 1}, state=150),
            Task("c", 1, {"people": 1}),
        ),
        small(Task("a", 2, {"oven": 1}, state=220), Task("b", 2, {"oven": 1}, state=225), Task("c", 3)),
        small(
            Task("a", 1, {"people": 1}),
            Task("b", 1, {"people": 1}),
            Task("c", 2),
            gaps=(Gap("a", "b", 2, 3), Gap("c", "a", 0, 0)),
        ),
        small(Task("a", 3, {"people": 1}), Task("b", 1, {"people": 1}), pinned={"a": 1}),
    ],
)
def test_the_earliest_end_is_the_one_found_by_trying_everything(question: PlanQuestion) -> None:
    plan = find_plan(question, Aims())
    assert plan is not None
    assert plan.proven
    assert plan.end == by_trying_everything(question, 8)


def test_what_can_begin_late_begins_late() -> None:
    question = small(Task("early", 2, {"people": 1}), Task("long", 20), gaps=(Gap("early", "long", 0),))
    loose = PlanQuestion((*question.tasks, Task("prep", 3, {"people": 1})), question.resources, question.gaps)
    plan = find_plan(loose, Aims(late={"prep": 1}))
    assert plan is not None
    assert plan.starts["prep"] + 3 == plan.end == 22


def test_no_plan_is_none() -> None:
    impossible = small(Task("a", 2), Task("b", 2), gaps=(Gap("a", "b", 5, None), Gap("b", "a", 5, None)))
    assert find_plan(impossible, Aims()) is None
    assert find_plan(small(Task("a", 5, earliest=3, latest=6)), Aims()) is None


def test_better_plans_are_told_and_the_search_can_be_stopped() -> None:
    tasks = tuple(Task(f"t{at}", 3 + at % 5, {"people": 1}) for at in range(30))
    told: list[Plan] = []

    def stop(plan: Plan) -> bool:
        told.append(plan)
        return False

    question = PlanQuestion(tasks, (Resource("people", 2),))
    plan = find_plan(question, Aims(), progress=stop)
    assert told
    assert plan is not None
    assert faults_of(question, plan.starts) == []


def test_a_search_that_no_one_wants_ends_before_it_has_found_anything() -> None:
    tasks = tuple(Task(f"t{at}", 3 + at % 7, {"people": 1}) for at in range(60))
    looks = iter(range(1000))
    question = PlanQuestion(tasks, (Resource("people", 3),), horizon=100)
    assert find_plan(question, Aims(), seconds=600, going_on=lambda: next(looks) < 3) is None


def test_absences_that_overlap_take_no_more_than_there_is() -> None:
    """Someone has left, and then nobody works through lunch: that is not one person too many."""
    away = (Absence("people", 20, 60, 1, "left"), Absence("people", 30, 40, 2, "lunch"))
    question = PlanQuestion((Task("a", 10, {"people": 2}), Task("b", 15, {"people": 1})), (Resource("people", 2),))
    plan = find_plan(replace(question, absences=away), Aims())
    assert plan is not None
    assert plan.end == 25
    merged = taken_away(replace(question, absences=away), question.resources[0])
    assert merged == ((20, 30, 1), (30, 40, 2), (40, 60, 1))


def test_facts_may_break_rules_among_themselves_and_still_take_their_place() -> None:
    tasks = (Task("a", 10, {"people": 1}), Task("b", 10, {"people": 1}), Task("c", 10, {"people": 1}))
    question = PlanQuestion(
        tasks,
        (Resource("people", 1),),
        (Gap("a", "b", 0, 5),),
        pinned={"a": 0, "b": 5},
        begun=frozenset({"a", "b"}),
    )
    plan = find_plan(question, Aims())
    assert plan is not None
    assert plan.starts["c"] == 15
    assert find_plan(replace(question, begun=frozenset()), Aims()) is None


def test_what_is_kept_takes_its_place_until_the_last_that_uses_it_begins() -> None:
    """Two trays and room for one: the second goes in when both dishes that use the first have begun."""
    tasks = (
        Task("chill", 10, {"fridge": 1}, until=("dress", "serve")),
        Task("other tray", 10, {"fridge": 1}),
        Task("dress", 5),
        Task("serve", 5, earliest=40),
    )
    gaps = (Gap("chill", "dress", 0), Gap("chill", "serve", 0), Gap("chill", "other tray", 0))
    question = PlanQuestion(tasks, (Resource("fridge"),), gaps)
    plan = find_plan(question, Aims())
    assert plan is not None
    assert (plan.starts["other tray"], plan.end) == (40, 50)
    assert faults_of(question, plan.starts) == []
    assert faults_of(question, {**plan.starts, "other tray": 15}) == ["fridge is overfull at minute 15"]
    let_go = replace(question, tasks=(replace(tasks[0], until=()), *tasks[1:]))
    sooner = find_plan(let_go, Aims())
    assert sooner is not None
    assert sooner.starts["other tray"] < 40


def test_a_pair_of_hands_of_its_own_is_there_for_every_task() -> None:
    """Counting heads would let the host be filmed while the host stirs."""
    anyone, host = OneOf(("cook", "host")), OneOf(("host",))
    tasks = (
        Task("stir", 30, one_of=(anyone,)),
        Task("film", 10, one_of=(host,)),
        Task("chop", 25, one_of=(anyone,)),
        Task("close", 10, one_of=(host,), earliest=20),
    )
    question = PlanQuestion(tasks, (Resource("cook"), Resource("host")), pools=(("cook", "host"),))
    plan = find_plan(question, Aims())
    assert plan is not None
    assert plan.proven
    assert plan.end == 45
    assert faults_of(question, plan.starts, plan.taken) == []


def test_the_checker_finds_each_kind_of_fault() -> None:
    question = small(
        Task("a", 4, {"people": 1}),
        Task("b", 4, {"people": 1}),
        Task("c", 2, {"oven": 1}, state=220),
        Task("d", 2, {"oven": 1}, state=150),
        Task("e", 1, earliest=5),
        gaps=(Gap("a", "e", 3, 4),),
        pinned={"c": 0},
    )
    faults = faults_of(question, {"a": 0, "b": 2, "c": 1, "d": 2, "e": 4})
    assert len(faults) == 5
