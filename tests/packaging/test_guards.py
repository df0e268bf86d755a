"""The guards in tests/conftest.py hold every other test to account, so they are seen here to catch it."""

from __future__ import annotations

from pathlib import Path

import pytest

CONFTEST = Path(__file__).resolve().parents[1] / "conftest.py"

CULPRITS = """
import logging
import threading

import pytest
from PySide6.QtCore import QThread, QTimer

kept = []

def test_leaves_a_thread():
    thread = threading.Thread(target=threading.Event().wait, daemon=True)
    thread.start()

def test_leaves_a_timer(qapp):
    kept.append(QTimer())
    kept[-1].start(1000)

def test_leaves_a_qthread(qapp):
    kept.append(QThread())
    kept[-1].start()

def test_logs_unawares():
    logging.getLogger("binder.anything").warning("half of it is gone")

@pytest.mark.expects_log("all of it")
def test_logs_something_else():
    logging.getLogger("binder.anything").error("half of it is gone")

@pytest.mark.expects_log
def test_does_not_log():
    pass
"""

INNOCENTS = """
import logging
import threading

import pytest
from PySide6.QtCore import QThread, QTimer

def test_ends_its_thread():
    thread = threading.Thread(target=lambda: None)
    thread.start()

def test_stops_what_it_started(qapp):
    timer, thread = QTimer(), QThread()
    timer.start(1000)
    thread.start()
    timer.stop()
    thread.quit()
    assert thread.wait(5000)

def test_says_less_than_a_warning():
    logging.getLogger("binder.anything").info("opened")

@pytest.mark.expects_log("half of it")
def test_says_what_is_expected():
    logging.getLogger("binder.anything").warning("half of it is gone")
"""


@pytest.fixture
def guarded(pytester: pytest.Pytester) -> pytest.Pytester:
    """A folder of tests under the same guards, which here are less patient."""
    patient = "_SECONDS_TO_END = 5.0"
    text = CONFTEST.read_text(encoding="utf-8")
    assert patient in text
    pytester.makeconftest(text.replace(patient, "_SECONDS_TO_END = 0.05"))
    pytester.makeini("[pytest]\nmarkers = expects_log\nqt_api = pyside6\n")
    return pytester


def test_each_thing_left_running_or_logged_fails_its_test(guarded: pytest.Pytester) -> None:
    guarded.makepyfile(CULPRITS)
    outcome = guarded.runpytest_subprocess("-p", "no:cacheprovider")
    outcome.assert_outcomes(passed=6, errors=6)
    outcome.stdout.fnmatch_lines_random(
        [
            "*Threads left running*",
            "*Left running: QTimer*",
            "*Left running: QThread*",
            "*Logged unexpectedly*",
            "*Expected in the log, and not there: all of it",
            "*Expected in the log, and not there: anything",
        ]
    )


def test_what_ends_in_time_and_what_is_expected_passes(guarded: pytest.Pytester) -> None:
    guarded.makepyfile(INNOCENTS)
    guarded.runpytest_subprocess("-p", "no:cacheprovider").assert_outcomes(passed=4)
