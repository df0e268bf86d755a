"""What the window remembers survives, and what makes no sense is forgotten."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import QSettings

from binder.desktop.theme import Appearance
from binder.desktop.typeface import BODY_POINTS
from binder.desktop.window_settings import WindowSettings


def test_choices_are_remembered(tmp_path: Path) -> None:
    kept = WindowSettings(tmp_path)
    kept.appearance, kept.points, kept.checks_folded = Appearance.DARK, 13.0, True
    again = WindowSettings(tmp_path)
    assert (again.appearance, again.points, again.checks_folded) == (Appearance.DARK, 13.0, True)


def test_how_cards_are_printed_is_remembered(tmp_path: Path) -> None:
    WindowSettings(tmp_path).print_wishes = {"margin": "laser", "labels": "a4, 3 × 8"}
    assert WindowSettings(tmp_path).print_wishes == {"margin": "laser", "labels": "a4, 3 × 8"}


@pytest.mark.parametrize("kept", ["", "{", "[1]", '{"margin": 3}', "null"])
def test_what_is_no_choice_of_printing_is_not_taken(tmp_path: Path, kept: str) -> None:
    raw = QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat)
    raw.setValue("print_wishes", kept)
    raw.sync()
    assert WindowSettings(tmp_path).print_wishes == {}


def test_a_new_window_looks_as_the_system_does(tmp_path: Path) -> None:
    fresh = WindowSettings(tmp_path)
    assert (fresh.appearance, fresh.points, fresh.checks_folded) == (Appearance.SYSTEM, BODY_POINTS, False)
    assert fresh.recent == []


@pytest.mark.parametrize(("key", "value"), [("appearance", "plaid"), ("points", "huge"), ("points", "nan")])
def test_what_makes_no_sense_is_not_taken(tmp_path: Path, key: str, value: str) -> None:
    raw = QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat)
    raw.setValue(key, value)
    raw.sync()
    kept = WindowSettings(tmp_path)
    assert kept.appearance is Appearance.SYSTEM
    assert 8.0 <= kept.points <= 24.0


def test_the_binders_opened_last_come_first_and_only_once(tmp_path: Path) -> None:
    kept = WindowSettings(tmp_path)
    paths = [tmp_path / f"{number}.binder" for number in range(12)]
    for path in paths:
        path.touch()
        kept.remember(path)
    kept.remember(paths[5])
    assert kept.recent[0] == paths[5]
    assert len(kept.recent) == len(set(kept.recent)) == 9


def test_binders_that_are_gone_are_not_listed(tmp_path: Path) -> None:
    kept = WindowSettings(tmp_path)
    path = tmp_path / "gone.binder"
    path.touch()
    kept.remember(path)
    path.unlink()
    assert kept.recent == []
