"""What goes in circles is taken apart in the window's thread, wherever it was made."""

from __future__ import annotations

import gc
import threading
from collections.abc import Iterator

import pytest
from PySide6.QtCore import QObject, QTimer
from PySide6.QtWidgets import QApplication

from binder.desktop.collecting import GarbageCollector, collect_what_is_due


class Circle:
    """Holds itself, and tells in which thread it goes."""

    def __init__(self, gone: list[int]) -> None:
        self.itself, self.gone = self, gone

    def __del__(self) -> None:
        self.gone.append(threading.get_ident())


def many_made(gone: list[int]) -> None:
    """As many as would have Python look for garbage several times."""
    for _each in range(5 * gc.get_threshold()[0]):
        Circle(gone)


@pytest.fixture
def collector(qapp: QApplication) -> Iterator[GarbageCollector]:
    """Its timer does not tick: the test says when it looks."""
    parent = QObject(qapp)
    made = GarbageCollector(parent)
    for timer in made.findChildren(QTimer):
        timer.stop()
    yield made
    parent.deleteLater()


@pytest.mark.usefixtures("collector")
def test_nothing_is_taken_apart_in_the_thread_of_a_worker() -> None:
    gone: list[int] = []
    worker = threading.Thread(target=many_made, args=(gone,))
    worker.start()
    worker.join()
    assert gone == []
    collect_what_is_due()
    assert set(gone) == {threading.get_ident()}


@pytest.mark.usefixtures("collector")
def test_where_little_was_made_nothing_is_looked_through(monkeypatch: pytest.MonkeyPatch) -> None:
    looked: list[int] = []
    gc.collect()
    monkeypatch.setattr(gc, "collect", looked.append)
    collect_what_is_due()
    assert looked == []


def test_the_oldest_that_is_due_is_looked_through(monkeypatch: pytest.MonkeyPatch) -> None:
    looked: list[int] = []
    monkeypatch.setattr(gc, "collect", looked.append)
    for counts in ((800, 11, 3), (800, 3, 11), (800, 3, 3), (3, 3, 3)):
        monkeypatch.setattr(gc, "get_count", lambda counts=counts: counts)
        monkeypatch.setattr(gc, "get_threshold", lambda: (700, 10, 10))
        collect_what_is_due()
    assert looked == [1, 2, 0]


def test_records_made_by_the_ten_thousand_are_not_looked_through(monkeypatch: pytest.MonkeyPatch) -> None:
    looked: list[int] = []
    frozen: list[bool] = []
    monkeypatch.setattr(gc, "collect", looked.append)
    monkeypatch.setattr(gc, "freeze", lambda: frozen.append(True))
    monkeypatch.setattr(gc, "get_count", lambda: (0, 0, 0) if frozen else (100_000, 3, 3))
    collect_what_is_due()
    assert (frozen, looked) == ([True], [])
