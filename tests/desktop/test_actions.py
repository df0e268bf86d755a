"""Everything that can be done is in a menu, has an access key, and says why where it cannot be done."""

from __future__ import annotations

import re
from collections import Counter
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QMenu

from binder.desktop.action_finder import ActionFinder, offers
from binder.desktop.actions import Menu, Needs, every_action, reason, without_access_key
from binder.desktop.help_window import help_html
from binder.desktop.main_window import MainWindow
from binder.kitchen.binder import Binder
from tests.desktop.conftest import MakeWindow

STANDARD = {
    "undo": QKeySequence.StandardKey.Undo,
    "redo": QKeySequence.StandardKey.Redo,
    "cut": QKeySequence.StandardKey.Cut,
    "copy": QKeySequence.StandardKey.Copy,
    "paste": QKeySequence.StandardKey.Paste,
    "select_all": QKeySequence.StandardKey.SelectAll,
    "delete": QKeySequence.StandardKey.Delete,
    "find": QKeySequence.StandardKey.Find,
    "find_next": QKeySequence.StandardKey.FindNext,
    "new": QKeySequence.StandardKey.New,
    "open": QKeySequence.StandardKey.Open,
    "print": QKeySequence.StandardKey.Print,
    "quit": QKeySequence.StandardKey.Quit,
    "copy_binder": QKeySequence.StandardKey.SaveAs,
    "help": QKeySequence.StandardKey.HelpContents,
    "larger": QKeySequence.StandardKey.ZoomIn,
    "smaller": QKeySequence.StandardKey.ZoomOut,
    "binder_settings": QKeySequence.StandardKey.Preferences,
    "full_screen": QKeySequence.StandardKey.FullScreen,
}
"""Actions with a standard meaning; no other may use a standard key."""


def in_menu(menu: QMenu) -> list[QAction]:
    return [action for action in menu.actions() if not action.isSeparator()]


def test_the_menus_are_those_of_a_desktop_program_in_their_order(window: MainWindow) -> None:
    titles = [without_access_key(action.text()) for action in window.menuBar().actions()]
    assert titles == ["File", "Edit", "View", "Binder", "Tools", "Help"]


def test_every_action_is_in_one_menu(window: MainWindow) -> None:
    shown = Counter(action.objectName() for menu in window.menus.menus.values() for action in in_menu(menu))
    assert shown == Counter(action.id for action in window.actions_.declared())


def test_the_edit_menu_begins_as_everywhere(window: MainWindow) -> None:
    titles = [without_access_key(action.text()) for action in in_menu(window.menus.menus[Menu.EDIT])]
    assert titles == ["Undo", "Redo", "Cut", "Copy", "Paste", "Select all", "Delete", "Find...", "Find next"]


def test_no_menu_opens_another(window: MainWindow) -> None:
    assert not [action for menu in window.menus.menus.values() for action in in_menu(menu) if action.menu() is not None]


def test_every_access_key_is_the_only_one_in_its_menu(window: MainWindow, tmp_path: Path) -> None:
    for number in range(3):
        path = tmp_path / f"Day {number} & more.binder"
        path.touch()
        window.desk.settings.remember(path)
    window.files.list_files(window.actions_)
    window.menus.fill()
    for menu in [*window.menus.menus.values(), None]:
        texts = [action.text() for action in (in_menu(menu) if menu else window.menuBar().actions())]
        keys = [re.findall(r"&([^&])", text.replace("&&", "")) for text in texts]
        assert all(len(found) == 1 for found in keys), texts
        assert len({found[0].casefold() for found in keys}) == len(keys), texts


def test_no_two_actions_have_the_same_keys(window: MainWindow) -> None:
    keys = Counter(one.toString() for action in window.findChildren(QAction) for one in action.shortcuts())
    assert not [key for key, count in keys.items() if count > 1]


def test_standard_keys_keep_their_standard_meaning(window: MainWindow) -> None:
    standard = {
        key.toString(): name
        for name in QKeySequence.StandardKey
        for key in QKeySequence.keyBindings(name)
        if name not in {QKeySequence.StandardKey.Bold, QKeySequence.StandardKey.AddTab}
    }
    for declared in window.actions_.declared():
        for key in window.actions_[declared.id].shortcuts():
            meant = standard.get(key.toString())
            if meant is not None:
                allowed = set(QKeySequence.keyBindings(STANDARD[declared.id])) if declared.id in STANDARD else set()
                assert key in allowed, f"{declared.id} uses {key.toString()}, which means {meant.name}"


def test_what_was_taken_back_is_done_again_with_either_of_the_two_usual_keys(window: MainWindow) -> None:
    keys = {key.toString() for key in window.actions_["redo"].shortcuts()}
    assert {"Ctrl+Shift+Z", "Ctrl+Y"} <= keys


def test_no_key_is_taken_from_the_system(window: MainWindow) -> None:
    for declared in window.actions_.declared():
        for key in window.actions_[declared.id].shortcuts():
            assert "Ctrl+Alt" not in key.toString()
            assert not re.match(r"Alt\+[A-Z]$", key.toString())


def test_dots_stand_only_where_more_is_asked() -> None:
    asking = {action.id for action in every_action() if action.title.endswith("...")}
    assert asking == {
        "new",
        "open",
        "open_damaged",
        "import_prices",
        "export_shopping",
        "copy_binder",
        "backups",
        "export_json",
        "export_calendar",
        "print",
        "find",
        "palette",
        "binder_settings",
    }


@pytest.mark.parametrize("needs", [needs for needs in Needs if needs is not Needs.NOTHING])
def test_what_cannot_be_done_says_why(needs: Needs) -> None:
    assert reason(needs).endswith(".")


def test_a_disabled_action_carries_its_reason(window_on: MakeWindow) -> None:
    window = window_on(Binder())
    undo = window.actions_["undo"]
    assert not undo.isEnabled()
    assert undo.statusTip() == "Nothing has been changed yet."


def test_every_action_that_can_be_done_does_not_fail(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    """All but those that close the window or open others are done one after the other; none may raise."""
    for declared in window.actions_.declared():
        if declared.id not in {"quit", "full_screen", "on_set", "palette", "binder_settings", "help", "about"}:
            window.actions_.follow(window.available)
            window.actions_[declared.id].trigger()


def test_the_finder_of_actions_lists_actions_and_places(window: MainWindow) -> None:
    titles = [offer.title for offer in offers(window.actions_, window.desk, "lar")]
    assert "Larder" in titles
    assert "Larger text" in titles
    found = offers(window.actions_, window.desk, "herb fritters")
    assert {offer.hint for offer in found} >= {"dish 2", "recipe"}


def test_the_finder_of_actions_does_what_is_chosen(window: MainWindow) -> None:
    finder = ActionFinder(window.actions_, window.desk, window)
    finder.field.setText("larder")
    QTest.keyClick(finder.field, Qt.Key.Key_Return)
    assert window.shown == "larder"


def test_the_help_lists_every_key(window: MainWindow) -> None:
    html = help_html(window.actions_)
    for declared in window.actions_.declared():
        keys = window.actions_[declared.id].shortcuts()
        if keys:
            assert keys[0].toString(QKeySequence.SequenceFormat.NativeText).replace("&", "&amp;") in html, declared.id
