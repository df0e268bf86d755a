"""A binder is loaded by what the file holds, whatever its name."""

from __future__ import annotations

from pathlib import Path

import pytest

from binder.exchange.json_document import to_json
from binder.exchange.json_strict import BrokenJsonError
from binder.exchange.loading import NoBinderError, load_binder
from binder.kitchen.binder import Binder
from binder.kitchen.errors import BinderError
from binder.kitchen.whole_file import UnreadableFileError
from binder.storage.binder_file import BinderFile, read_binder
from binder.storage.contents import Contents
from tests.storage.samples import stew_day


def test_either_kind_is_read_under_any_name(tmp_path: Path) -> None:
    stored, written = tmp_path / "day.json", tmp_path / "day.binder"
    BinderFile.create(stored, Contents(stew_day())).close()
    written.write_text(to_json(stew_day()), encoding="utf-8")
    assert load_binder(stored, stored=read_binder) == stew_day()
    assert load_binder(written, stored=read_binder) == stew_day()


@pytest.mark.parametrize(
    ("name", "content", "error"),
    [
        ("day.binder", b"", NoBinderError),
        ("day.txt", b"Stew: soak overnight", NoBinderError),
        ("day.png", b"\x89PNG\r\n\x1a\n", NoBinderError),
        ("day.json", b"", BrokenJsonError),
        ("day.json", b"[]", BinderError),
        ("day.binder", b"SQLite format 3\x00", BinderError),
    ],
)
def test_what_is_neither_is_one_sentence(tmp_path: Path, name: str, content: bytes, error: type[BinderError]) -> None:
    path = tmp_path / name
    path.write_bytes(content)
    with pytest.raises(error) as caught:
        load_binder(path, stored=read_binder)
    assert name in str(caught.value)


def test_what_is_not_there_is_named(tmp_path: Path) -> None:
    def never(_path: Path) -> Binder:
        raise AssertionError

    for path in (tmp_path / "none.binder", tmp_path):
        with pytest.raises(UnreadableFileError):
            load_binder(path, stored=never)
