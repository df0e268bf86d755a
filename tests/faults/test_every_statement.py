"""An error at any statement whatever leaves document, undo and file as they were, and the next edit works."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable
from pathlib import Path

import pytest

from binder.kitchen.change import joined
from binder.storage.binder_file import read_binder
from binder.storage.document import OpenDocument
from binder.storage.file_errors import DiskTroubleError
from tests.faults.statements import at_statement
from tests.storage.samples import new_food, priced, stew_day


class MadeUpError(Exception):
    """A fault of the program, anywhere."""


def bug() -> None:
    raise MadeUpError


def bad_disk() -> None:
    error = sqlite3.OperationalError("disk I/O error")
    error.sqlite_errorcode = sqlite3.SQLITE_IOERR_WRITE
    error.sqlite_errorname = "SQLITE_IOERR_WRITE"
    raise error


ACTIONS: dict[str, Callable[[OpenDocument], object]] = {
    "make": lambda document: document.make(joined("Both", [new_food("cumin"), priced(document.binder, 299)])),
    "undo": OpenDocument.undo,
    "redo": OpenDocument.redo,
    "go back": OpenDocument.go_back_to_opened,
}


def state(document: OpenDocument) -> tuple[object, ...]:
    return document.binder, document.history(), document.undo_label, document.redo_label


@pytest.mark.parametrize("action", ACTIONS)
@pytest.mark.parametrize(("fault", "error"), [(bug, MadeUpError), (bad_disk, DiskTroubleError)])
def test_an_error_at_any_statement_changes_nothing(
    tmp_path: Path, action: str, fault: Callable[[], None], error: type[Exception]
) -> None:
    path = tmp_path / "day.binder"
    document = OpenDocument.create(path, stew_day())
    document.make(new_food("salt"))
    document.make(priced(document.binder, 399))
    document.undo()
    announced: list[object] = []
    document.listen(lambda change, _origin: announced.append(change))
    before, number = state(document), 0
    while True:
        number += 1
        with at_statement(number, fault) as count:
            try:
                ACTIONS[action](document)
            except error:
                assert count.sent == number
                assert state(document) == before
                assert announced == []
                assert read_binder(path) == document.binder
                continue
        break
    assert number > 5
    assert len(announced) == 1
    assert state(document) != before
    assert read_binder(path) == document.binder
    document.close()
