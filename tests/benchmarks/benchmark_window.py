"""The window on screen from a cold start: under 4 times a bare PySide6 window; an edit on screen within a frame or two.

Processes are started afresh for each measure. Run under a screen or with QT_QPA_PLATFORM=offscreen:
pytest tests/benchmarks/benchmark_window.py --benchmark-only
"""

from __future__ import annotations

import os
import subprocess
import sys
import time
from typing import TYPE_CHECKING

from binder.desktop.application import Surroundings, dress_application, make_window
from binder.desktop.dialogs import RealDialogs
from binder.desktop.kept_shelf import KeptShelf
from binder.desktop.window_settings import WindowSettings
from binder.kitchen.edits.foods import set_price
from binder.kitchen.paths import samples_folder

if TYPE_CHECKING:
    from pathlib import Path

    from PySide6.QtWidgets import QApplication
    from pytest_benchmark.fixture import BenchmarkFixture

TIMES_A_BARE_WINDOW = 4.0
SECONDS_NO_ONE_NOTICES = 0.1
ROUNDS = 9

_BARE = """
import sys
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QMainWindow
application = QApplication(sys.argv)
window = QMainWindow()
window.show()
QTimer.singleShot(0, application.quit)
application.exec()
"""
_START = """
import sys
from pathlib import Path
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication
from binder.desktop.application import Surroundings, dress_application, frame_window
from binder.desktop.dialogs import RealDialogs
from binder.desktop.first_opening import FirstOpening
from binder.desktop.kept_shelf import KeptShelf
from binder.desktop.window_settings import WindowSettings
application = QApplication(sys.argv[:1])
settings, shelf = WindowSettings(Path(sys.argv[1])), KeptShelf()
wardrobe = dress_application(application, settings)
window = frame_window(wardrobe, Surroundings(shelf, RealDialogs(), settings))
window.show()
"""
_FRAME = (
    _START
    + """
QTimer.singleShot(0, application.quit)
application.exec()
window.close()
"""
)
_BINDER = (
    _START
    + """
opening = FirstOpening(window, shelf, Path(sys.argv[2]))
window.files.opened.connect(application.quit)
application.exec()
window.close()
"""
)


def seconds_of(program: str, *arguments: str) -> float:
    """From the start of a process until its window has been shown and it has ended."""
    start = time.perf_counter()
    subprocess.run([sys.executable, "-c", program, *arguments], check=True, env=_with_bytecode())
    return time.perf_counter() - start


def _with_bytecode() -> dict[str, str]:
    """The surroundings of an installed program: modules are compiled once, not at each start."""
    return {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}


def median_of(benchmark: BenchmarkFixture) -> float:
    """The median of what was measured, in seconds."""
    assert benchmark.stats is not None
    return float(benchmark.stats.stats.median)


def binder_file(folder: Path) -> Path:
    """The first sample as a binder file, as a second start finds it."""
    from binder.exchange.json_document import read_json
    from binder.storage.document import OpenDocument

    path = folder / "sample.binder"
    OpenDocument.create(path, read_json(min(samples_folder().glob("*.json")))).close()
    return path


def test_cold_start_against_a_bare_window(benchmark: BenchmarkFixture, tmp_path: Path) -> None:
    """Each round is preceded by one of the bare window, and the fastest of each count: other work slows both alike."""
    bare: list[float] = []
    seconds_of(_FRAME, str(tmp_path))

    def measure_bare() -> tuple[tuple[str, str], dict[str, object]]:
        bare.append(seconds_of(_BARE))
        return (_FRAME, str(tmp_path)), {}

    benchmark.pedantic(seconds_of, setup=measure_bare, rounds=ROUNDS)  # type: ignore[no-untyped-call]
    assert benchmark.stats is not None
    times = benchmark.stats.stats.min / min(bare)
    benchmark.extra_info["bare window, seconds"] = round(min(bare), 3)
    benchmark.extra_info["times a bare window"] = round(times, 2)
    assert times < TIMES_A_BARE_WINDOW


def test_cold_start_until_the_binder_is_shown(benchmark: BenchmarkFixture, tmp_path: Path) -> None:
    arguments = (_BINDER, str(tmp_path), str(binder_file(tmp_path)))
    seconds_of(*arguments)
    benchmark.pedantic(  # type: ignore[no-untyped-call]
        seconds_of, args=arguments, rounds=ROUNDS
    )


def test_a_price_is_on_screen_everywhere(benchmark: BenchmarkFixture, qapp: QApplication, tmp_path: Path) -> None:
    """Figures, running order, checks, dividers and foot line, painted: within 100 ms (a person sees no wait)."""
    settings = WindowSettings(tmp_path)
    around = Surroundings(KeptShelf(), RealDialogs(), settings)
    wardrobe = dress_application(qapp, settings)
    window = make_window(wardrobe, around, min(samples_folder().glob("*.json")))
    window.resize(1600, 970)
    window.show()
    quote = next(iter(window.desk.binder.quotes))
    prices = iter(range(100, 100_000))

    def edit() -> None:
        binder = window.desk.binder
        window.desk.make(set_price(binder, binder.quotes[quote], next(prices)))
        window.frame.repaint()

    benchmark.pedantic(  # type: ignore[no-untyped-call]
        edit, rounds=40, warmup_rounds=3
    )
    window.close()
    assert median_of(benchmark) < SECONDS_NO_ONE_NOTICES
