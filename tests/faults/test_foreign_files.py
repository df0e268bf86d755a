"""What is no binder, or not this version's, is told in a sentence at once, and nothing in it runs."""

from __future__ import annotations

import io
import os
import sqlite3
import sys
import zipfile
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest

from binder.kitchen.errors import BinderError
from binder.kitchen.whole_file import UnreadableFileError
from binder.storage.binder_file import read_binder
from binder.storage.document import OpenDocument
from binder.storage.file_errors import DamagedFileError, NewerFileError, NotABinderError
from tests.storage.samples import stew_day


def write_zip(path: Path) -> None:
    content = io.BytesIO()
    with zipfile.ZipFile(content, "w") as archive:
        archive.writestr("day.binder", "x")
    path.write_bytes(content.getvalue())


def write_other_database(path: Path) -> None:
    with closing(sqlite3.connect(path)) as connection:
        connection.execute("PRAGMA application_id = 77")
        connection.execute("CREATE TABLE songs (name TEXT)")
        connection.commit()


MAKERS: dict[str, Callable[[Path], object]] = {
    "empty": lambda path: path.write_bytes(b""),
    "text": lambda path: path.write_text("Soak overnight. " * 100),
    "png": lambda path: path.write_bytes(b"\x89PNG\r\n\x1a\n" + bytes(1000)),
    "zip": write_zip,
    "other database": write_other_database,
}


@pytest.mark.parametrize("kind", MAKERS)
def test_a_file_of_another_kind_is_not_a_binder(tmp_path: Path, kind: str) -> None:
    path = tmp_path / "day.binder"
    MAKERS[kind](path)
    before = path.read_bytes()
    with pytest.raises(NotABinderError, match=r"^“day\.binder” is not a binder: .*\. Choose another file\.$"):
        OpenDocument.open(path)
    assert path.read_bytes() == before
    assert [entry.name for entry in tmp_path.iterdir()] == ["day.binder"]


def test_a_folder_is_no_file(tmp_path: Path) -> None:
    with pytest.raises(UnreadableFileError, match="it is a folder"):
        OpenDocument.open(tmp_path)


@pytest.mark.skipif(sys.platform == "win32", reason="pipes and devices are POSIX's")
def test_a_pipe_or_a_device_is_refused_without_waiting(tmp_path: Path) -> None:
    pipe = tmp_path / "day.binder"
    os.mkfifo(pipe)
    for path in (pipe, Path("/dev/zero"), Path("/dev/null")):
        with pytest.raises(UnreadableFileError, match="no plain file"):
            OpenDocument.open(path)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    made = tmp_path / "day.binder"
    OpenDocument.create(made, stew_day()).close()
    return made


def altered(path: Path, *statements: str) -> None:
    with closing(sqlite3.connect(path)) as connection:
        for statement in statements:
            connection.execute(statement)
        connection.commit()


@pytest.mark.parametrize(
    ("statement", "error"),
    [
        ("PRAGMA user_version = 2", NewerFileError),
        ("PRAGMA user_version = 1000", NewerFileError),
        ("PRAGMA user_version = 0", DamagedFileError),
        ("PRAGMA user_version = -3", DamagedFileError),
        ("PRAGMA application_id = 0", NotABinderError),
        ("DROP TABLE measures", DamagedFileError),
        ("DROP TABLE journal", DamagedFileError),
        ("DROP TABLE seal", DamagedFileError),
        ("DELETE FROM seal", DamagedFileError),
        ("DROP INDEX ix_measures_food", DamagedFileError),
        ("ALTER TABLE foods RENAME COLUMN notes TO remarks", DamagedFileError),
        ("ALTER TABLE foods ADD COLUMN colour TEXT", DamagedFileError),
        ("CREATE TABLE songs (name TEXT)", DamagedFileError),
        ("CREATE VIEW cheap AS SELECT * FROM quotes", DamagedFileError),
        ("CREATE TRIGGER gone AFTER UPDATE ON quotes BEGIN DELETE FROM quotes; END", DamagedFileError),
        ("DELETE FROM settings", DamagedFileError),
        ("UPDATE quotes SET pack = 'none'", DamagedFileError),
        ("DELETE FROM foods WHERE id = 'chickpeas'", DamagedFileError),
        ("UPDATE foods SET other_names = 'not json'", DamagedFileError),
        ("UPDATE foods SET other_names = '[1]'", DamagedFileError),
        ("UPDATE foods SET name = x'ff'", DamagedFileError),
        ("UPDATE foods SET name = CAST(x'ff' AS TEXT)", DamagedFileError),
        ("UPDATE quotes SET \"on\" = 'yesterday'", DamagedFileError),
        ("UPDATE quotes SET price = price + 1", DamagedFileError),
    ],
)
def test_a_file_altered_by_another_program_is_refused_in_a_sentence(
    path: Path, statement: str, error: type[BinderError]
) -> None:
    altered(path, statement)
    before = path.read_bytes()
    with pytest.raises(error) as caught:
        OpenDocument.open(path)
    assert str(caught.value).startswith("“day.binder” ")
    assert str(caught.value).endswith(".")
    assert path.read_bytes() == before


def test_what_is_strange_in_a_file_is_named(path: Path) -> None:
    altered(path, "CREATE TABLE songs (name TEXT)", "CREATE VIEW cheap AS SELECT * FROM quotes")
    with pytest.raises(DamagedFileError, match="its tables are not those of a binder: cheap and songs"):
        OpenDocument.open(path)


def test_a_file_in_write_ahead_mode_is_read_and_put_back(path: Path) -> None:
    altered(path, "PRAGMA journal_mode = WAL")
    assert path.read_bytes()[18:20] == b"\x02\x02"
    assert read_binder(path) == stew_day()
    assert path.read_bytes()[18:20] == b"\x01\x01"


def test_a_new_file_is_not_made_by_opening(tmp_path: Path) -> None:
    with pytest.raises(UnreadableFileError, match="is not there"):
        OpenDocument.open(tmp_path / "none.binder")
    assert list(tmp_path.iterdir()) == []
