"""A binder file gives back what was put in, writes a change whole or not at all, and says what it is."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from binder.kitchen.binder import Binder
from binder.kitchen.change import Change, Edit, apply
from binder.kitchen.food import Food
from binder.kitchen.whole_file import FileInTheWayError, UnwritableFileError
from binder.storage.binder_file import BehindError, BinderFile, read_binder
from binder.storage.contents import Contents
from binder.storage.file_errors import NewerFileError, OutOfStepError
from binder.storage.journal import Kind
from tests.storage.samples import MOMENT, SCRIBE, new_food, priced, stew_day
from tests.strategies import binders, changes


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "day.binder"


@pytest.fixture
def file(path: Path) -> BinderFile:
    return BinderFile.create(path, Contents(stew_day()), scribe=SCRIBE)


@given(binders())
@settings(max_examples=15, suppress_health_check=[HealthCheck.too_slow, HealthCheck.function_scoped_fixture])
def test_a_binder_comes_back_equal(path: Path, binder: Binder) -> None:
    BinderFile.create(path, Contents(binder), replace=True).close()
    assert read_binder(path) == binder


@given(st.data())
@settings(max_examples=15, suppress_health_check=[HealthCheck.too_slow, HealthCheck.function_scoped_fixture])
def test_changes_written_one_by_one_give_the_binder_they_lead_to(path: Path, data: st.DataObject) -> None:
    binder = data.draw(binders(most=1))
    with BinderFile.create(path, Contents(binder), replace=True) as file:
        made = []
        for number in range(data.draw(st.integers(1, 4))):
            change = data.draw(changes(binder))
            made.append(file.write(change, made_on=number))
            binder = apply(binder, change)
        assert file.read().binder == binder
    with BinderFile.open(path) as file:
        assert file.opened == Contents(binder, tuple(made))
        assert file.opened.entries[0].change() == made[0].change()


def test_a_file_says_what_it_is_and_how_it_is_written(path: Path, file: BinderFile) -> None:
    file.close()
    start = path.read_bytes()[:100]
    assert start[68:72] == b"BIND"
    assert start[60:64] == (1).to_bytes(4)
    assert start[18:20] == b"\x01\x01", "the rollback journal, not WAL"
    assert [entry.name for entry in path.parent.iterdir()] == ["day.binder"]


def test_an_entry_says_what_was_done_when_and_by_whom(file: BinderFile) -> None:
    with file:
        entry = file.write(priced(stew_day(), 399), made_on=0)
        assert file.changes_since(0) == (entry,)
        assert file.changes_since(1) == ()
    assert (entry.sequence, entry.made_on, entry.kind, entry.of) == (1, 0, Kind.EDIT, None)
    assert (entry.label, entry.at, entry.author) == ("Set price to 399", MOMENT, "Ada")
    assert entry.change() == priced(stew_day(), 399)


def test_a_file_in_the_way_is_not_replaced_unasked(path: Path) -> None:
    path.write_text("precious")
    with pytest.raises(FileInTheWayError):
        BinderFile.create(path, Contents(Binder()))
    assert path.read_text() == "precious"
    BinderFile.create(path, Contents(Binder()), replace=True).close()
    assert read_binder(path) == Binder()


def test_a_file_needs_a_folder(tmp_path: Path) -> None:
    with pytest.raises(UnwritableFileError, match="is not there"):
        BinderFile.create(tmp_path / "none" / "day.binder", Contents(Binder()))


@pytest.mark.parametrize(
    "name", ["with space.binder", "100%.binder", "a?b#c&d=e.binder", "ßüл中👩‍🍳.binder", "a'b\"c.binder"]
)
def test_a_file_may_have_any_name(tmp_path: Path, name: str) -> None:
    path = tmp_path / name
    with BinderFile.create(path, Contents(stew_day())) as file:
        file.write(new_food("salt"), made_on=0)
    assert "salt" in read_binder(path).foods
    assert [entry.name for entry in tmp_path.iterdir()] == [name]


def test_a_change_on_an_older_number_is_not_written(file: BinderFile) -> None:
    with file:
        file.write(new_food("salt"), made_on=0)
        with pytest.raises(BehindError):
            file.write(new_food("cumin"), made_on=0)
        assert set(file.read().binder.foods) == {"chickpeas", "salt"}


def test_a_change_that_the_file_has_not_got_is_not_half_written(file: BinderFile) -> None:
    gone = Edit(before=Food(id="gone", name="Gone"), after=None)
    twice = Edit(before=None, after=stew_day().foods["chickpeas"])
    with file:
        for edit in (gone, twice):
            with pytest.raises(OutOfStepError, match="another program has written to it"):
                file.write(Change("Both", (*new_food("salt").edits, edit)), made_on=0)
        assert file.read() == Contents(stew_day())


def test_a_file_that_was_brought_up_to_date_elsewhere_is_not_written(path: Path, file: BinderFile) -> None:
    with file, closing(sqlite3.connect(path)) as newer:
        newer.execute("PRAGMA user_version = 2")
        newer.commit()
        with pytest.raises(NewerFileError):
            file.write(new_food("salt"), made_on=0)


def test_a_copy_is_of_one_moment_and_keeps_the_journal(path: Path, file: BinderFile) -> None:
    copy = path.with_name("copy.binder")
    with file:
        entry = file.write(new_food("salt"), made_on=0)
        file.copy_to(copy)
        file.write(new_food("cumin"), made_on=1)
    with BinderFile.open(copy) as opened:
        assert set(opened.opened.binder.foods) == {"chickpeas", "salt"}
        assert opened.opened.entries == (entry,)


def test_closing_twice_does_no_harm(file: BinderFile) -> None:
    file.close()
    file.close()


def test_a_file_open_here_is_not_read_past_sqlite(
    path: Path, file: BinderFile, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Closing a second handle would drop the locks of the first: sqlite.org/howtocorrupt.html, section 2.2."""

    def refuse(*_arguments: object) -> bytes:
        raise AssertionError

    with file:
        monkeypatch.setattr("binder.storage.file_header.read_start", refuse)
        with BinderFile.open(path) as second:
            assert second.opened == file.opened
    monkeypatch.undo()
    assert read_binder(path) == stew_day()
