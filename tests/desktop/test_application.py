"""The program as it is started on a screen."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from binder.kitchen.paths import samples_folder

_CHECKOUT = str(Path(__file__).parents[2])
_STARTED = """
import sys
from pathlib import Path
from PySide6.QtCore import Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from binder.desktop.application import start
from binder.desktop.main_window import MainWindow

application = QApplication([])

def press() -> None:
    windows = [one for one in application.topLevelWidgets() if isinstance(one, MainWindow) and one.shown]
    if not windows:
        return
    focus = application.focusWidget()
    QTest.keyClick(focus or windows[0], Qt.Key.Key_2, Qt.KeyboardModifier.ControlModifier)
    print("looked at:", windows[0].shown, "keyboard at:", type(application.focusWidget()).__name__)
    timer.stop()
    windows[0].close()

timer = QTimer()
timer.timeout.connect(press)
timer.start(100)
sys.exit(start(Path(sys.argv[1])))
"""
"""Starts the program, and once a binder is shown presses what turns to the second page."""


@pytest.fixture
def bare_screen() -> Iterator[str]:
    """A screen without a window manager, that gives the keyboard to nobody by itself."""
    program = shutil.which("Xvfb")
    if program is None:
        pytest.skip("Xvfb is not installed: no screen to start on")
    read, write = os.pipe()
    screen = subprocess.Popen(
        [program, "-displayfd", str(write), "-screen", "0", "1280x800x24", "-nolisten", "tcp"],
        pass_fds=(write,),
        stderr=subprocess.DEVNULL,
    )
    os.close(write)
    try:
        with os.fdopen(read) as number:
            yield f":{number.readline().strip()}"
    finally:
        screen.terminate()
        screen.wait(10)


def test_pages_turn_by_key_right_after_the_start_without_a_click(bare_screen: str, tmp_path: Path) -> None:
    homes = dict.fromkeys(("HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME"), str(tmp_path))
    around = {**os.environ, **homes, "DISPLAY": bare_screen, "QT_QPA_PLATFORM": "xcb", "PYTHONPATH": _CHECKOUT}
    sample = min(samples_folder().glob("*.json"))
    done = subprocess.run(
        [sys.executable, "-c", _STARTED, str(sample)],
        env=around,
        capture_output=True,
        text=True,
        timeout=100,
        check=False,
    )
    assert "looked at: dishes keyboard at: SheetView" in done.stdout, done.stderr
