"""A day on the set with a clock that a test turns."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta

import pytest
from PySide6.QtCore import QCoreApplication, QEvent
from pytestqt.qtbot import QtBot

from binder.desktop.day_page.bars import Bars, bars_of
from binder.desktop.day_page.planning import planning_of
from binder.desktop.main_window import MainWindow
from binder.desktop.set_view.set_window import SetWindow
from binder.figures.day_plan import DayPlan
from binder.kitchen.binder import Binder
from tests.desktop.conftest import MakeWindow
from tests.desktop.day_page.straight_plan import straight_plan, straight_work


@dataclass
class TurnedClock:
    """Shows what it was turned to."""

    now: datetime

    def __call__(self, zone: str) -> datetime:
        return self.now

    def turn(self, **by: float) -> None:
        """On by so much."""
        self.now += timedelta(**by)


@pytest.fixture(scope="session")
def set_plan(chickpeas: Binder) -> DayPlan:
    made = straight_plan(chickpeas)
    assert made is not None
    return made


@pytest.fixture(scope="session")
def set_bars(chickpeas: Binder, set_plan: DayPlan) -> Bars:
    return bars_of(chickpeas, set_plan)


@pytest.fixture
def clock(set_plan: DayPlan) -> TurnedClock:
    """Call, on the day."""
    return TurnedClock(set_plan.asked.clock.call)


MakeSet = Callable[[], SetWindow]


@pytest.fixture
def stage(window_on: MakeWindow, chickpeas: Binder, clock: TurnedClock, qtbot: QtBot) -> Iterator[SetWindow]:
    """The screen for the set, its bell counted instead of rung; type as on a screen of 96 dots to the inch."""
    window: MainWindow = window_on(chickpeas)
    planning = planning_of(window.desk)
    planning.work, planning.clock = straight_work(), clock
    made = SetWindow(window.desk, window, dots=96.0)
    made.sound = lambda: None
    made.resize(1920, 1080)
    made.show()
    qtbot.waitExposed(made)
    qtbot.waitUntil(lambda: planning.plan is not None and not planning.busy)
    made.show_now()
    yield made
    made.close()
    QCoreApplication.sendPostedEvents(made, QEvent.Type.DeferredDelete)
