"""A process that ends in the middle of anything leaves a file as it was before or as it should be after."""

from __future__ import annotations

import os
import random
import shutil
import signal
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from binder.kitchen.binder import Binder
from binder.kitchen.change import apply, joined
from binder.storage.binder_file import BinderFile, read_binder
from binder.storage.contents import Contents
from binder.storage.document import OpenDocument
from binder.storage.upgrade import Migrations
from tests.faults.children import CRASHED, code_of, fork, needs_fork
from tests.faults.statements import at_statement
from tests.storage.samples import new_food, priced, stew_day
from tests.storage.test_upgrade import NEXT, STEP

pytestmark = needs_fork


@pytest.fixture
def path(tmp_path: Path) -> Path:
    made = tmp_path / "day.binder"
    BinderFile.create(made, Contents(stew_day())).close()
    return made


def crash() -> None:
    os._exit(CRASHED)


def replayed(contents: Contents) -> Binder:
    """The binder that the journal leads to from the stew's day."""
    binder = stew_day()
    for entry in contents.entries:
        binder = apply(binder, entry.change())
    return binder


def write_for_ever(path: Path, acknowledge: Callable[[int], object]) -> None:
    document, number = OpenDocument.open(path), 0
    while True:
        number += 1
        document.make(joined("Both", [new_food(f"food_{number}"), priced(document.binder, 1000 + number)]))
        acknowledge(number)


@pytest.mark.parametrize("seed", range(8))
def test_a_kill_loses_nothing_that_was_acknowledged(path: Path, seed: int) -> None:
    reading_end, writing_end = os.pipe()
    child = fork(lambda: write_for_ever(path, lambda number: os.write(writing_end, f"{number}\n".encode())))
    os.close(writing_end)
    with os.fdopen(reading_end) as pipe:
        lines = [pipe.readline() for _line in range(random.Random(seed).randrange(1, 12))]
        os.kill(child, signal.SIGKILL)
        lines += pipe.readlines()
    assert code_of(child) == -signal.SIGKILL
    acknowledged = int(lines[-1])
    with BinderFile.open(path) as file:
        assert len(file.opened.entries) in {acknowledged, acknowledged + 1}
        assert file.opened.binder == replayed(file.opened)


def dies_at(number: int, action: Callable[[Any], object], *, opened: Path | None = None) -> bool:
    """Whether a child that dies at a statement's number got so far; it has opened the file before it counts."""

    def attempt() -> None:
        file = BinderFile.open(opened) if opened else None
        with at_statement(number, crash):
            action(file)

    code = code_of(fork(attempt))
    assert code in {0, CRASHED}
    return code == CRASHED


def test_a_change_is_there_whole_or_not_at_all_wherever_it_stops(path: Path) -> None:
    change = joined("Both", [new_food("salt"), priced(stew_day(), 399)])
    original = path.read_bytes()
    number = 0
    while True:
        path.write_bytes(original)
        number += 1
        if not dies_at(number, lambda file: file.write(change, made_on=0), opened=path):
            break
        assert read_binder(path) == stew_day()
    assert number > 5
    assert read_binder(path) == apply(stew_day(), change)


@pytest.mark.parametrize("replace", [False, True])
def test_a_new_file_is_there_whole_or_not_at_all_wherever_it_stops(tmp_path: Path, *, replace: bool) -> None:
    path = tmp_path / "new.binder"
    if replace:
        BinderFile.create(path, Contents(Binder())).close()
    contents, number = Contents(stew_day()), 0
    while True:
        number += 13
        if not dies_at(number, lambda _: BinderFile.create(path, contents, replace=replace)):
            break
        if replace or path.exists():
            assert read_binder(path) in ((Binder(), stew_day()) if replace else (stew_day(),))
        path.unlink(missing_ok=not replace)
        if replace:
            BinderFile.create(path, Contents(Binder())).close()
    assert number > 50
    assert read_binder(path) == stew_day()


def test_a_file_half_brought_up_to_date_is_as_it_was_and_is_brought_up_again(path: Path, tmp_path: Path) -> None:
    folder = tmp_path / "later" / "migrations"
    shutil.copytree(Migrations().folder, folder, ignore=shutil.ignore_patterns("__pycache__"))
    (folder / "versions" / f"{NEXT:04d}_next.py").write_text(STEP)
    newer = Migrations(folder, NEXT)
    original, number = path.read_bytes(), 0
    while True:
        path.write_bytes(original)
        number += 13
        if not dies_at(number, lambda _: BinderFile.open(path, migrations=newer)):
            break
        with BinderFile.open(path, migrations=newer) as file:
            assert file.opened.binder.settings.notes == "came along"
    assert number > 20
