"""A file or folder that may not be written is read, says so, and can be copied where writing is allowed."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from binder.kitchen.errors import BinderError
from binder.storage.binder_file import read_binder
from binder.storage.document import OpenDocument
from tests.faults.children import become_nobody, needs_root, open_folder, said_by
from tests.storage.samples import priced, stew_day

pytestmark = [
    needs_root,  # a permission holds nobody back who is root, so a child becomes someone else
    pytest.mark.skipif(sys.platform == "win32", reason="modes are POSIX's"),
]


@pytest.fixture
def path() -> Iterator[Path]:
    with open_folder() as folder:
        made = folder / "day.binder"
        OpenDocument.create(made, stew_day()).close()
        yield made


def as_nobody(action: Callable[[], str]) -> str:
    def act() -> str:
        become_nobody()
        return action()

    return said_by(act)


def edited(path: Path) -> str:
    """What comes of opening and editing a file."""
    document = OpenDocument.open(path)
    kind = "read only" if document.read_only else "writable"
    try:
        document.make(priced(document.binder, 399))
    except BinderError as error:
        assert document.binder == stew_day()
        return f"{kind}; {type(error).__name__}: {error}"
    return f"{kind}; made"


REFUSED = (
    "read only; ReadOnlyFileError: “day.binder” or its folder is write-protected. "
    "Save a copy in another folder, and go on in that."
)


def test_whoever_may_write_writes(path: Path) -> None:
    path.parent.chmod(0o777)
    path.chmod(0o666)
    assert as_nobody(lambda: edited(path)) == "writable; made"
    assert read_binder(path) != stew_day()


@pytest.mark.parametrize(("folder", "file"), [(0o777, 0o444), (0o555, 0o666), (0o555, 0o444)])
def test_a_protected_file_or_folder_is_read_and_refuses_the_edit(path: Path, folder: int, file: int) -> None:
    path.chmod(file)
    path.parent.chmod(folder)
    before = path.read_bytes()
    assert as_nobody(lambda: edited(path)) == REFUSED
    assert path.read_bytes() == before


def test_a_copy_goes_where_writing_is_allowed(path: Path) -> None:
    path.chmod(0o444)
    with open_folder() as elsewhere:
        elsewhere.chmod(0o777)

        def go_on() -> str:
            document = OpenDocument.open(path)
            document.move_to(elsewhere / "copy.binder")
            document.make(priced(document.binder, 399))
            return "made"

        assert as_nobody(go_on) == "made"
        assert read_binder(elsewhere / "copy.binder").quotes["bag/1"].price == 399


def test_a_file_that_may_not_be_read_says_so(path: Path) -> None:
    path.chmod(0o000)
    assert as_nobody(lambda: edited(path)) == (
        "UnreadableFileError: “day.binder” cannot be read: you have no right to. "
        "Choose another folder, or ask its owner."
    )


def test_a_folder_that_may_not_be_entered_says_so(path: Path) -> None:
    path.parent.chmod(0o000)
    assert as_nobody(lambda: edited(path)).startswith("UnreadableFileError: ")


def test_a_new_file_is_not_made_where_nothing_may_be(path: Path) -> None:
    path.parent.chmod(0o555)

    def create() -> str:
        OpenDocument.create(path.with_name("new.binder"), stew_day())
        return "made"

    assert as_nobody(create).startswith(("UnreachableFileError", "UnwritableFileError"))
    assert [entry.name for entry in path.parent.iterdir()] == ["day.binder"]
