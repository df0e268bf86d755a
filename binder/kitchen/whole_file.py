"""Files read and written whole: a reader never meets half of one, and what the system refuses becomes one sentence."""

from __future__ import annotations

import errno
import os
import secrets
import shutil
import stat
from contextlib import contextmanager, suppress
from typing import TYPE_CHECKING

from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

MOST_BYTES = 64 * 1024 * 1024
"""A text file larger than this is none of ours."""


class UnreadableFileError(BinderError):
    """A file that cannot be read at all."""

    def __init__(self, path: Path, why: str) -> None:
        self.path = path
        super().__init__(_("“{file}” cannot be read: {why}").format(file=path.name or path, why=why))


class UnwritableFileError(BinderError):
    """A file that cannot be written where it should go."""

    def __init__(self, path: Path, why: str) -> None:
        self.path = path
        super().__init__(_("“{file}” cannot be written: {why}").format(file=path.name or path, why=why))


class FileInTheWayError(BinderError):
    """A file that is there already and was not to be replaced."""

    def __init__(self, path: Path) -> None:
        self.path = path
        super().__init__(
            _("“{file}” is there already. Choose another name, or say that it may be replaced.").format(file=path.name)
        )


def why_refused(error: OSError) -> str:
    """What the operating system refused, and how to mend it."""
    sentences = {
        errno.ENOENT: _("the file or its folder is not there. Check the name, or make the folder first."),
        errno.ENOTDIR: _("a part of its path is a file, not a folder. Check the path."),
        errno.EISDIR: _("it is a folder. Name a file in it."),
        errno.EACCES: _("you have no right to. Choose another folder, or ask its owner."),
        errno.EPERM: _("you have no right to. Choose another folder, or ask its owner."),
        errno.EROFS: _("the disk is write-protected. Choose another one."),
        errno.ENOSPC: _("the disk is full. Make room on it, or choose another one."),
        errno.EFBIG: _("it would be larger than the system allows. Choose another disk."),
        errno.ENAMETOOLONG: _("its name is too long. Choose a shorter one."),
        errno.ELOOP: _("its links lead in a circle. Choose another path."),
        errno.EDQUOT: _("your share of the disk is used up. Make room on it, or choose another one."),
    }
    otherwise = _("the system says “{message}”. Try again, or choose another place.").format(
        message=error.strerror or error
    )
    return sentences.get(error.errno or 0, otherwise)


def require_plain_file(path: Path) -> os.stat_result:
    """The facts of a file that is one: no folder, pipe or device. Raises UnreadableFileError."""
    try:
        facts = path.stat()
    except (OSError, ValueError) as error:
        raise UnreadableFileError(path, _why(error)) from error
    if stat.S_ISDIR(facts.st_mode):
        raise UnreadableFileError(path, _("it is a folder. Name a file in it."))
    if not stat.S_ISREG(facts.st_mode):
        raise UnreadableFileError(path, _("it is no plain file but a pipe or a device. Name a file."))
    return facts


def _why(error: Exception) -> str:
    """ValueError is Python's word for a NUL in a path, RuntimeError for links that lead in a circle."""
    if isinstance(error, OSError):
        return why_refused(error)
    return _("its name holds a character that no file name may, or its links lead in a circle. Choose another path.")


def read_start(path: Path, count: int) -> bytes:
    """The first `count` bytes of a plain file, fewer where it is shorter. Raises UnreadableFileError."""
    require_plain_file(path)
    try:
        with path.open("rb") as file:
            return file.read(count)
    except OSError as error:
        raise UnreadableFileError(path, why_refused(error)) from error


def read_whole(path: Path, *, most: int = MOST_BYTES) -> bytes:
    """All bytes of a plain file. Raises UnreadableFileError, also where it has more than `most`."""
    content = read_start(path, most + 1)
    if len(content) > most:
        raise UnreadableFileError(
            path, _("it is larger than {most} MB. Choose the right file.").format(most=most // 1024**2)
        )
    return content


def write_whole(path: Path, content: bytes, *, replace: bool = True) -> None:
    """Write a file beside and put it in place. Raises as `written_beside`; the old file then stands."""
    with written_beside(path, replace=replace) as beside, beside.open("wb") as file:
        file.write(content)


@contextmanager
def written_beside(path: Path, *, replace: bool = True) -> Iterator[Path]:
    """A path to write to, put in place of `path` when all went well and taken away when not.

    Raises UnwritableFileError, or FileInTheWayError where `path` is there and not to be replaced.
    """
    target = _target(path, replace=replace)
    beside = target.with_name(f".{target.name[:60]}.{secrets.token_hex(4)}.part")
    try:
        yield beside
        _put_in_place(beside, target, path, replace=replace)
    except OSError as error:
        raise UnwritableFileError(path, why_refused(error)) from error
    finally:
        with suppress(OSError):
            beside.unlink(missing_ok=True)


def _target(path: Path, *, replace: bool) -> Path:
    """Where a file really goes: a link's target, not the link."""
    try:
        target = path.resolve()
        if target.is_dir():
            raise IsADirectoryError(errno.EISDIR, os.strerror(errno.EISDIR))
        if not target.parent.is_dir():
            raise FileNotFoundError(errno.ENOENT, os.strerror(errno.ENOENT))
        in_the_way = target.exists()
        if in_the_way and not os.access(target, os.W_OK):
            raise PermissionError(errno.EACCES, os.strerror(errno.EACCES))
    except (OSError, RuntimeError, ValueError) as error:
        raise UnwritableFileError(path, _why(error)) from error
    if in_the_way and not replace:
        raise FileInTheWayError(path)
    return target


def _put_in_place(beside: Path, target: Path, asked: Path, *, replace: bool) -> None:
    with beside.open("rb+") as file:
        os.fsync(file.fileno())
    if replace:
        with suppress(FileNotFoundError):
            shutil.copymode(target, beside)
        beside.replace(target)
    else:
        _link_in_place(beside, target, asked)
    _settle(target.parent)


def _link_in_place(beside: Path, target: Path, asked: Path) -> None:
    """A hard link never replaces what came in between; where the disk has none, look once more and rename."""
    try:
        target.hardlink_to(beside)
    except FileExistsError as error:
        raise FileInTheWayError(asked) from error
    except OSError:
        if target.exists():
            raise FileInTheWayError(asked) from None
        beside.replace(target)


def _settle(folder: Path) -> None:
    """Have the folder's new entry on the disk too, where the system lets a folder be synced."""
    if not hasattr(os, "O_DIRECTORY"):
        return
    with suppress(OSError):
        handle = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
