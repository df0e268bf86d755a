"""Planning follows the binder: at once when someone looks, a moment after an edit, never for nothing."""

from __future__ import annotations

import threading
from collections.abc import Callable
from datetime import time, timedelta

import pytest
from PySide6.QtCore import QObject
from pytestqt.qtbot import QtBot

from binder.desktop.day_page.planning import Planning, planning_of
from binder.desktop.day_page.planning_work import Answer, Asked, Hearing, answers, plan_for
from binder.desktop.day_page.trouble import Trouble, trouble_of
from binder.desktop.main_window import MainWindow
from binder.figures.day_activities import ActivityKind
from binder.figures.day_plan import DayPlan
from binder.figures.day_question import day_question
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.edits.day import add_person
from binder.kitchen.edits.foods import set_food
from binder.kitchen.edits.shoots import set_shoot
from tests.desktop.day_page.straight_plan import straight_answer, straight_plan, straight_work, unproven


@pytest.fixture
def asked() -> list[Binder]:
    """The binders that plans were asked for."""
    return []


@pytest.fixture
def planning(window: MainWindow, asked: list[Binder]) -> Planning:
    made = planning_of(window.desk)
    made.work = straight_work(asked)
    return made


def test_a_desk_has_one_planning(window: MainWindow) -> None:
    assert planning_of(window.desk) is planning_of(window.desk)


def test_nothing_is_planned_until_someone_looks(planning: Planning, window: MainWindow, asked: list[Binder]) -> None:
    window.desk.make(set_shoot(window.desk.binder.shoots["day"], reset_minutes=10.0))
    assert not planning.busy
    assert not asked


def test_it_is_planned_at_once_when_someone_looks(planning: Planning, qtbot: QtBot) -> None:
    watcher = QObject()
    planning.attend(watcher, present=True)
    assert planning.busy
    qtbot.waitUntil(lambda: planning.plan is not None and not planning.busy)
    assert not planning.stale
    planning.attend(watcher, present=False)


def test_several_edits_in_a_row_are_planned_once(
    planning: Planning, window: MainWindow, asked: list[Binder], qtbot: QtBot
) -> None:
    watcher = QObject()
    planning.attend(watcher, present=True)
    qtbot.waitUntil(lambda: not planning.busy)
    for minutes in (10.0, 15.0, 20.0):
        window.desk.make(set_shoot(window.desk.binder.shoots["day"], reset_minutes=minutes))
    qtbot.waitUntil(lambda: not planning.busy)
    assert [binder.shoots["day"].reset_minutes for binder in asked] == [5.0, 20.0]
    assert planning.plan is not None
    assert planning.plan.asked.binder is window.desk.binder


def test_the_old_plan_is_stale_while_the_next_is_looked_for(
    planning: Planning, window: MainWindow, qtbot: QtBot
) -> None:
    watcher, go_on = QObject(), threading.Event()
    planning.attend(watcher, present=True)
    qtbot.waitUntil(lambda: not planning.busy)
    before = planning.plan

    def slow(asked: Asked, hearing: Hearing) -> Answer:
        hearing.begun()
        go_on.wait(5)
        return straight_answer(asked)

    planning.work = slow
    window.desk.make(add_person(window.desk.binder, window.desk.binder.shoots["day"], "Wren")[0])
    qtbot.waitUntil(lambda: planning.stale)
    assert planning.plan is before
    go_on.set()
    qtbot.waitUntil(lambda: not planning.busy)
    assert not planning.stale
    assert planning.plan is not before


def test_a_better_plan_is_there_while_the_search_goes_on(planning: Planning, qtbot: QtBot) -> None:
    watcher, go_on = QObject(), threading.Event()

    def bettering(asked: Asked, hearing: Hearing) -> Answer:
        answer = straight_answer(asked)
        plan = answer.plan
        assert plan is not None
        hearing.begun()
        hearing.better(unproven(plan))
        hearing.share(0.4)
        while hearing.going_on() and not go_on.wait(0.01):
            pass
        return answer

    planning.work = bettering
    planning.attend(watcher, present=True)
    qtbot.waitUntil(lambda: planning.plan is not None and planning.share > 0)
    assert planning.searching
    assert not planning.stale
    so_far = planning.plan
    assert so_far is not None
    assert not so_far.proven
    planning.stop()
    qtbot.waitUntil(lambda: not planning.busy)
    assert planning.plan is not so_far


def test_stopping_keeps_the_best_so_far(planning: Planning, qtbot: QtBot) -> None:
    watcher = QObject()

    def nothing_more(asked: Asked, hearing: Hearing) -> Answer:
        plan = straight_plan(asked.binder, asked.shoot)
        assert plan is not None
        hearing.begun()
        hearing.better(unproven(plan))
        while hearing.going_on():
            threading.Event().wait(0.01)
        return Answer(None, plan.asked)

    planning.work = nothing_more
    planning.attend(watcher, present=True)
    qtbot.waitUntil(lambda: planning.plan is not None)
    planning.stop()
    qtbot.waitUntil(lambda: not planning.busy)
    assert planning.plan is not None
    assert planning.trouble is None


def test_leaving_stops_the_search_and_coming_back_goes_on(planning: Planning, qtbot: QtBot) -> None:
    watcher, ended = QObject(), threading.Event()

    def endless(asked: Asked, hearing: Hearing) -> Answer:
        hearing.begun()
        while hearing.going_on():
            threading.Event().wait(0.01)
        ended.set()
        return Answer(None, None)

    work = planning.work
    planning.work = endless
    planning.attend(watcher, present=True)
    qtbot.waitUntil(lambda: planning.searching)
    planning.attend(watcher, present=False)
    assert ended.wait(5)
    assert not planning.busy
    planning.work = work
    planning.attend(watcher, present=True)
    qtbot.waitUntil(lambda: planning.plan is not None)


def test_where_there_is_no_plan_the_trouble_is_told_and_the_old_plan_is_stale(
    planning: Planning, window: MainWindow, qtbot: QtBot
) -> None:
    watcher = QObject()
    planning.attend(watcher, present=True)
    qtbot.waitUntil(lambda: not planning.busy)
    planning.work = lambda asked, hearing: Answer(None, day_question(asked.binder, asked.shoot))
    planning.explain = lambda asked, answer, tell, going_on: Trouble(("Lunch and dish 2 clash.",))
    window.desk.make(set_shoot(window.desk.binder.shoots["day"], reset_minutes=99.0))
    qtbot.waitUntil(lambda: planning.trouble is not None)
    assert planning.plan is not None
    assert planning.stale
    planning.work = straight_work()
    window.desk.make(set_shoot(window.desk.binder.shoots["day"], reset_minutes=5.0))
    qtbot.waitUntil(lambda: planning.trouble is None and not planning.busy)
    assert not planning.stale


def heard(begun: list[bool], better: list[DayPlan] | None = None) -> Hearing:
    """Someone who hears of a search, and has enough of it with the first plan."""
    found: list[DayPlan] = [] if better is None else better
    return Hearing(lambda: begun.append(True), found.append, lambda _share: None, lambda: not found)


def test_an_edit_that_does_not_touch_the_plan_searches_nothing(chickpeas: Binder) -> None:
    before = straight_answer(Asked(chickpeas, "day"))
    renamed = apply(chickpeas, set_food(chickpeas.foods["salt"], name="fine salt"))
    begun: list[bool] = []
    found = plan_for(Asked(renamed, "day", before=before), heard(begun))
    assert not begun
    assert before.plan is not None
    assert found.plan is not None
    assert found.plan.found is before.plan.found
    assert found.plan.asked.binder is renamed


def test_a_plan_answers_only_its_own_question(chickpeas: Binder) -> None:
    answer = straight_answer(Asked(chickpeas, "day"))
    question = day_question(chickpeas, "day")
    assert question is not None
    assert answers(answer, question)
    other = day_question(apply(chickpeas, set_shoot(chickpeas.shoots["day"], reset_minutes=25.0)), "day")
    assert other is not None
    assert not answers(answer, other)


def test_a_real_plan_of_a_real_day(chickpeas: Binder) -> None:
    better: list[DayPlan] = []
    answer = plan_for(Asked(chickpeas, "day"), heard([], better))
    assert better
    assert answer.plan is not None
    assert set(answer.plan.found.starts) == set(answer.plan.asked.question.by_key)


def test_on_the_day_what_has_begun_stays_and_the_rest_is_never_in_the_past(chickpeas: Binder) -> None:
    before = plan_for(Asked(chickpeas, "day"), heard([], []))
    assert before.plan is not None
    filmed = [one for one in before.plan.activities if one.activity.kind is ActivityKind.FILM]
    now = filmed[3].start + timedelta(minutes=1)
    edited = apply(chickpeas, set_shoot(chickpeas.shoots["day"], reset_minutes=7.0))
    after = plan_for(Asked(edited, "day", now, before=before), heard([], []))
    assert after.plan is not None
    starts = {one.activity.key: one.start for one in after.plan.activities}
    for one in before.plan.activities:
        if one.start < now and one.activity.kind is not ActivityKind.WAIT:
            assert starts[one.activity.key] == one.start
        elif one.activity.kind is not ActivityKind.WAIT:
            assert starts[one.activity.key] >= now


def test_running_late_shifts_the_rest_and_can_be_taken_back(
    planning: Planning, window: MainWindow, qtbot: QtBot
) -> None:
    watcher, lates = QObject(), list[float]()
    planning.attend(watcher, present=True)
    qtbot.waitUntil(lambda: not planning.busy)
    on_time = planning.plan

    def late(asked: Asked, hearing: Hearing) -> Answer:
        lates.append(asked.late)
        return straight_answer(asked)

    planning.work = late
    planning.run_late(25)
    qtbot.waitUntil(lambda: not planning.busy)
    assert planning.can_be_on_time_again
    assert planning.plan is not on_time
    window.desk.make(set_shoot(window.desk.binder.shoots["day"], reset_minutes=6.0))
    qtbot.waitUntil(lambda: not planning.busy)
    assert lates == [25, 0]
    planning.be_on_time_again()
    assert planning.plan is on_time
    qtbot.waitUntil(lambda: not planning.busy)
    assert not planning.can_be_on_time_again


def test_trouble_is_told_step_by_step(planning: Planning, qtbot: QtBot) -> None:
    watcher, go_on = QObject(), threading.Event()

    def explain(
        asked: Asked, answer: Answer, tell: Callable[[Trouble], None], going_on: Callable[[], bool]
    ) -> Trouble | None:
        tell(Trouble(("Dishes 2 and 5 clash.",), looking=True))
        go_on.wait(5)
        return Trouble(("Dishes 2 and 5 clash.",))

    planning.work = lambda asked, hearing: Answer(None, day_question(asked.binder, asked.shoot))
    planning.explain = explain
    planning.attend(watcher, present=True)
    qtbot.waitUntil(lambda: planning.trouble is not None)
    assert planning.trouble == Trouble(("Dishes 2 and 5 clash.",), looking=True)
    go_on.set()
    qtbot.waitUntil(lambda: planning.trouble == Trouble(("Dishes 2 and 5 clash.",)))


def test_why_there_is_no_plan_and_what_would_help(chickpeas: Binder) -> None:
    """Wrap an hour after call: no plan; wrapping later, or calling earlier, cannot be enough, but fewer demands are."""
    tight = apply(chickpeas, set_shoot(chickpeas.shoots["day"], wrap=time(7, 30)))
    asked = Asked(tight, "day")
    answer = plan_for(asked, heard([]))
    assert answer.plan is None
    told: list[Trouble] = []
    found = trouble_of(asked, answer, told.append, lambda: True)
    assert found is not None
    assert any("wrap" in says for says in found.says)
    assert told
    assert told[0].looking
    assert not found.looking
