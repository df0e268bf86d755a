"""Figures are worked out once, and again when what they depend on changes."""

from __future__ import annotations

from binder.figures import memory
from binder.figures.memory import PRICES, remembered, remembered_from
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.edits.records import set_fields
from tests.kitchen_binder import small_binder

asked: list[tuple[str, int]] = []


@remembered
def anything(binder: Binder, name: str, count: int = 1) -> int:
    asked.append((name, count))
    return count * len(name)


@remembered_from(PRICES)
def priced(binder: Binder, name: str) -> int:
    asked.append((name, 0))
    return len(binder.quotes)


def test_a_figure_is_worked_out_once_for_each_way_it_is_asked() -> None:
    asked.clear()
    binder = small_binder()
    assert [anything(binder, "a", 2), anything(binder, "a", 3), anything(binder, "a", 2)] == [2, 3, 2]
    assert [anything(binder, "a", count=5), anything(binder, "a", count=6), anything(binder, "a", count=5)] == [5, 6, 5]
    assert asked == [("a", 2), ("a", 3), ("a", 5), ("a", 6)]


def test_a_change_forgets_only_what_depends_on_a_table_it_touched() -> None:
    asked.clear()
    binder = small_binder()
    anything(binder, "b")
    priced(binder, "c")
    renamed = apply(binder, set_fields("Edit", binder.recipes["spread"], name="Dip"))
    anything(renamed, "b")
    priced(renamed, "c")
    assert asked == [("b", 1), ("c", 0), ("b", 1)]
    dearer = apply(renamed, set_fields("Edit", binder.quotes["quote-oil"], price=1))
    priced(dearer, "c")
    assert asked[-1] == ("c", 0)
    assert priced(binder, "c") == 6


def test_no_shelf_grows_without_end() -> None:
    binder = small_binder()
    for number in range(50):
        priced(binder, f"name {number}")
    shelf = binder.memory.shelf(PRICES)
    kept, memory._MOST_KEPT = memory._MOST_KEPT, 50
    try:
        priced(binder, "one more")
        assert len(shelf) == 1
        assert priced(binder, "name 7") == 6
    finally:
        memory._MOST_KEPT = kept
