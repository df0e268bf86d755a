"""After the first opening the other pages are read beside the window, and no figure waits for all of them."""

from __future__ import annotations

import gc
import sys
from importlib.util import find_spec

import pytest
from pytestqt.qtbot import QtBot

from binder.desktop import getting_ready
from binder.desktop.getting_ready import MODULES, GettingReady
from binder.desktop.main_window import MainWindow
from binder.desktop.pages import every_page
from binder.kitchen.binder import Binder


@pytest.mark.parametrize("name", MODULES)
def test_what_is_read_is_there(name: str) -> None:
    assert find_spec(name) is not None


def test_every_page_but_the_first_is_among_them() -> None:
    assert {f"binder.desktop.{entry.key}_page.page" for entry in every_page()[1:]} <= set(MODULES)


def test_all_is_read_once_after_the_first_opening(
    window: MainWindow, chickpeas: Binder, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    frozen: list[int] = []
    monkeypatch.setattr(getting_ready, "set_aside", lambda: frozen.append(1))
    ready = GettingReady(window.files, window.desk.tasks, window)
    for _time in range(2):
        window.files.opened.emit()
    qtbot.waitUntil(lambda: bool(frozen), timeout=20_000)
    assert frozen == [1]
    assert set(MODULES) <= set(sys.modules)
    assert window.desk.binder == chickpeas
    qtbot.waitUntil(lambda: ready not in window.children())


def test_what_is_set_aside_is_passed_by() -> None:
    getting_ready.set_aside()
    try:
        assert gc.get_freeze_count() > 1000
    finally:
        gc.unfreeze()
