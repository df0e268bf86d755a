"""Children of the test process that may be killed, starved or stripped of their rights. POSIX only."""

from __future__ import annotations

import os
import sys
import tempfile
import warnings
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import NoReturn

import pytest

needs_fork = pytest.mark.skipif(sys.platform == "win32", reason="a child by fork is POSIX's")
needs_root = pytest.mark.skipif(
    sys.platform == "win32" or os.geteuid() != 0, reason="only root can become someone without rights"
)

NOBODY = 65534
CRASHED = 137


def fork(action: Callable[[], object]) -> int:
    """Start a child that does `action` and ends without any tidying up. Returns its process id."""
    with warnings.catch_warnings():
        # Python 3.12 warns of threads in the parent; the only one here is pytest's watchdog, which the child has not.
        warnings.simplefilter("ignore", DeprecationWarning)
        child = os.fork()
    if child == 0:
        _run(action)
    return child


def _run(action: Callable[[], object]) -> NoReturn:
    try:
        action()
    except BaseException as error:  # noqa: BLE001 - nothing may reach pytest in the child
        os.write(2, f"{type(error).__name__}: {error}\n".encode())
        os._exit(1)
    os._exit(0)


def code_of(child: int) -> int:
    """Wait for a child and return its exit code, negative for a signal."""
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])


def said_by(action: Callable[[], str]) -> str:
    """What `action` returns in a child of its own, or the name and the sentence of what it raises."""
    reading_end, writing_end = os.pipe()

    def speak() -> None:
        try:
            said = action()
        except Exception as error:  # noqa: BLE001 - it is what the test asks for
            said = f"{type(error).__name__}: {error}"
        os.write(writing_end, said.encode())

    child = fork(speak)
    os.close(writing_end)
    with os.fdopen(reading_end, "rb") as pipe:
        said = pipe.read().decode()
    assert code_of(child) == 0
    return said


def become_nobody() -> None:
    """Give up all rights of root, for good."""
    os.setgroups([])
    os.setgid(NOBODY)
    os.setuid(NOBODY)


@contextmanager
def open_folder() -> Iterator[Path]:
    """A folder that nobody may enter: pytest's own are for their owner alone."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder)
        path.chmod(0o755)
        yield path
        path.chmod(0o755)
