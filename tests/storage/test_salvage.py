"""What can be read of a damaged file is saved into a new one, with word of what was lost."""

from __future__ import annotations

import random
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from binder.kitchen.binder import Binder, binder_of, every_record
from binder.kitchen.errors import BinderError
from binder.kitchen.food import Food
from binder.storage.binder_file import BinderFile, read_binder
from binder.storage.contents import Contents
from binder.storage.file_errors import BusyFileError, DamagedFileError
from binder.storage.salvage import NothingToSalvageError, read_damaged, salvage
from tests.storage.samples import new_food, priced, stew_day

PAGE = 4096


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """A stew's day with 300 foods more, and a change in its journal."""
    made = tmp_path / "day.binder"
    foods = (Food(id=f"food_{number}", name=f"Food {number}", notes="n" * 200) for number in range(300))
    binder = binder_of([*every_record(stew_day()), *foods])
    with BinderFile.create(made, Contents(binder)) as file:
        file.write(priced(stew_day(), 399), made_on=0)
        file.write(new_food("salt"), made_on=1)
    return made


def page_of(path: Path, table: str) -> tuple[int, int]:
    """The root page of a table, and a leaf in the middle of it, counted from 1."""
    with closing(sqlite3.connect(path)) as connection:
        root = int(connection.execute("SELECT rootpage FROM sqlite_master WHERE name = ?", [table]).fetchone()[0])
    content = path.read_bytes()
    page = content[(root - 1) * PAGE : root * PAGE]
    if page[0] == 13:
        return root, root
    cells = int.from_bytes(page[3:5])
    middle = int.from_bytes(page[12 + cells // 2 * 2 :][:2])
    return root, int.from_bytes(page[middle : middle + 4])


def overwrite(path: Path, start: int, content: bytes) -> None:
    with path.open("r+b") as file:
        file.seek(start)
        file.write(content)


def salvaged(path: Path) -> tuple[Binder, tuple[str, ...]]:
    """The binder salvaged into a new file; the old one is not touched."""
    before, into = path.read_bytes(), path.with_name("salvaged.binder")
    lost = salvage(path, into)
    assert path.read_bytes() == before
    return read_binder(into), lost


def test_a_sound_file_loses_only_its_history(path: Path) -> None:
    binder, lost = salvaged(path)
    assert binder == read_binder(path)
    assert lost == ("the history of changes",)


def test_a_lost_page_takes_only_its_own_records(path: Path) -> None:
    whole = read_binder(path)
    _root, leaf = page_of(path, "foods")
    overwrite(path, (leaf - 1) * PAGE, bytes(PAGE))
    with pytest.raises(DamagedFileError, match="have what can be read saved into a new file"):
        read_binder(path)
    binder, lost = salvaged(path)
    assert "perhaps some of the foods" in lost
    assert 250 < len(binder.foods) < len(whole.foods)
    assert all(whole.foods[key] == food for key, food in binder.foods.items())
    assert binder.foods["salt"].name == "Salt"


def test_what_a_table_has_lost_the_journal_still_has(path: Path) -> None:
    root, _leaf = page_of(path, "quotes")
    overwrite(path, (root - 1) * PAGE, bytes(PAGE))
    binder, lost = salvaged(path)
    assert "perhaps some of the quotes" in lost
    assert binder.quotes["bag/1"].price == 399


def test_a_header_that_is_gone_is_put_right(path: Path) -> None:
    whole = read_binder(path)
    overwrite(path, 0, bytes(28))
    binder, _lost = salvaged(path)
    assert binder == whole


def test_half_a_file_gives_what_is_in_it(path: Path) -> None:
    content = path.read_bytes()
    path.write_bytes(content[: len(content) // 2])
    binder, lost = salvaged(path)
    assert any(said.startswith("perhaps some of the") for said in lost)
    assert len(binder.foods) > 0 or len(binder.recipes) > 0


def test_a_value_that_no_longer_fits_is_left_out_and_counted(path: Path) -> None:
    with closing(sqlite3.connect(path)) as connection:
        connection.execute("PRAGMA ignore_check_constraints = ON")
        connection.execute("UPDATE foods SET trim_yield = 7 WHERE id = 'food_3'")
        connection.commit()
    binder, lost = salvaged(path)
    assert "food_3" not in binder.foods
    assert "1 of the foods" in lost


def test_a_broken_seal_alone_is_a_doubt(path: Path) -> None:
    with closing(sqlite3.connect(path)) as connection:
        connection.execute("UPDATE quotes SET price = 1")
        connection.commit()
    with pytest.raises(DamagedFileError, match="do not add up to their seal"):
        read_binder(path)
    binder, lost = salvaged(path)
    assert lost == ("the certainty that every value is what was written; look them over", "the history of changes")
    assert binder.quotes["bag/1"].price == 1


def test_of_nothing_nothing_is_saved(tmp_path: Path) -> None:
    for content in (b"", b"Soak overnight.", bytes(8192), random.Random(1).randbytes(20_000)):
        path = tmp_path / "day.binder"
        path.write_bytes(content)
        with pytest.raises(NothingToSalvageError, match="Open a backup"):
            salvage(path, tmp_path / "salvaged.binder")
        assert not (tmp_path / "salvaged.binder").exists()


def test_an_open_file_is_not_read_past_sqlite(path: Path) -> None:
    with BinderFile.open(path), pytest.raises(BusyFileError):
        read_damaged(path)


def test_any_flipped_bytes_are_survived(path: Path) -> None:
    whole, content, chance = read_binder(path), path.read_bytes(), random.Random(7)
    for _attempt in range(40):
        flipped = bytearray(content)
        for _flip in range(chance.choice([1, 10, 1000])):
            flipped[chance.randrange(len(flipped))] ^= 1 << chance.randrange(8)
        path.write_bytes(flipped)
        try:
            binder, lost = read_damaged(path)
        except NothingToSalvageError:
            continue
        assert binder == whole or lost


def test_errors_of_salvage_are_sentences(tmp_path: Path) -> None:
    with pytest.raises(BinderError, match="is not there"):
        salvage(tmp_path / "none.binder", tmp_path / "salvaged.binder")
