"""Wall clocks and minutes in a night the clocks change."""

from __future__ import annotations

from datetime import datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.figures.clock import minutes_between, shifted, zone_of

# The European Union's clocks went back at 3:00 on 25 October 2026 (Directive 2000/84/EC: last Sunday of October).
EVENING, MORNING = datetime(2026, 10, 24, 20, 0), datetime(2026, 10, 25, 8, 0)  # noqa: DTZ001


def test_the_night_the_clocks_go_back_is_an_hour_longer() -> None:
    assert minutes_between(EVENING, MORNING, "Europe/Berlin") == 13 * 60
    assert shifted(MORNING, -13 * 60, "Europe/Berlin") == EVENING
    assert minutes_between(EVENING, MORNING, "") == 12 * 60


def test_the_night_they_go_forward_is_an_hour_shorter() -> None:
    # US clocks go forward on the second Sunday of March (15 U.S.C. 260a): 8 March 2026.
    before, after = datetime(2026, 3, 7, 20, 0), datetime(2026, 3, 8, 8, 0)  # noqa: DTZ001
    assert minutes_between(before, after, "America/Chicago") == 11 * 60


def test_a_zone_no_one_knows_is_no_zone() -> None:
    assert zone_of("Nowhere/Atall") is None
    assert zone_of("../etc/passwd") is None
    assert shifted(EVENING, 60, "Nowhere/Atall") == EVENING + timedelta(minutes=60)


@given(
    st.integers(0, 20_000_000).map(lambda minutes: EVENING - timedelta(minutes=minutes)),
    st.integers(-5000, 5000),
    st.sampled_from(["Europe/Berlin", "America/Chicago", "Asia/Kolkata", ""]),
)
def test_minutes_shifted_are_minutes_between(wall: datetime, minutes: int, zone: str) -> None:
    start = shifted(wall, 0, zone)
    there = shifted(start, minutes, zone)
    assert minutes_between(start, there, zone) == pytest.approx(minutes, abs=60)
