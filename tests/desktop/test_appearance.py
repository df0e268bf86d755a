"""Light, dark and larger: the whole window follows at once."""

from __future__ import annotations

from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from binder.desktop.appearance import Wardrobe
from binder.desktop.dividers import Divider
from binder.desktop.main_window import MainWindow
from binder.desktop.theme import DARK, LIGHT, tokens_for
from binder.desktop.typeface import BODY_POINTS, FAMILY


def test_the_face_is_our_own(wardrobe: Wardrobe, qapp: QApplication) -> None:
    assert qapp.font().family() == FAMILY
    assert qapp.font().pointSizeF() == BODY_POINTS


def test_dark_is_worn_by_everything(window: MainWindow) -> None:
    window.actions_.run("dark")
    assert tokens_for(window.palette()) is DARK
    assert tokens_for(window.checks.sheet.palette()) is DARK
    assert window.checks.sheet.palette().color(QPalette.ColorRole.Text).name().upper() == DARK.ink
    assert window.actions_["dark"].isChecked()
    window.actions_.run("light")
    assert tokens_for(window.palette()) is LIGHT


def test_larger_text_makes_larger_rows(window: MainWindow) -> None:
    order = window.page("shoot").order  # type: ignore[attr-defined]
    before = order.rowHeight(0)
    for _time in range(4):
        window.actions_.run("larger")
    assert order.rowHeight(0) > before * 1.3
    window.actions_.run("usual")
    assert order.rowHeight(0) == before


def test_text_twice_as_large_is_not_cut(window: MainWindow, qtbot: QtBot) -> None:
    """WCAG 1.4.4: rows, columns and dividers grow with their text."""
    for _time in range(8):
        window.actions_.run("larger")
    order = window.page("shoot").order  # type: ignore[attr-defined]
    metrics = order.fontMetrics()
    assert order.rowHeight(0) >= 2 * metrics.height()
    dividers: list[Divider] = window.dividers.findChildren(Divider)
    assert dividers
    widest = max(metrics.horizontalAdvance(divider.text()) for divider in dividers)
    qtbot.waitUntil(lambda: min(divider.width() for divider in dividers) > widest)
