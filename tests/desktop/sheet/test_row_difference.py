"""Rows follow by the least steps."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from binder.desktop.sheet.row_difference import Inserted, Moved, Removed, Step, steps_between

_keys = st.lists(st.sampled_from("abcdefghij"), unique=True, max_size=10)


def taken(old: list[str], new: list[str]) -> tuple[list[str], list[Step]]:
    """Take the steps as an item model would."""
    rows, steps = list(old), list(steps_between(old, new))
    for step in steps:
        if isinstance(step, Removed):
            del rows[step.first : step.last + 1]
        elif isinstance(step, Moved):
            rows.insert(step.target, rows.pop(step.source))
        else:
            rows[step.start : step.start] = new[step.start : step.start + step.count]
    return rows, steps


@given(_keys, _keys)
def test_the_steps_lead_to_the_new_rows(old: list[str], new: list[str]) -> None:
    assert taken(old, new)[0] == new


@given(_keys)
def test_rows_in_the_same_order_are_left_alone(keys: list[str]) -> None:
    assert not list(steps_between(keys, keys))


def test_a_row_dragged_from_end_to_end_is_one_move() -> None:
    assert list(steps_between(list("abcde"), list("bcdea"))) == [Moved(0, 4)]
    assert list(steps_between(list("abcde"), list("eabcd"))) == [Moved(4, 0)]


def test_neighbours_go_and_come_together() -> None:
    assert list(steps_between(list("abcdef"), list("af"))) == [Removed(1, 4)]
    assert list(steps_between(list("af"), list("abcdef"))) == [Inserted(1, 4)]


@given(_keys)
def test_no_more_rows_are_moved_than_must_be(keys: list[str]) -> None:
    moves = [step for step in taken(keys, sorted(keys))[1] if isinstance(step, Moved)]
    assert len(moves) == len(keys) - _longest_ascending(keys)


def _longest_ascending(keys: list[str]) -> int:
    """The length of the longest ascending subsequence, by trying every end."""
    ends: list[int] = []
    for at, key in enumerate(keys):
        ends.append(1 + max((ends[before] for before in range(at) if keys[before] < key), default=0))
    return max(ends, default=0)
