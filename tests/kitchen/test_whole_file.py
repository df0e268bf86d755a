"""A file is there whole or not at all, and what the system refuses is one sentence."""

from __future__ import annotations

import errno
import os
import sys
from pathlib import Path

import pytest

from binder.kitchen.whole_file import (
    FileInTheWayError,
    UnreadableFileError,
    UnwritableFileError,
    read_start,
    read_whole,
    why_refused,
    write_whole,
    written_beside,
)

ON_WINDOWS = sys.platform == "win32"


def names(folder: Path) -> list[str]:
    return sorted(entry.name for entry in folder.iterdir())


def test_what_is_written_is_read(tmp_path: Path) -> None:
    path = tmp_path / "list.txt"
    write_whole(path, b"one")
    write_whole(path, b"two")
    assert read_whole(path) == b"two"
    assert read_start(path, 2) == b"tw"
    assert names(tmp_path) == ["list.txt"]


def test_a_file_that_fails_half_way_leaves_the_old_one(tmp_path: Path) -> None:
    path = tmp_path / "list.txt"
    write_whole(path, b"old")

    def write_half() -> None:
        with written_beside(path) as beside:
            beside.write_bytes(b"ha")
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    with pytest.raises(UnwritableFileError, match=r"“list\.txt” cannot be written: the disk is full\. Make room"):
        write_half()
    assert path.read_bytes() == b"old"
    assert names(tmp_path) == ["list.txt"]


def test_a_bug_while_writing_is_not_passed_off_as_the_disks_fault(tmp_path: Path) -> None:
    def write_half() -> None:
        with written_beside(tmp_path / "list.txt") as beside:
            beside.write_bytes(b"ha")
            raise ZeroDivisionError

    with pytest.raises(ZeroDivisionError):
        write_half()
    assert names(tmp_path) == []


def test_a_file_in_the_way_stands_also_when_it_came_meanwhile(tmp_path: Path) -> None:
    path = tmp_path / "list.txt"

    def write_late() -> None:
        with written_beside(path, replace=False) as beside:
            beside.write_bytes(b"mine")
            path.write_bytes(b"theirs")

    with pytest.raises(FileInTheWayError):
        write_late()
    assert path.read_bytes() == b"theirs"
    assert names(tmp_path) == ["list.txt"]


@pytest.mark.skipif(ON_WINDOWS, reason="links and modes are POSIX's")
def test_a_link_stays_a_link_and_a_mode_stays_a_mode(tmp_path: Path) -> None:
    target, link = tmp_path / "target.txt", tmp_path / "link.txt"
    target.write_bytes(b"old")
    target.chmod(0o640)
    link.symlink_to(target)
    write_whole(link, b"new")
    assert link.is_symlink()
    assert target.read_bytes() == b"new"
    assert target.stat().st_mode & 0o777 == 0o640


@pytest.mark.parametrize("name", [".", "none/list.txt", "a\0b", "x" * 300])
def test_where_nothing_can_be_written_it_says_so(tmp_path: Path, name: str) -> None:
    with pytest.raises(UnwritableFileError, match="cannot be written"):
        write_whole(tmp_path / name, b"")
    assert names(tmp_path) == []


@pytest.mark.skipif(ON_WINDOWS, reason="pipes and devices are POSIX's")
def test_a_pipe_or_a_device_is_refused_at_once(tmp_path: Path) -> None:
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    for path in (pipe, Path("/dev/zero")):
        with pytest.raises(UnreadableFileError, match="no plain file"):
            read_whole(path)


def test_a_file_that_is_too_large_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "list.txt"
    path.write_bytes(bytes(11))
    assert len(read_whole(path, most=11)) == 11
    with pytest.raises(UnreadableFileError, match="larger than"):
        read_whole(path, most=10)


def test_a_folder_and_a_missing_file_are_told_apart(tmp_path: Path) -> None:
    with pytest.raises(UnreadableFileError, match="is a folder"):
        read_whole(tmp_path)
    with pytest.raises(UnreadableFileError, match="is not there"):
        read_whole(tmp_path / "none.txt")


def test_what_the_system_says_in_its_own_words_still_makes_a_sentence() -> None:
    assert why_refused(OSError(errno.EIO, "Input/output error")) == (
        "the system says “Input/output error”. Try again, or choose another place."
    )
