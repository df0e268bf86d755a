from __future__ import annotations

import pytest

from binder.figures.duration_text import duration_text


@pytest.mark.parametrize(
    ("minutes", "text"),
    [
        (0, "0 min"),
        (0.2, "1 min"),
        (2.5, "3 min"),
        (75, "75 min"),
        (89.4, "89 min"),
        (90, "1 h 30 min"),
        (720, "12 h"),
        (1500, "25 h"),
        (72 * 60, "72 h"),
        (30 * 24 * 60, "30 days"),
    ],
)
def test_minutes_read_as_a_cook_says_them(minutes: float, text: str) -> None:
    assert duration_text(minutes) == text
