"""The binder's own settings."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from binder.desktop.main_window import MainWindow
from binder.desktop.settings_sheet import SettingsSheet
from binder.desktop.sheet.sheet import Sight
from binder.desktop.sheet_window import SheetWindow
from binder.kitchen.binder import Binder
from binder.kitchen.errors import BinderError
from binder.kitchen.record import fields_of
from binder.kitchen.settings import AllergenScheme, Measures, SafetyRules, Settings
from tests.desktop.editing import type_over
from tests.desktop.sheets import after_typing, is_even

SETTINGS, SIGHT = SettingsSheet(), Sight(Binder())


@pytest.mark.parametrize(
    ("row", "text", "value"),
    [
        ("name", "Beans", "Beans"),
        ("measures", "metric", Measures.METRIC),
        ("currency", "eur", "EUR"),
        ("locale", "de-DE", "de_DE"),
        ("allergens", "the four", AllergenScheme.EU_FOURTEEN),
        ("safety", "FDA", SafetyRules.FDA_FOOD_CODE),
        ("notes", "ours", "ours"),
    ],
)
def test_typing_edits_a_setting(row: str, text: str, value: object) -> None:
    assert getattr(after_typing(SETTINGS, SIGHT, row, "value", text).settings, row) == value


@pytest.mark.parametrize(
    ("row", "text"), [("currency", "BEANS"), ("locale", "nowhere"), ("measures", "feet"), ("name", "")]
)
def test_what_cannot_be_is_refused(row: str, text: str) -> None:
    with pytest.raises(BinderError):
        SETTINGS.edit(SIGHT, row, "value", text)


def test_what_is_shown_for_editing_is_understood_when_nothing_is_changed() -> None:
    for row in SETTINGS.rows(SIGHT):
        edit = row.cells[1].edit
        assert edit is not None
        assert SETTINGS.edit(SIGHT, row.key, "value", edit).empty
    assert is_even(SETTINGS, SIGHT)


def test_every_setting_is_typed_in_place() -> None:
    assert {row.key for row in SETTINGS.rows(SIGHT)} == {field.name for field in fields_of(Settings)} - {"id"}


OFFSCREEN = pytest.mark.qt_log_ignore("does not support propagateSizeHints")
"""The screen of the tests says so of every window that has a least size."""


def opened(window: MainWindow, qtbot: QtBot) -> SheetWindow:
    """The window of the settings, with the keyboard."""
    window.actions_.run("binder_settings")
    (settings,) = settings_windows(window)
    settings.activateWindow()
    qtbot.waitUntil(settings.isActiveWindow)
    return settings


def settings_windows(window: MainWindow) -> list[SheetWindow]:
    shown: list[SheetWindow] = window.findChildren(SheetWindow)
    return [one for one in shown if one.isVisible()]


@OFFSCREEN
def test_undo_of_a_setting_is_looked_at_in_the_one_window_of_settings(window: MainWindow, qtbot: QtBot) -> None:
    settings = opened(window, qtbot)
    type_over(settings.sheet, "currency", "value", "EUR")
    assert window.desk.binder.settings.currency == "EUR"
    settings.sheet.select_key("name", 1)
    window.actions_.run("undo")
    assert window.desk.binder.settings.currency == "USD"
    assert settings_windows(window) == [settings]
    row = settings.sheet.current_row()
    assert row is not None
    assert row.key == "currency"
    settings.close()
    window.actions_.run("redo")
    (again,) = settings_windows(window)
    row = again.sheet.current_row()
    assert row is not None
    assert row.key == "currency"
    again.close()


@OFFSCREEN
def test_undo_works_by_key_in_the_window_of_settings(window: MainWindow, qtbot: QtBot) -> None:
    settings = opened(window, qtbot)
    type_over(settings.sheet, "name", "value", "Another name")
    QTest.keyClick(settings.sheet, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert window.desk.binder.settings.name == "Chickpea day"
    settings.close()
