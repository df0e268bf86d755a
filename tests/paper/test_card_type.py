from __future__ import annotations

import pytest

from binder.paper.card_type import figure_runs
from binder.paper.run import Style

LARGE, SMALL = Style(size=16), Style(size=12)


@pytest.mark.parametrize(
    ("words", "numbers"),
    [
        ("250 g", ["250"]),
        ("1.25 kg", ["1.25"]),
        ("1½ cups + 2 tbsp", ["1½", "2"]),
        ("350 °F / 177 °C", ["350", "177"]),
        ("−18 °C / 0 °F", ["−", "18", "0"]),
        ("2–3 cloves", ["2–3"]),
        ("1 h 30 min hands on", ["1", "30"]),
        ("to taste", []),
    ],
)
def test_numbers_are_set_larger_than_what_they_count_and_nothing_is_lost(words: str, numbers: list[str]) -> None:
    runs = figure_runs(words, LARGE, SMALL)
    assert "".join(run.text for run in runs).replace("\u00a0", " ") == words
    assert [run.text for run in runs if run.style is LARGE] == numbers
