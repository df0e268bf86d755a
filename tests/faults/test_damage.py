"""A damaged file is opened right, or refused in a sentence: never a crash, never a wrong price, never touched."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from binder.kitchen.binder import binder_of, every_record
from binder.kitchen.food import Food
from binder.storage.binder_file import BinderFile
from binder.storage.contents import Contents
from binder.storage.document import OpenDocument
from binder.storage.file_errors import DamagedFileError, FileTroubleError, NotABinderError
from tests.storage.samples import priced, stew_day

PAGE = 4096
FLIPS = 80


@pytest.fixture(scope="module")
def sound(tmp_path_factory: pytest.TempPathFactory) -> tuple[Contents, bytes]:
    """A file with some content on many pages, and what is in it."""
    path = tmp_path_factory.mktemp("sound") / "day.binder"
    foods = (Food(id=f"food_{number}", name=f"Food {number}", notes="n" * 300) for number in range(150))
    with BinderFile.create(path, Contents(binder_of([*every_record(stew_day()), *foods]))) as file:
        file.write(priced(stew_day(), 399), made_on=0)
        contents = file.read()
    return contents, path.read_bytes()


@pytest.mark.parametrize("length", [0, 1, 16, 99, 100, 511, 512, PAGE - 1, PAGE, 20 * PAGE + 77, -PAGE, -1])
def test_a_file_cut_off_is_refused_and_left_as_it_is(
    tmp_path: Path, sound: tuple[Contents, bytes], length: int
) -> None:
    _contents, content = sound
    kept = length % len(content)
    path = tmp_path / "day.binder"
    path.write_bytes(content[:kept])
    with pytest.raises(NotABinderError if kept < 16 else DamagedFileError) as caught:
        OpenDocument.open(path)
    assert str(caught.value).startswith("“day.binder” is ")
    assert path.read_bytes() == content[:kept]
    assert [entry.name for entry in tmp_path.iterdir()] == ["day.binder"]


def outcome(path: Path, content: bytes) -> Contents | FileTroubleError:
    """What comes of opening these bytes, which stay as they are where they are refused."""
    path.write_bytes(content)
    try:
        with BinderFile.open(path) as file:
            return file.opened
    except FileTroubleError as error:
        trouble = error
    assert str(trouble).endswith(".")
    assert path.read_bytes() == content
    return trouble


def test_every_byte_of_the_header_may_be_wrong(tmp_path: Path, sound: tuple[Contents, bytes]) -> None:
    contents, content = sound
    chance = random.Random(1)
    for place in range(100):
        flipped = bytearray(content)
        flipped[place] ^= 1 << chance.randrange(8)
        found = outcome(tmp_path / "day.binder", bytes(flipped))
        assert found == contents or isinstance(found, FileTroubleError), place


def test_any_bit_may_be_wrong(tmp_path: Path, sound: tuple[Contents, bytes]) -> None:
    contents, content = sound
    chance, refused = random.Random(2), 0
    for _flip in range(FLIPS):
        flipped = bytearray(content)
        place = chance.randrange(len(flipped))
        flipped[place] ^= 1 << chance.randrange(8)
        found = outcome(tmp_path / "day.binder", bytes(flipped))
        refused += isinstance(found, FileTroubleError)
        assert found == contents or isinstance(found, FileTroubleError), place
    assert refused > FLIPS / 20, "most of the file is room not yet used; the rest must be noticed"


def test_a_digit_of_a_price_that_sqlite_does_not_miss_is_missed_by_the_seal(
    tmp_path: Path, sound: tuple[Contents, bytes]
) -> None:
    _contents, content = sound
    price = (399).to_bytes(2)
    places = [place for place in range(len(content)) if content[place : place + 2] == price]
    refused = []
    for place in places:
        flipped = bytearray(content)
        flipped[place + 1] ^= 1
        refused.append(outcome(tmp_path / "day.binder", bytes(flipped)))
    assert any(isinstance(found, DamagedFileError) and "seal" in found.why for found in refused)


def test_noise_is_refused(tmp_path: Path, sound: tuple[Contents, bytes]) -> None:
    _contents, content = sound
    chance = random.Random(3)
    for _attempt in range(30):
        noise = content[:100] + chance.randbytes(chance.choice([500, PAGE, 5 * PAGE]))
        assert isinstance(outcome(tmp_path / "day.binder", noise), DamagedFileError)
