"""A new file is there whole, and nothing of an older one is mixed into it."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from binder.kitchen.binder import Binder, binder_of, every_record
from binder.kitchen.food import Food
from binder.kitchen.integrity import BrokenReferenceError
from binder.storage.binder_file import read_binder
from binder.storage.contents import Contents
from binder.storage.new_file import create_file


def test_a_journal_that_a_crash_left_of_an_older_file_is_not_played_into_a_new_one(tmp_path: Path) -> None:
    path = tmp_path / "day.binder"
    many = (Food(id=f"food_{number}", name="Food", notes="x" * 3000) for number in range(60))
    create_file(path, Contents(binder_of([*every_record(Binder()), *many])))
    journal = path.with_name("day.binder-journal")
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute(
            "PRAGMA cache_size = 1"
        )  # so that pages go to the disk before the end, and the journal first
        connection.execute("BEGIN IMMEDIATE")
        connection.execute("UPDATE foods SET notes = replace(notes, 'x', 'y')")
        hot = journal.read_bytes()
        connection.execute("ROLLBACK")
    path.unlink()
    journal.write_bytes(hot)
    create_file(path, Contents(Binder()))
    assert [entry.name for entry in tmp_path.iterdir()] == ["day.binder"]
    size = path.stat().st_size
    assert read_binder(path) == Binder()
    assert path.stat().st_size == size


def test_a_binder_that_does_not_hang_together_gets_no_file(tmp_path: Path) -> None:
    orphan = Food(id="soaked", name="Soaked chickpeas", form_of="chickpeas")
    with pytest.raises(BrokenReferenceError):
        create_file(tmp_path / "day.binder", Contents(binder_of([*every_record(Binder()), orphan])))
    assert list(tmp_path.iterdir()) == []
