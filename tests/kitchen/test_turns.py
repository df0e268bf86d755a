"""Work lets go first who goes first, and never waits for whoever does not come to an end."""

from __future__ import annotations

import threading
from collections.abc import Iterator

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.kitchen import turns
from binder.kitchen.turns import be_done, give_way, go_first, in_turns

SECONDS = 10.0


class Told(threading.Event):
    """Tells when someone begins to wait for it; `gives_up`: as if it had waited as long as it may."""

    def __init__(self, *, gives_up: bool = False) -> None:
        super().__init__()
        self.waited_for = threading.Event()
        self._gives_up = gives_up

    def wait(self, timeout: float | None = None) -> bool:
        self.waited_for.set()
        return False if self._gives_up else super().wait(SECONDS)


@pytest.fixture(autouse=True)
def no_one_goes_first() -> Iterator[None]:
    be_done()
    yield
    be_done()


def worker(done: list[str]) -> threading.Thread:
    def work() -> None:
        for _each in in_turns(range(3)):
            pass
        done.append("work")

    thread = threading.Thread(target=work)
    thread.start()
    return thread


def test_work_waits_until_the_one_who_goes_first_is_done(monkeypatch: pytest.MonkeyPatch) -> None:
    told, done = Told(), list[str]()
    monkeypatch.setattr(turns._first, "done", told)
    go_first()
    thread = worker(done)
    assert told.waited_for.wait(SECONDS)
    done.append("window")
    be_done()
    thread.join(SECONDS)
    assert done == ["window", "work"]


def test_who_goes_first_does_not_wait_for_himself(monkeypatch: pytest.MonkeyPatch) -> None:
    told = Told()
    monkeypatch.setattr(turns._first, "done", told)
    go_first()
    give_way()
    assert not told.waited_for.is_set()


def test_who_never_ends_is_waited_for_once(monkeypatch: pytest.MonkeyPatch) -> None:
    told, done = Told(gives_up=True), list[str]()
    monkeypatch.setattr(turns._first, "done", told)
    go_first()
    worker(done).join(SECONDS)
    assert (done, told.waited_for.is_set()) == (["work"], True)
    told.waited_for.clear()
    worker(done).join(SECONDS)
    assert not told.waited_for.is_set()


@given(st.integers(0, 200))
def test_every_thing_comes_once_and_every_few_of_them_way_is_given(count: int) -> None:
    given_way: list[None] = []
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(turns, "give_way", lambda: given_way.append(None))
        assert list(in_turns(range(count))) == list(range(count))
    assert len(given_way) == -(-count // turns._A_TURN)
