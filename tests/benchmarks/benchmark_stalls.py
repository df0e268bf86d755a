"""How long the window ever stands still beside long work: a tenth of a second at most.

50,000 prices are brought in and taken back; packs of 200 foods, 10 each in 4 stores, are searched. The longest time
between two looks of a timer is told beside the time that all takes, by the clock:
QT_QPA_PLATFORM=offscreen pytest tests/benchmarks/benchmark_stalls.py --benchmark-only
"""

from __future__ import annotations

import csv
import gc
import io
from contextlib import contextmanager
from datetime import date
from time import perf_counter
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QObject, QTimer
from PySide6.QtWidgets import QApplication

from binder.desktop.application import Surroundings, dress_application, make_window
from binder.desktop.buying_page.page import SEARCH
from binder.desktop.collecting import GarbageCollector
from binder.desktop.kept_shelf import KeptShelf
from binder.desktop.larder_page.page import LarderPage
from binder.desktop.window_settings import WindowSettings
from binder.figures.shopping import shopping_list
from binder.kitchen.binder import binder_of
from binder.kitchen.edits.buying import set_store
from binder.kitchen.food import Food
from binder.kitchen.price import Pack, Quote, Store
from binder.kitchen.recipe import Line, Recipe, Step
from binder.kitchen.settings import SETTINGS_ID, Settings
from binder.kitchen.shoot import Build, Dish, Shoot
from binder.storage.document import OpenDocument
from tests.benchmarks.benchmark_packs import STORES, question
from tests.benchmarks.benchmark_prices import HEAD, larder, rows
from tests.desktop.conftest import Answers

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from pathlib import Path

    from pytest_benchmark.fixture import BenchmarkFixture
    from pytestqt.qtbot import QtBot

    from binder.desktop.main_window import MainWindow
    from binder.kitchen.binder import Binder

LONG = 180_000

SETTLING = 300
"""Milliseconds in which all that follows a change is shown."""


class Watch(QObject):
    """Looks every few milliseconds, and notes the longest time in which it could not."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._last, self.longest = perf_counter(), 0.0
        self._timer = QTimer(self)
        self._timer.setInterval(5)
        self._timer.timeout.connect(self._look)
        self._timer.start()

    def begin(self) -> None:
        """Forget what was noted."""
        self._last, self.longest = perf_counter(), 0.0

    def told(self) -> int:
        """The longest time in milliseconds; then it begins anew."""
        longest = round(self.longest * 1000)
        self.begin()
        return longest

    def _look(self) -> None:
        now = perf_counter()
        self._last, self.longest = now, max(self.longest, now - self._last)


@pytest.fixture
def answers(tmp_path: Path) -> Answers:
    return Answers(tmp_path / "prices.csv")


def shoot_of_many_foods() -> Binder:
    """One dish with 200 lines, each food in 10 packs, 4 stores that cost something to go to."""
    needs, offers = question(1)
    today = date(2026, 11, 1)
    foods = {need.food: Food(id=need.food.replace(" ", "-"), name=need.food) for need in needs}
    stores = [Store(id=name.replace(" ", "-"), name=name, trip_cost=300) for name in STORES]
    lines = (
        Line(
            id=f"line-{at}",
            step="step",
            position=at,
            food=foods[need.food].id,
            low=need.grams,
            high=need.grams,
            unit="g",
        )
        for at, need in enumerate(needs)
    )
    packs = [
        Pack(
            id=offer.key.replace("/", "-"),
            food=foods[offer.food].id,
            store=offer.store.replace(" ", "-"),
            size=offer.grams,
            unit="g",
        )
        for offer in offers
    ]
    quotes = (
        Quote(id=f"quote-{pack.id}", pack=pack.id, price=offer.price, on=today)
        for pack, offer in zip(packs, offers, strict=True)
    )
    return binder_of(
        [
            Settings(id=SETTINGS_ID, name="Binder"),
            *foods.values(),
            *stores,
            *packs,
            *quotes,
            Recipe(id="recipe", name="All of it", portions=10),
            Step(id="step", recipe="recipe", title="Put it together"),
            *lines,
            Shoot(id="shoot", name="The large one", on=date(2026, 12, 8)),
            Dish(id="dish", shoot="shoot", recipe="recipe", portions=10),
            Build(id="build", dish="dish"),
        ]
    )


@contextmanager
def window_on(binder: Binder, answers: Answers, folder: Path, qtbot: QtBot) -> Iterator[MainWindow]:
    OpenDocument.create(folder / "day.binder", binder).close()
    settings = WindowSettings(folder)
    surroundings = Surroundings(KeptShelf(folder / "backups"), answers, settings)
    application = QApplication.instance()
    assert isinstance(application, QApplication)
    made = make_window(dress_application(application, settings), surroundings, folder / "day.binder")
    collector = GarbageCollector(made)
    made.show()
    qtbot.waitExposed(made)
    yield made
    made.close()
    for part in (collector, *made.findChildren(Watch)):
        for timer in part.findChildren(QTimer):
            timer.stop()
    gc.enable()


@pytest.mark.qt_log_ignore("does not support propagateSizeHints")
def test_prices_brought_in_and_taken_back(
    benchmark: BenchmarkFixture, answers: Answers, tmp_path: Path, qtbot: QtBot
) -> None:
    written = io.StringIO()
    csv.writer(written).writerows([HEAD, *rows()])
    (tmp_path / "prices.csv").write_text(written.getvalue(), encoding="utf-8")
    told: dict[str, int] = {}

    def bring_in(window: MainWindow, page: LarderPage, watch: Watch) -> None:
        watch.begin()
        shown = page.import_prices()
        assert shown is not None
        qtbot.waitUntil(shown.wait.isHidden, timeout=LONG)
        told["reading"] = watch.told()
        with qtbot.waitSignal(window.desk.changed, timeout=LONG):
            shown.take.click()
        qtbot.wait(SETTLING)
        told["writing"] = watch.told()
        with qtbot.waitSignal(window.desk.changed, timeout=LONG):
            window.actions_.run("undo")
        qtbot.wait(SETTLING)
        told["undo"] = watch.told()

    with window_on(larder(), answers, tmp_path, qtbot) as window:
        window.show_page("larder")
        page = window.page("larder")
        assert isinstance(page, LarderPage)
        qtbot.wait(1500)
        benchmark.pedantic(bring_in, (window, page, Watch(window)), rounds=1)  # type: ignore[no-untyped-call]
        assert not window.desk.binder.packs
    benchmark.extra_info["longest standstill in ms"] = told
    print(told)  # noqa: T201 - what this is run for


def dear_and_cheap(cost: int) -> int:
    """A trip that costs more than all the food, or as little as before: the whole list is another."""
    return 300 if cost > 300 else 100_000


@pytest.mark.qt_log_ignore("does not support propagateSizeHints")
@pytest.mark.parametrize("moved", [lambda cost: cost + 1, dear_and_cheap], ids=["the same list", "another list"])
def test_packs_searched(
    benchmark: BenchmarkFixture, answers: Answers, tmp_path: Path, qtbot: QtBot, moved: Callable[[int], int]
) -> None:
    told: list[int] = []

    def search(window: MainWindow, watch: Watch) -> None:
        store = next(iter(window.desk.binder.stores.values()))
        watch.begin()
        window.desk.make(set_store(store, trip_cost=moved(store.trip_cost)))
        qtbot.waitUntil(lambda: not window.desk.tasks.busy(SEARCH), timeout=LONG)
        qtbot.wait(SETTLING)
        told.append(watch.told())

    with window_on(shoot_of_many_foods(), answers, tmp_path, qtbot) as window:
        window.show_page("buying")
        qtbot.waitUntil(lambda: not window.desk.tasks.busy(SEARCH), timeout=LONG)
        qtbot.wait(1500)
        assert shopping_list(window.desk.binder, "shoot").known_spend
        benchmark.pedantic(search, (window, Watch(window)), rounds=5)  # type: ignore[no-untyped-call]
    benchmark.extra_info["longest standstill in ms"] = told
    print(told)  # noqa: T201 - what this is run for
