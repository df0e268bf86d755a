"""Backups: one a day, a few days back, each binder's own."""

from __future__ import annotations

from datetime import datetime, timedelta
from pathlib import Path

import pytest

from binder.desktop.backups import KEPT, Backups
from binder.kitchen.binder import Binder
from binder.storage.document import OpenDocument

NOON = datetime(2026, 11, 6, 12, 0)  # noqa: DTZ001 - the clock on the wall


@pytest.fixture
def backups(tmp_path: Path) -> Backups:
    return Backups(tmp_path / "backups")


def document_at(path: Path, binder: Binder) -> OpenDocument:
    path.parent.mkdir(parents=True, exist_ok=True)
    return OpenDocument.create(path, binder)


def test_one_is_made_a_day(backups: Backups, tmp_path: Path, chickpeas: Binder) -> None:
    document = document_at(tmp_path / "day.binder", chickpeas)
    made = backups.make(document, NOON)
    assert made is not None
    assert made.name == "2026-11-06 12.00.binder"
    assert backups.make(document, NOON + timedelta(hours=5)) is None
    assert backups.make(document, NOON + timedelta(days=1)) is not None
    document.close()
    kept = OpenDocument.open(made)
    assert kept.binder == chickpeas
    kept.close()


def test_the_oldest_go(backups: Backups, tmp_path: Path) -> None:
    document = document_at(tmp_path / "day.binder", Binder())
    for day in range(KEPT + 3):
        backups.make(document, NOON + timedelta(days=day))
    document.close()
    names = [path.stem[:10] for path in backups.of(tmp_path / "day.binder")]
    assert len(names) == KEPT
    assert names[0] == "2026-11-17"
    assert names == sorted(names, reverse=True)


def test_files_of_one_name_in_two_places_have_their_own(backups: Backups, tmp_path: Path) -> None:
    for place in ("here", "there"):
        document = document_at(tmp_path / place / "day.binder", Binder())
        assert backups.make(document, NOON) is not None
        document.close()
    assert len(backups.of(tmp_path / "here" / "day.binder")) == 1


def test_what_is_in_no_file_has_none(backups: Backups) -> None:
    document = OpenDocument.in_memory(Binder())
    assert backups.make(document, NOON) is None
