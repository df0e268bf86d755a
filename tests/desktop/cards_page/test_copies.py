"""Each card is printed as often as wanted, and whole."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from binder.desktop.cards_page.copies import Stretch, printing_order, stretches

OUTLINE = [("1 Dip", 0), ("2 Stew", 2), ("A Oil", 5)]


def test_an_entry_reaches_to_the_next() -> None:
    assert stretches(OUTLINE, 6, "Cards") == (Stretch("1 Dip", 0, 2), Stretch("2 Stew", 2, 5), Stretch("A Oil", 5, 6))


def test_what_has_no_outline_is_one_whole() -> None:
    assert stretches([], 3, "Cards") == (Stretch("Cards", 0, 3),)


def test_cards_on_one_leaf_are_printed_together() -> None:
    assert stretches([("1 Dip", 0), ("2 Stew", 0)], 1, "Cards") == (Stretch("1 Dip, 2 Stew", 0, 1),)


def test_copies_stand_one_after_the_other() -> None:
    parts = stretches(OUTLINE, 6, "Cards")
    assert printing_order(parts, {"1 Dip": 2, "2 Stew": 0}) == (0, 1, 0, 1, 5)


@given(st.lists(st.tuples(st.text(max_size=3), st.integers(0, 20)), max_size=12), st.integers(1, 21))
def test_every_page_is_printed_once_where_nothing_is_said(outline: list[tuple[str, int]], count: int) -> None:
    inside = [entry for entry in outline if entry[1] < count]
    assert sorted(printing_order(stretches(inside, count, "whole"), {})) == list(range(count))
