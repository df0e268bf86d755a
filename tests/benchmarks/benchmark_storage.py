"""A hundred thousand edits in one change into a binder file, and back out by undo: by processor time."""

from __future__ import annotations

from datetime import date
from time import process_time
from typing import TYPE_CHECKING

import pytest

from binder.kitchen.change import Change, Edit, changed
from binder.kitchen.edits.records import with_values
from binder.kitchen.price import Pack, Quote
from binder.storage.binder_file import read_contents_of
from binder.storage.document import OpenDocument
from tests.benchmarks.benchmark_prices import larder

if TYPE_CHECKING:
    from pathlib import Path

    from pytest_benchmark.fixture import BenchmarkFixture

pytestmark = pytest.mark.benchmark(timer=process_time)

EDITS = 100_000
ROUNDS = 3


def prices() -> Change:
    """50,000 packs with a price each."""
    packs = [Pack(id=f"p{at}", food=f"f{at % 2500}", size=100.0 + at // 2500, unit="g") for at in range(EDITS // 2)]
    quotes = [Quote(id=f"q{at}", pack=f"p{at}", price=100 + at % 700, on=date(2026, 11, 1)) for at in range(EDITS // 2)]
    return changed("Import 50,000 prices", after=[*packs, *quotes])


def test_made(benchmark: BenchmarkFixture, tmp_path: Path) -> None:
    change, number = prices(), iter(range(1000))

    def new() -> tuple[tuple[OpenDocument], dict[str, object]]:
        return (OpenDocument.create(tmp_path / f"{next(number)}.binder", larder()),), {}

    made = benchmark.pedantic(lambda document: (document.make(change), document)[1], setup=new, rounds=ROUNDS)  # type: ignore[no-untyped-call]
    assert len(made.binder.quotes) == EDITS // 2
    made.undo()
    assert made.binder == larder()
    made.close()


def test_changed(benchmark: BenchmarkFixture, tmp_path: Path) -> None:
    """Every price and every pack is another."""
    document = OpenDocument.create(tmp_path / "day.binder", larder())
    document.make(prices())

    def dearer() -> Change:
        packs, quotes = document.binder.packs.values(), document.binder.quotes.values()
        edits = [Edit(before=one, after=with_values(one, size=one.size + 1)) for one in packs]
        edits += [Edit(before=one, after=with_values(one, price=one.price + 1)) for one in quotes]
        return Change("Raise all", tuple(edits))

    def setup() -> tuple[tuple[Change], dict[str, object]]:
        return (dearer(),), {}

    benchmark.pedantic(document.make, setup=setup, rounds=ROUNDS)  # type: ignore[no-untyped-call]
    assert document.binder.quotes["q0"].price == 100 + ROUNDS
    document.close()


def test_taken_back(benchmark: BenchmarkFixture, tmp_path: Path) -> None:
    document = OpenDocument.create(tmp_path / "day.binder", larder())
    document.make(prices())

    def again() -> tuple[tuple[()], dict[str, object]]:
        if document.redo_label:
            document.redo()
        return (), {}

    benchmark.pedantic(document.undo, setup=again, rounds=ROUNDS)  # type: ignore[no-untyped-call]
    assert document.binder == larder()
    document.close()


def test_opened(benchmark: BenchmarkFixture, tmp_path: Path) -> None:
    """A file of as many records, with the journal of how they came."""
    document = OpenDocument.create(tmp_path / "day.binder", larder())
    document.make(prices())
    document.close()
    contents = benchmark.pedantic(read_contents_of, (tmp_path / "day.binder",), rounds=ROUNDS)  # type: ignore[no-untyped-call]
    assert len(contents.binder.packs) == EDITS // 2
