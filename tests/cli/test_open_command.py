"""`binder open` and `binder` alone: the window, and what is said where there can be none."""

from __future__ import annotations

import sys
from pathlib import Path
from types import ModuleType

import pytest

from tests.cli.conftest import Run


@pytest.fixture
def asked_for(monkeypatch: pytest.MonkeyPatch) -> list[Path | None]:
    """What the window was asked to open, in place of a window."""
    asked: list[Path | None] = []

    def start(path: Path | None) -> int:
        asked.append(path)
        return 0

    window = ModuleType("binder.desktop.application")
    window.start = start  # type: ignore[attr-defined]
    monkeypatch.setitem(sys.modules, "binder.desktop.application", window)
    return asked


def test_open_opens_the_binder_named(run: Run, asked_for: list[Path | None]) -> None:
    assert run("open", "soup.binder").exit_code == 0
    assert asked_for == [Path("soup.binder")]


def test_binder_alone_opens_the_window(run: Run, asked_for: list[Path | None]) -> None:
    assert run().exit_code == 0
    assert asked_for == [None]


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="only Linux can be without a screen")
def test_without_a_screen_one_line_says_what_needs_none(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    for variable in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"):
        monkeypatch.delenv(variable, raising=False)
    result = run("open", "soup.binder")
    assert result.exit_code == 3
    assert result.stderr == (
        "The window cannot be opened: there is no screen here. Paper needs none: binder print FILE --out FOLDER.\n"
    )


def test_without_qt_one_line_names_what_is_missing(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "binder.desktop.application", None)
    result = run("open")
    assert result.exit_code == 3
    assert result.stderr.count("\n") == 1
    assert "a part of Qt or of the system is missing" in result.stderr


def test_the_window_is_started_the_way_the_window_has_it() -> None:
    """What stands in for the window above takes what the window itself takes."""
    import inspect

    from binder.desktop.application import start

    assert list(inspect.signature(start).parameters) == ["path"]
