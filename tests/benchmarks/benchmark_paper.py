"""How long printing takes. Run by hand: pytest tests/benchmarks/benchmark_paper.py --benchmark-only

Limits (DEVELOPERS.md has what was measured): a sample's whole print set under 0.5 s; that of a shoot of twelve dishes
(some 70 pages) under 1.5 s, and under 8 times what a bare canvas takes for as many lines; one sheet under 0.15 s.
"""

from __future__ import annotations

from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from binder.exchange.json_document import read_json
from binder.kitchen.binder import binder_of, every_record
from binder.kitchen.paths import samples_folder
from binder.paper.print_choices import PrintChoices
from binder.paper.print_set import SheetKind, finished_set, print_set, sheet_bytes
from binder.paper.typeface import Weight, face_of
from tests.benchmarks.day_binder import long_day
from tests.paper.example import SHOOT, full_binder
from tests.paper.reader import read_pages

if TYPE_CHECKING:
    from pytest_benchmark.fixture import BenchmarkFixture

    from binder.kitchen.binder import Binder

SAMPLES = sorted(samples_folder().glob("*.json"))


def _fresh(binder: Binder) -> tuple[tuple[Binder, str], dict[str, object]]:
    """The same binder with nothing worked out yet, and its first shoot."""
    again = binder_of(every_record(binder))
    return (again, next(iter(again.shoots))), {}


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.stem)
def test_the_whole_print_set_of_a_sample(benchmark: BenchmarkFixture, sample: Path, tmp_path: Path) -> None:
    binder = read_json(sample)
    benchmark.pedantic(  # type: ignore[no-untyped-call]
        lambda again, shoot: print_set(again, shoot, tmp_path), setup=lambda: _fresh(binder), rounds=5, warmup_rounds=1
    )


def test_the_whole_print_set_of_twelve_dishes_in_one_file(benchmark: BenchmarkFixture) -> None:
    together = PrintChoices(together=True)
    benchmark.pedantic(  # type: ignore[no-untyped-call]
        lambda again, shoot: finished_set(again, [shoot], choices=together),
        setup=lambda: _fresh(long_day()),
        rounds=5,
        warmup_rounds=1,
    )


def test_a_bare_canvas_drawing_as_many_lines_as_twelve_dishes(benchmark: BenchmarkFixture) -> None:
    (sheet,) = finished_set(long_day(), ["day"], choices=PrintChoices(together=True))
    benchmark(_drawn_bare, [page.text.splitlines() for page in read_pages(sheet.printed.content)])


def _drawn_bare(pages: list[list[str]]) -> None:
    from reportlab.pdfgen.canvas import Canvas

    canvas = Canvas(BytesIO(), pageCompression=1)
    for lines in pages:
        canvas.setFont(face_of(Weight.REGULAR).fontName, 9)
        for at, line in enumerate(lines):
            canvas.drawString(40, 800 - at * 12, line)
        canvas.showPage()
    canvas.save()


@pytest.mark.parametrize("kind", list(SheetKind))
def test_one_sheet_again_after_an_edit(benchmark: BenchmarkFixture, kind: SheetKind) -> None:
    benchmark.pedantic(  # type: ignore[no-untyped-call]
        lambda again, _shoot: sheet_bytes(again, SHOOT, kind),
        setup=lambda: _fresh(full_binder()),
        rounds=10,
        warmup_rounds=1,
    )
