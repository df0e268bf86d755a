"""The quiet line at the foot: each figure has the room it needs."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.desktop.foot_line import shared_room

needs = st.lists(st.floats(1, 500), min_size=1, max_size=6)


@given(needs, st.floats(1, 3000))
def test_the_room_is_shared_out_whole_and_nothing_is_cut_while_all_fits(wanted: list[float], room: float) -> None:
    shares = shared_room(wanted, room)
    assert sum(shares) == pytest.approx(room)
    if sum(wanted) <= room:
        assert all(share >= need - 1e-6 for share, need in zip(shares, wanted, strict=True))


def test_a_long_name_takes_the_room_that_others_leave() -> None:
    assert shared_room([300.0, 100.0, 100.0], 560.0) == [320.0, 120.0, 120.0]
