"""An error reaches a person as one sentence; only what nobody can mend is logged."""

from __future__ import annotations

import sys

import pytest

from binder.desktop.errors import ErrorReporter, sentence_for
from binder.kitchen.errors import BinderError


@pytest.fixture
def said() -> list[str]:
    return []


def test_what_can_be_mended_says_its_own_sentence(said: list[str]) -> None:
    def fail() -> None:
        raise BinderError("No price for tahini: add one.")  # noqa: TRY003 - the family itself

    assert not ErrorReporter(said.append).attempt(fail)
    assert said == ["No price for tahini: add one."]


def test_what_is_done_says_nothing(said: list[str]) -> None:
    assert ErrorReporter(said.append).attempt(lambda: None)
    assert not said


def test_a_file_in_trouble_is_named() -> None:
    assert (
        sentence_for(FileNotFoundError(2, "No such file", "old.binder"))
        == "old.binder could not be used: No such file."
    )


@pytest.mark.expects_log("last resort")
def test_what_nobody_caught_is_logged_and_said_without_a_traceback(said: list[str]) -> None:
    error = ZeroDivisionError("division by zero")
    ErrorReporter(said.append).last_resort(ZeroDivisionError, error, None)
    assert len(said) == 1
    assert "division" not in said[0]
    assert "binder is as it was" in said[0]


def test_the_last_resort_is_installed_for_qt(said: list[str], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "excepthook", sys.excepthook)
    reporter = ErrorReporter(said.append)
    reporter.install()
    sys.excepthook(BinderError, BinderError("Mend me."), None)
    assert said == ["Mend me."]
