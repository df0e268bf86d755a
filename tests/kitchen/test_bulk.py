"""The collector is paused and comes back, whatever happens."""

from __future__ import annotations

import gc

import pytest

from binder.kitchen.bulk import let_go, uncollected


def test_the_collector_comes_back_whatever_happens() -> None:
    with uncollected():
        assert not gc.isenabled()
        with uncollected():
            assert not gc.isenabled()
        assert not gc.isenabled()
    assert gc.isenabled()
    with pytest.raises(KeyError), uncollected():
        raise KeyError
    assert gc.isenabled()


def many_made(count: int) -> list[list[None]]:
    return [[None] for _each in range(count)]


@pytest.mark.parametrize(("count", "set_aside"), [(100_000, True), (100, False)])
def test_what_is_made_by_the_ten_thousand_is_looked_through_no_more(count: int, set_aside: bool) -> None:
    gc.collect()
    before = gc.get_freeze_count()
    try:
        with uncollected():
            made = many_made(count)
        assert (gc.get_freeze_count() - before >= len(made)) == set_aside
    finally:
        gc.unfreeze()


def test_what_is_set_aside_goes_as_soon_as_no_one_holds_it() -> None:
    gc.collect()
    try:
        with uncollected():
            made = many_made(100_000)
        there = gc.get_freeze_count()
        made.clear()
        assert gc.get_freeze_count() <= there - 100_000
    finally:
        gc.unfreeze()


class Gone:
    def __init__(self, number: int, order: list[int]) -> None:
        self.number, self.order = number, order

    def __del__(self) -> None:
        self.order.append(self.number)


def test_all_that_is_held_goes_from_the_end() -> None:
    order: list[int] = []
    held: list[object] = [Gone(number, order) for number in range(1000)]
    let_go(held)
    assert held == []
    assert sorted(order) == list(range(1000))
    assert order[0] >= 800
    assert order[-1] < 200
