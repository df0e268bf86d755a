"""A search that someone waits for at a terminal: it says how far it is, and Ctrl-C ends it with the best so far."""

from __future__ import annotations

import signal
import sys
import threading
from concurrent.futures import ThreadPoolExecutor, wait
from contextlib import contextmanager
from typing import TYPE_CHECKING, TypeVar

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

T = TypeVar("T")

_SECONDS_BETWEEN_LOOKS = 0.1
"""How often Ctrl-C is heard: a solver would not let go of the thread it runs in."""


class Waiting:
    """Whether someone still waits for the search (`going_on`), and how they are told of it (`tell`, a sentence)."""

    def __init__(self, tell: Callable[[str], None]) -> None:
        self._left = threading.Event()
        self.tell = tell

    def going_on(self) -> bool:
        """Whether to search on."""
        return not self._left.is_set()

    def leave(self) -> None:
        """Have the search end. Raises KeyboardInterrupt where it was asked to already."""
        if self._left.is_set():
            raise KeyboardInterrupt
        self._left.set()


def searched(search: Callable[[Waiting], T], *, says: str) -> T:
    """What a search finds; `says` is shown on a terminal meanwhile, until the search tells something else."""
    with _shown(says) as tell, ThreadPoolExecutor(1, thread_name_prefix="binder-search") as pool:
        waiting = Waiting(tell)
        with _left_by_ctrl_c(waiting):
            found = pool.submit(search, waiting)
            while not found.done():
                wait([found], timeout=_SECONDS_BETWEEN_LOOKS)
        return found.result()


@contextmanager
def _left_by_ctrl_c(waiting: Waiting) -> Iterator[None]:
    """Ctrl-C leaves the search; outside the main thread, which alone hears of it, nothing does."""
    if threading.current_thread() is not threading.main_thread():
        yield
        return
    before = signal.signal(signal.SIGINT, lambda _number, _frame: waiting.leave())
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, before)


@contextmanager
def _shown(says: str) -> Iterator[Callable[[str], None]]:
    """A line on standard error that goes away again; nothing where that is no terminal."""
    if not sys.stderr.isatty():
        yield lambda _says: None
        return
    from rich.console import Console
    from rich.text import Text

    with Console(stderr=True).status(Text(says)) as status:
        yield lambda says: status.update(Text(says))
