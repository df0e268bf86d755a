"""An older file becomes a newer one, after a copy of it was kept; where that fails it stays what it was."""

from __future__ import annotations

import shutil
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
import sqlalchemy.exc

from binder.kitchen.binder import Binder
from binder.kitchen.whole_file import UnwritableFileError
from binder.storage.binder_file import BinderFile
from binder.storage.contents import Contents
from binder.storage.file_errors import DamagedFileError, NewerFileError
from binder.storage.opening import open_checked
from binder.storage.schema import SCHEMA_VERSION, revision_of
from binder.storage.upgrade import Migrations

NEXT = SCHEMA_VERSION + 1

STEP = """
from alembic import op
revision = "@next"
down_revision = "@last"

def upgrade():
    op.execute("UPDATE settings SET notes = 'came along'")
    op.execute("CREATE TABLE half_way (id TEXT)")
    op.execute("DROP TABLE half_way")
""".replace("@next", revision_of(NEXT)).replace("@last", revision_of(SCHEMA_VERSION))


@pytest.fixture
def newer(tmp_path: Path) -> Migrations:
    """The migrations of a later version of the program, with one step more."""
    folder = tmp_path / "later" / "migrations"
    shutil.copytree(Migrations().folder, folder, ignore=shutil.ignore_patterns("__pycache__"))
    (folder / "versions" / f"{NEXT:04d}_next.py").write_text(STEP)
    return Migrations(folder, NEXT)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    made = tmp_path / "day.binder"
    BinderFile.create(made, Contents(Binder())).close()
    return made


def version_of(path: Path) -> int:
    with closing(sqlite3.connect(path)) as connection:
        return int(connection.execute("PRAGMA user_version").fetchone()[0])


def test_an_older_file_is_brought_up_to_date_and_a_copy_kept(path: Path, newer: Migrations) -> None:
    before = path.read_bytes()
    with BinderFile.open(path, migrations=newer) as file:
        assert file.opened.binder.settings.notes == "came along"
    copy = path.with_name("day.binder.before-upgrade")
    assert version_of(path) == NEXT
    assert version_of(copy) == SCHEMA_VERSION
    assert len(copy.read_bytes()) == len(before)
    with BinderFile.open(copy) as file:
        assert file.opened.binder == Binder()
    with BinderFile.open(path, migrations=newer) as file:
        assert file.opened.binder.settings.notes == "came along"


def test_an_earlier_copy_is_not_lost(path: Path, newer: Migrations) -> None:
    path.with_name("day.binder.before-upgrade").write_text("precious")
    BinderFile.open(path, migrations=newer).close()
    assert path.with_name("day.binder.before-upgrade").read_text() == "precious"
    assert version_of(path.with_name("day.binder.before-upgrade-2")) == SCHEMA_VERSION


@pytest.mark.parametrize(
    ("last_line", "error"),
    [
        ("    raise ZeroDivisionError", ZeroDivisionError),
        ('    op.execute("SELECT nothing FROM nowhere")', sqlalchemy.exc.OperationalError),
        ("    op.execute(\"INSERT INTO measures VALUES ('m', 'no such food', 'cup', '', 1.0, '')\")", DamagedFileError),
        ("    op.execute(\"UPDATE settings SET id = 'other'\")", DamagedFileError),
    ],
)
def test_a_step_that_fails_leaves_the_file_as_it_was(
    path: Path, newer: Migrations, last_line: str, error: type[Exception]
) -> None:
    step = newer.folder / "versions" / f"{NEXT:04d}_next.py"
    step.write_text(STEP + last_line + "\n")
    before = path.read_bytes()
    with pytest.raises(error):
        BinderFile.open(path, migrations=newer)
    assert path.read_bytes() == before
    step.write_text(STEP)
    with BinderFile.open(path, migrations=newer) as file:
        assert file.opened.binder.settings.notes == "came along"


def test_without_room_for_the_copy_nothing_is_touched(
    path: Path, newer: Migrations, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_arguments: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("binder.storage.upgrade.back_up", refuse)
    before = path.read_bytes()
    with pytest.raises(UnwritableFileError, match="disk is full"):
        BinderFile.open(path, migrations=newer)
    assert path.read_bytes() == before
    assert not path.with_name("day.binder.before-upgrade").exists()


def test_reading_alone_changes_no_file(path: Path, newer: Migrations) -> None:
    before = path.read_bytes()
    opened = open_checked(path, patience=1.0, migrations=newer, leave_as_is=True)
    opened.connection.close()
    opened.connection.engine.dispose()
    assert opened.contents.binder.settings.notes == "came along"
    assert path.read_bytes() == before
    assert [entry.name for entry in path.parent.iterdir() if entry.is_file()] == ["day.binder"]


def test_a_newer_file_is_left_alone(path: Path, newer: Migrations) -> None:
    BinderFile.open(path, migrations=newer).close()
    before = path.read_bytes()
    with pytest.raises(NewerFileError) as caught:
        BinderFile.open(path)
    assert str(caught.value) == (
        f"“day.binder” was written by a newer version of the program (its format is {NEXT}, "
        f"this one reads up to {SCHEMA_VERSION}). Update the program; the file is as it was."
    )
    assert path.read_bytes() == before
