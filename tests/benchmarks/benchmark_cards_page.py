"""The page looked at follows an edit within 150 ms: laid out, loaded and drawn, on both samples.

Processor time, so that other work on the machine does not count. What the window shows besides follows after it:
QT_QPA_PLATFORM=offscreen pytest tests/benchmarks/benchmark_cards_page.py --benchmark-only
"""

from __future__ import annotations

import time
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QSize
from PySide6.QtWidgets import QWidget

from binder.desktop.cards_page.laying_out import Layout
from binder.desktop.cards_page.preview import Preview
from binder.exchange.json_document import read_json
from binder.kitchen.change import apply, changed
from binder.kitchen.paths import samples_folder
from binder.paper.print_set import PrintChoices, SheetKind

if TYPE_CHECKING:
    from pathlib import Path

    from PySide6.QtWidgets import QApplication
    from pytest_benchmark.fixture import BenchmarkFixture

MOST = 0.15
"""Seconds from an edit to the page looked at."""

_SCREEN = QSize(620, 800)
"""Pixels of a page shown whole on a window of 1600 × 1000."""


@pytest.mark.parametrize("sample", sorted(samples_folder().glob("*.json")), ids=lambda path: path.stem)
def test_the_cards_follow_an_edit(benchmark: BenchmarkFixture, qapp: QApplication, sample: Path) -> None:
    benchmark._timer = time.process_time
    binder = read_json(sample)
    shoot = next(iter(binder.shoots))
    holder = QWidget()
    preview = Preview(holder)
    steps = sorted(binder.steps)
    edits = 0

    def follow() -> None:
        nonlocal binder, edits
        edits += 1
        step = binder.steps[steps[edits % len(steps)]]
        binder = apply(binder, changed("edit", before=[step], after=[replace(step, text=f"{step.text} more")]))
        printed = Layout(binder, shoot, SheetKind.CARDS, None, PrintChoices()).printed()
        preview.show_pages(printed.content)
        assert not preview.pages.render(0, _SCREEN).isNull()

    benchmark.pedantic(follow, rounds=15, warmup_rounds=2)  # type: ignore[no-untyped-call]
    holder.deleteLater()
    assert benchmark.stats is not None
    assert float(benchmark.stats.stats.median) < MOST
