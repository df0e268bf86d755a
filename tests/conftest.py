"""What holds for every test: no screen, nothing left running, nothing logged unawares, the same examples each time."""

from __future__ import annotations

import logging
import os
import re
import sys
import threading
import weakref
from typing import TYPE_CHECKING, Any

import pytest
from hypothesis import settings

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

# Tests of the guards below run pytest inside pytest.
pytest_plugins = ["pytester"]

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

# `ci` gives the same examples each time; `thorough` looks for new ones: HYPOTHESIS_PROFILE=thorough
settings.register_profile("ci", derandomize=True, deadline=None, max_examples=60)
settings.register_profile("thorough", deadline=None, max_examples=2000)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "ci"))

_SECONDS_TO_END = 5.0
"""A thread that was told to stop gets this long; one that ends at once costs nothing."""


class _LogWatch(logging.Handler):
    """Keeps what is logged at warning level or above."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.lines: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.lines.append(f"{record.levelname} {record.name}: {record.getMessage()}")


@pytest.fixture(autouse=True)
def nothing_logged_unawares(request: pytest.FixtureRequest) -> Iterator[None]:
    """Fail a test that logs a warning which no `expects_log` marker allows, or logs none where a marker expects it."""
    watch = _LogWatch()
    logging.getLogger().addHandler(watch)
    yield
    logging.getLogger().removeHandler(watch)
    expected = [mark.args[0] if mark.args else "" for mark in request.node.iter_markers("expects_log")]
    said = [line for line in watch.lines if not any(re.search(pattern, line) for pattern in expected)]
    unsaid = [pattern for pattern in expected if not any(re.search(pattern, line) for line in watch.lines)]
    wrong = [f"Logged unexpectedly: {line}" for line in said]
    wrong += [f"Expected in the log, and not there: {pattern or 'anything'}" for pattern in unsaid]
    if wrong:
        pytest.fail("\n".join(wrong), pytrace=False)


@pytest.fixture(autouse=True)
def no_thread_left() -> Iterator[None]:
    """Fail a test that leaves a Python thread running."""
    before = set(threading.enumerate())
    yield
    started = [thread for thread in threading.enumerate() if thread not in before]
    for thread in started:
        thread.join(_SECONDS_TO_END)
    left = [thread.name for thread in started if thread.is_alive()]
    if left:
        pytest.fail(f"Threads left running: {left}", pytrace=False)


@pytest.fixture(autouse=True)
def nothing_of_qt_left(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Fail a test that leaves a QTimer ticking, a QThread running or Qt's thread pool at work."""
    if "PySide6.QtCore" not in sys.modules:
        yield
        return
    from PySide6.QtCore import QThread, QThreadPool, QTimer

    timers = _remember_made(QTimer, monkeypatch)
    threads = _remember_made(QThread, monkeypatch)
    yield
    left = [f"QTimer {name}" for name in _stopped_timers(timers)]
    left += [f"QThread {name}" for name in _stopped_threads(threads)]
    if not QThreadPool.globalInstance().waitForDone(int(_SECONDS_TO_END * 1000)):
        left.append("Qt's global thread pool")
    if left:
        pytest.fail(f"Left running: {', '.join(left)}", pytrace=False)


def _remember_made(kind: type[Any], monkeypatch: pytest.MonkeyPatch) -> weakref.WeakSet[Any]:
    """Every object of this Qt class that Python makes from now on, for as long as it lives."""
    made: weakref.WeakSet[Any] = weakref.WeakSet()
    initialise: Callable[..., None] = kind.__init__

    def initialise_and_remember(self: object, *arguments: object, **named: object) -> None:
        initialise(self, *arguments, **named)
        made.add(self)

    monkeypatch.setattr(kind, "__init__", initialise_and_remember)
    return made


def _stopped_timers(made: weakref.WeakSet[Any]) -> list[str]:
    """Stop the timers that still tick, so that they cannot reach into the next test, and name them."""
    import shiboken6

    ticking = [timer for timer in made if shiboken6.isValid(timer) and timer.isActive()]
    for timer in ticking:
        timer.stop()
    return [f"{timer.objectName() or 'without a name'} in {timer.parent()}" for timer in ticking]


def _stopped_threads(made: weakref.WeakSet[Any]) -> list[str]:
    """Stop the threads that still run and name them."""
    import shiboken6

    running = [thread for thread in made if shiboken6.isValid(thread) and thread.isRunning()]
    for thread in running:
        thread.quit()
        thread.wait(int(_SECONDS_TO_END * 1000))
    return [f"{thread.objectName() or 'without a name'} in {thread.parent()}" for thread in running]
