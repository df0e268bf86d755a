"""A full disk, or one that will not write: the person is told, nothing has changed, and it works once there is room."""

from __future__ import annotations

import errno
import os
import sys
from pathlib import Path

import pytest

from binder.kitchen.binder import Binder, binder_of, every_record
from binder.kitchen.change import changed
from binder.kitchen.food import Food
from binder.kitchen.whole_file import UnwritableFileError
from binder.storage.binder_file import BinderFile, read_binder
from binder.storage.connection import driver
from binder.storage.document import OpenDocument
from binder.storage.file_errors import FullDiskError
from tests.faults.children import needs_fork, said_by
from tests.storage.samples import new_food, priced, stew_day

if sys.platform != "win32":
    import resource

LARGE = changed("Add many", after=[Food(id=f"food_{number}", name="Food", notes="n" * 20_000) for number in range(20)])


def test_a_full_disk_changes_nothing_and_works_again_once_there_is_room(tmp_path: Path) -> None:
    path = tmp_path / "day.binder"
    document = OpenDocument.create(path, stew_day())
    store = document._store
    assert isinstance(store, BinderFile)
    beneath = driver(store._connection)
    pages = beneath.execute("PRAGMA page_count").fetchone()[0]
    beneath.execute(f"PRAGMA max_page_count = {pages + 5}").close()
    with pytest.raises(FullDiskError, match=r"The disk of “day\.binder” is full\. Make room on it and repeat the edit"):
        document.make(LARGE)
    assert document.binder == read_binder(path) == stew_day()
    assert document.undo_label is None
    document.make(priced(stew_day(), 399))
    beneath.execute("PRAGMA max_page_count = 100000").close()
    document.make(LARGE)
    assert document.binder == read_binder(path)
    assert len(document.binder.foods) == 21
    document.close()


@needs_fork
def test_a_file_that_may_not_grow_changes_nothing(tmp_path: Path) -> None:
    path = tmp_path / "day.binder"
    document = OpenDocument.create(path, stew_day())
    document.close()

    def starve() -> str:
        starved = OpenDocument.open(path)
        limit = path.stat().st_size + 4096
        resource.setrlimit(resource.RLIMIT_FSIZE, (limit, resource.RLIM_INFINITY))
        try:
            starved.make(LARGE)
        except FullDiskError:
            said = "full"
        except Exception as error:  # noqa: BLE001 - the child says what it met
            said = f"{type(error).__name__}: {error}"
        assert starved.binder == stew_day()
        resource.setrlimit(resource.RLIMIT_FSIZE, (resource.RLIM_INFINITY, resource.RLIM_INFINITY))
        starved.make(new_food("salt"))
        return said

    said = said_by(starve)
    assert said == "full" or said.startswith("DiskTroubleError: The disk would not read or write “day.binder”"), said
    assert set(read_binder(path).foods) == {"chickpeas", "salt"}


@needs_fork
@pytest.mark.parametrize("limit", [0, 100, 4096, 100_000])
def test_a_file_that_does_not_fit_is_not_made(tmp_path: Path, limit: int) -> None:
    path = tmp_path / "day.binder"
    path.write_text("precious")
    large = binder_of([*every_record(Binder()), *(edit.after for edit in LARGE.edits if edit.after)])

    def starve() -> str:
        resource.setrlimit(resource.RLIMIT_FSIZE, (limit, resource.RLIM_INFINITY))
        OpenDocument.create(path, large, replace=True)
        return "made"

    assert said_by(starve).startswith(("DiskTroubleError", "FullDiskError", "UnwritableFileError"))
    assert [entry.name for entry in tmp_path.iterdir()] == ["day.binder"]
    assert path.read_text() == "precious"


def test_a_disk_that_is_full_when_the_file_is_put_in_place_leaves_the_old_one(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "day.binder"
    OpenDocument.create(path, stew_day()).close()

    def refuse(_handle: int) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    with monkeypatch.context() as patch:
        patch.setattr("binder.kitchen.whole_file.os.fsync", refuse)
        with pytest.raises(UnwritableFileError, match="the disk is full"):
            OpenDocument.create(path, Binder(), replace=True)
    assert read_binder(path) == stew_day()
    assert [entry.name for entry in tmp_path.iterdir()] == ["day.binder"]
