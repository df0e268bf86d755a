"""Two windows, two processes or two people on one file lose nothing, whatever name each has for it."""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest

from binder.storage.binder_file import read_binder
from binder.storage.document import OpenDocument
from binder.storage.file_errors import BusyFileError
from tests.faults.children import code_of, fork, needs_fork
from tests.storage.samples import new_food, priced, stew_day


@pytest.fixture
def path(tmp_path: Path) -> Path:
    made = tmp_path / "day.binder"
    OpenDocument.create(made, stew_day()).close()
    return made


@pytest.fixture
def names(path: Path) -> list[Path]:
    """The file by other names: a symbolic link, a hard link, and a path that goes round."""
    symbolic, hard = path.with_name("symbolic.binder"), path.with_name("hard.binder")
    hard.hardlink_to(path)
    round_about = path.parent / ".." / path.parent.name / path.name
    if os.name == "nt":
        return [path, hard, round_about, path.with_name("DAY.BINDER")]
    symbolic.symlink_to(path)
    return [path, hard, round_about, symbolic]


def test_every_name_is_the_same_file(names: list[Path]) -> None:
    documents = [OpenDocument.open(name) for name in names]
    for number, document in enumerate(documents):
        document.make(new_food(f"food_{number}"))
    for document in documents:
        document.catch_up()
        assert document.binder == documents[0].binder
        document.close()
    found = read_binder(names[0])
    assert set(found.foods) == {"chickpeas", *(f"food_{number}" for number in range(len(names)))}


@needs_fork
def test_processes_that_write_at_once_lose_no_edit(path: Path) -> None:
    def write(who: int) -> None:
        document = OpenDocument.open(path, patience=30)
        for number in range(10):
            document.make(new_food(f"food_{who}_{number}"))

    children = [fork(lambda who=who: write(who)) for who in range(3)]  # type: ignore[misc]
    assert [code_of(child) for child in children] == [0, 0, 0]
    document = OpenDocument.open(path)
    assert len(document.binder.foods) == 31
    assert [entry.sequence for entry in document.history()] == list(range(1, 31))
    while document.undo_label:
        document.undo()
    assert document.binder == stew_day()
    document.close()


@pytest.fixture
def holder(path: Path) -> Iterator[sqlite3.Connection]:
    """Another program on the file."""
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        yield connection


@pytest.mark.parametrize("lock", ["EXCLUSIVE", "IMMEDIATE"])
def test_a_file_that_another_program_holds_says_so_and_can_be_written_later(
    path: Path, holder: sqlite3.Connection, lock: str
) -> None:
    document = OpenDocument.open(path, patience=0.01)
    holder.execute(f"BEGIN {lock}")
    with pytest.raises(BusyFileError, match=r"is held by another program\. Try again in a moment"):
        document.make(priced(document.binder, 399))
    assert document.binder == stew_day()
    assert document.undo_label is None
    holder.execute("ROLLBACK")
    document.make(priced(document.binder, 399))
    assert read_binder(path) == document.binder
    document.close()


def test_a_reader_holds_a_change_back_at_its_end_and_nothing_is_half_written(
    path: Path, holder: sqlite3.Connection
) -> None:
    document = OpenDocument.open(path, patience=0.01)
    holder.execute("BEGIN")
    holder.execute("SELECT * FROM foods").fetchall()
    with pytest.raises(BusyFileError):
        document.make(priced(document.binder, 399))
    assert document.binder == stew_day()
    holder.execute("COMMIT")
    document.make(priced(document.binder, 399))
    assert read_binder(path) == document.binder
    document.close()


def test_a_file_held_exclusively_cannot_be_opened_for_now(path: Path, holder: sqlite3.Connection) -> None:
    holder.execute("BEGIN EXCLUSIVE")
    with pytest.raises(BusyFileError):
        OpenDocument.open(path, patience=0.01)
    holder.execute("ROLLBACK")
    OpenDocument.open(path, patience=0.01).close()
