"""How long the window ever stands still while 50,000 prices are brought in and taken back: a tenth of a second at most.

The longest time between two looks of a timer is told beside the time that all takes, by the clock:
QT_QPA_PLATFORM=offscreen pytest tests/benchmarks/benchmark_stalls.py --benchmark-only
"""

from __future__ import annotations

import csv
import io
from time import perf_counter
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QObject, QTimer

from binder.desktop.application import Surroundings, dress_application, make_window
from binder.desktop.kept_shelf import KeptShelf
from binder.desktop.larder_page.page import LarderPage
from binder.desktop.window_settings import WindowSettings
from binder.storage.document import OpenDocument
from tests.benchmarks.benchmark_prices import HEAD, larder, rows
from tests.desktop.conftest import Answers

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from PySide6.QtWidgets import QApplication
    from pytest_benchmark.fixture import BenchmarkFixture
    from pytestqt.qtbot import QtBot

    from binder.desktop.main_window import MainWindow

LONG = 180_000


class Watch(QObject):
    """Looks every few milliseconds, and notes the longest time in which it could not."""

    def __init__(self) -> None:
        super().__init__()
        self._last, self.longest = perf_counter(), 0.0
        self._timer = QTimer(self)
        self._timer.setInterval(5)
        self._timer.timeout.connect(self._look)
        self._timer.start()

    def begin(self) -> None:
        """Forget what was noted."""
        self._last, self.longest = perf_counter(), 0.0

    def _look(self) -> None:
        now = perf_counter()
        self._last, self.longest = now, max(self.longest, now - self._last)


@pytest.fixture
def answers(tmp_path: Path) -> Answers:
    written = io.StringIO()
    csv.writer(written).writerows([HEAD, *rows()])
    (tmp_path / "prices.csv").write_text(written.getvalue(), encoding="utf-8")
    return Answers(tmp_path / "prices.csv")


@pytest.fixture
def window(qapp: QApplication, qtbot: QtBot, answers: Answers, tmp_path: Path) -> Iterator[MainWindow]:
    OpenDocument.create(tmp_path / "day.binder", larder()).close()
    settings = WindowSettings(tmp_path)
    surroundings = Surroundings(KeptShelf(tmp_path / "backups"), answers, settings)
    made = make_window(dress_application(qapp, settings), surroundings, tmp_path / "day.binder")
    made.show()
    qtbot.waitExposed(made)
    yield made
    made.close()


@pytest.mark.qt_log_ignore("does not support propagateSizeHints")
def test_prices_brought_in_and_taken_back(benchmark: BenchmarkFixture, window: MainWindow, qtbot: QtBot) -> None:
    window.show_page("larder")
    page, watch = window.page("larder"), Watch()
    assert isinstance(page, LarderPage)
    told: dict[str, int] = {}

    def note(part: str) -> None:
        told[part] = round(watch.longest * 1000)
        watch.begin()

    def bring_in() -> None:
        watch.begin()
        shown = page.import_prices()
        assert shown is not None
        qtbot.waitUntil(shown.wait.isHidden, timeout=LONG)
        note("reading")
        with qtbot.waitSignal(window.desk.changed, timeout=LONG):
            shown.take.click()
        note("writing")
        with qtbot.waitSignal(window.desk.changed, timeout=LONG):
            window.actions_.run("undo")
        note("undo")

    benchmark.pedantic(bring_in, rounds=1)  # type: ignore[no-untyped-call]
    assert not window.desk.binder.packs
    benchmark.extra_info["longest standstill in ms"] = told
    print(told)  # noqa: T201 - what this is run for
