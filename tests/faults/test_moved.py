"""A file that is moved, deleted, replaced or written to by others is noticed, and the binder is not lost."""

from __future__ import annotations

import os
import shutil
import sqlite3
import sys
from collections.abc import Callable, Iterator
from contextlib import closing
from pathlib import Path

import pytest

from binder.kitchen.binder import Binder
from binder.storage.binder_file import BinderFile, read_binder
from binder.storage.contents import Contents
from binder.storage.document import OpenDocument
from binder.storage.file_errors import DamagedFileError, FileTroubleError, MovedFileError
from tests.storage.samples import new_food, priced, stew_day

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="Windows does not let an open file be moved")


@pytest.fixture
def path(tmp_path: Path) -> Path:
    folder = tmp_path / "shoot"
    folder.mkdir()
    return folder / "day.binder"


@pytest.fixture
def document(path: Path) -> Iterator[OpenDocument]:
    made = OpenDocument.create(path, stew_day())
    made.make(new_food("salt"))
    yield made
    made.close()


def replace_by_another(path: Path) -> None:
    other = path.with_name("other.binder")
    BinderFile.create(other, Contents(Binder())).close()
    other.replace(path)


def remove_folder(path: Path) -> None:
    shutil.rmtree(path.parent)


def rename_folder(path: Path) -> None:
    path.parent.rename(path.parent.with_name("elsewhere"))


@pytest.mark.parametrize(
    "fault", [Path.unlink, replace_by_another, remove_folder, rename_folder, lambda path: path.rename(f"{path}.bak")]
)
def test_the_edit_is_refused_and_the_binder_goes_on_elsewhere(
    path: Path, document: OpenDocument, fault: Callable[[Path], object]
) -> None:
    fault(path)
    before = document.binder
    for action in (lambda: document.make(priced(before, 399)), document.undo):
        with pytest.raises(FileTroubleError) as caught:
            action()
        assert str(caught.value).startswith("“day.binder” ")
        assert document.binder == before
    with pytest.raises(MovedFileError):
        document.catch_up()
    if path.exists():
        assert read_binder(path) == Binder(), "what took its place is not touched"
    new = path.parents[1] / "saved.binder"
    document.move_to(new)
    document.make(priced(document.binder, 399))
    assert read_binder(new) == document.binder
    assert document.undo_label == "Set price to 399"


def test_a_deleted_file_can_be_saved_again_under_its_own_name(path: Path, document: OpenDocument) -> None:
    path.unlink()
    document.move_to(path)
    document.make(priced(document.binder, 399))
    assert read_binder(path) == document.binder


def test_a_touch_is_no_change(path: Path, document: OpenDocument) -> None:
    os.utime(path, (0, 0))
    assert not document.catch_up()
    document.make(priced(document.binder, 399))
    assert read_binder(path) == document.binder


def test_bytes_after_the_end_do_no_harm(path: Path, document: OpenDocument) -> None:
    with path.open("ab") as file:
        file.write(b"appended by a sync client")
    document.make(priced(document.binder, 399))
    document.close()
    assert read_binder(path) == document.binder


def test_a_file_cut_off_while_it_is_open_is_not_trusted(path: Path, document: OpenDocument) -> None:
    os.truncate(path, 8192)
    with pytest.raises(FileTroubleError):
        document.make(priced(document.binder, 399))
    assert document.binder.quotes["bag/1"].price == 349
    document.move_to(path.with_name("saved.binder"))
    document.make(priced(document.binder, 399))
    assert read_binder(path.with_name("saved.binder")) == document.binder


def test_a_row_changed_past_the_journal_is_not_taken_in(path: Path, document: OpenDocument) -> None:
    with closing(sqlite3.connect(path)) as other:
        other.execute("UPDATE quotes SET price = 1")
        other.commit()
    before = document.binder
    with pytest.raises(DamagedFileError, match="seal"):
        document.catch_up()
    assert document.binder == before
