"""A day planned at once, and the page on it."""

from __future__ import annotations

from datetime import datetime

import pytest
from pytestqt.qtbot import QtBot

from binder.desktop.day_page.day_picture import DayPicture, day_picture
from binder.desktop.day_page.page import DayPage
from binder.desktop.day_page.planning import planning_of
from binder.desktop.day_page.rows import Rows
from binder.desktop.main_window import MainWindow
from binder.figures.day_plan import DayPlan
from binder.kitchen.binder import Binder
from tests.desktop.conftest import MakeWindow
from tests.desktop.day_page.straight_plan import straight_plan, straight_work


@pytest.fixture(scope="session")
def plan(chickpeas: Binder) -> DayPlan:
    made = straight_plan(chickpeas)
    assert made is not None
    return made


@pytest.fixture(scope="session")
def picture(chickpeas: Binder, plan: DayPlan) -> DayPicture:
    """The day by dish, at half past seven on it."""
    return day_picture(chickpeas, plan, Rows.DISHES, now=datetime(2026, 11, 6, 7, 30))  # noqa: DTZ001


@pytest.fixture
def day_window(window_on: MakeWindow, chickpeas: Binder, qtbot: QtBot) -> MainWindow:
    """The window with the page of the day, planned without a solver."""
    window = window_on(chickpeas)
    planning_of(window.desk).work = straight_work()
    window.show_page("day")
    qtbot.waitUntil(lambda: planning_of(window.desk).plan is not None)
    return window


@pytest.fixture
def page(day_window: MainWindow) -> DayPage:
    shown = day_window.page("day")
    assert isinstance(shown, DayPage)
    return shown
