"""A price list that is dropped on the window is brought in, whatever page is shown; a binder is opened as before."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from binder.desktop.main_window import MainWindow
from binder.desktop.price_import.price_window import PriceWindow

pytestmark = pytest.mark.qt_log_ignore("does not support propagateSizeHints")

Drop = Callable[..., bool]
COPY, LEFT, NONE = Qt.DropAction.CopyAction, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier


@pytest.fixture
def drop(window: MainWindow) -> Drop:
    """Drags files onto the window and lets go, where it takes them; whether it does."""

    def let_go(*files: Path) -> bool:
        carried = QMimeData()
        carried.setUrls([QUrl.fromLocalFile(str(file)) for file in files])
        over = QDragEnterEvent(QPointF(50, 50), COPY, carried, LEFT, NONE)
        over.ignore()
        QApplication.sendEvent(window, over)
        if over.isAccepted():
            QApplication.sendEvent(window, QDropEvent(QPointF(50, 50), COPY, carried, LEFT, NONE))
        return over.isAccepted()

    return let_go


@pytest.mark.parametrize("name", ["prices.csv", "Prices.CSV"])
def test_a_dropped_list_is_shown_with_its_rows(
    window: MainWindow, drop: Drop, tmp_path: Path, qtbot: QtBot, name: str
) -> None:
    (tmp_path / name).write_text("food,pack size,price\nTahini,16 oz,8.25\n", encoding="utf-8")
    window.show_page("shoot")
    binder = window.desk.binder
    assert drop(tmp_path / name)
    (shown,) = window.findChildren(PriceWindow)
    qtbot.waitUntil(shown.wait.isHidden, timeout=20_000)
    assert window.shown == "larder"
    assert shown.summary.text() == "1 price is taken."
    assert window.desk.binder is binder
    shown.close()


def test_a_dropped_list_that_is_gone_is_said(window: MainWindow, drop: Drop, tmp_path: Path) -> None:
    drop(tmp_path / "gone.csv")
    assert not window.findChildren(PriceWindow)
    assert "gone.csv" in window.frame.strip.says


def test_several_files_at_once_are_not_taken(drop: Drop, tmp_path: Path) -> None:
    assert not drop(tmp_path / "a.csv", tmp_path / "b.csv")


def test_what_is_no_price_list_is_opened_as_a_binder(window: MainWindow, drop: Drop, tmp_path: Path) -> None:
    opened: list[Path] = []
    window.open_path = lambda path: not opened.append(path)  # type: ignore[func-returns-value, method-assign]
    assert drop(tmp_path / "day.binder")
    assert opened == [tmp_path / "day.binder"]
