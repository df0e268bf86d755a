"""A search at a terminal: what it finds, what it raises, and Ctrl-C, which ends it with the best so far."""

from __future__ import annotations

import signal
from io import StringIO

import pytest

from binder.cli.search import Waiting, searched
from binder.figures.plan_program import find_plan
from binder.figures.plan_question import Aims, Plan, PlanQuestion, Resource, Task


def test_what_it_finds_and_what_it_raises_come_back() -> None:
    assert searched(lambda _waiting: 7, says="") == 7
    with pytest.raises(ZeroDivisionError):
        searched(lambda _waiting: 1 // 0, says="")


def test_ctrl_c_ends_it_with_what_it_has() -> None:
    def search(waiting: Waiting) -> str:
        signal.raise_signal(signal.SIGINT)
        while waiting.going_on():
            pass
        return "the best so far"

    assert searched(search, says="") == "the best so far"


def test_a_second_ctrl_c_ends_the_command() -> None:
    waiting = Waiting(lambda _says: None)
    waiting.leave()
    with pytest.raises(KeyboardInterrupt):
        waiting.leave()


def test_a_solver_lets_ctrl_c_through_while_it_searches_and_after() -> None:
    """The solver's own answer to Ctrl-C would stay when its search is over, and end the program without a word."""
    tasks = tuple(Task(f"t{at}", 3 + at % 7, {"hands": 1}) for at in range(40))
    question = PlanQuestion(tasks, (Resource("hands", 3),))

    def search(waiting: Waiting) -> tuple[Plan | None, Plan | None]:
        def better(_plan: Plan) -> bool:
            if waiting.going_on():
                signal.raise_signal(signal.SIGINT)
            while waiting.going_on():
                pass
            return True

        one = find_plan(question, Aims(), seconds=600, progress=better, going_on=waiting.going_on)
        return one, find_plan(question, Aims(), seconds=600, going_on=waiting.going_on)

    assert find_plan(question, Aims(), seconds=600, progress=lambda _plan: False) is not None
    first, then = searched(search, says="")
    assert first is not None
    assert set(first.starts) == {task.key for task in tasks}
    assert then is None


class Terminal(StringIO):
    """A place to write to that says it is a terminal."""

    def isatty(self) -> bool:
        return True


def test_how_far_it_is_is_shown_on_a_terminal_and_nowhere_else(monkeypatch: pytest.MonkeyPatch) -> None:
    def search(waiting: Waiting) -> None:
        waiting.tell("This plan wraps at 14:10.")

    for screen, shown in ((Terminal(), True), (StringIO(), False)):
        monkeypatch.setattr("sys.stderr", screen)
        searched(search, says="Planning the day.")
        assert ("This plan wraps at 14:10." in screen.getvalue()) is shown
