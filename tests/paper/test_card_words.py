from __future__ import annotations

import pytest

from binder.figures.card import PlannedBuild
from binder.paper.card_words import builds_text, count_text, kinds_text, measure_text, portions_text
from tests.paper.example import full_binder, metric_binder


def test_counts_are_a_cooks_fractions_or_hundredths_in_the_binders_writing() -> None:
    assert [count_text(full_binder(), count) for count in (4, 2.5, 0.845)] == ["4", "2½", "0.85"]
    assert count_text(metric_binder(), 0.845) == "0,85"
    assert (portions_text(full_binder(), 1), portions_text(full_binder(), 4)) == ("1 portion", "4 portions")


def test_builds_of_a_kind_are_counted() -> None:
    builds = [PlannedBuild(kind, 4, None, "") for kind in ("hero", "swap-out", "swap-out")]
    assert builds_text(builds) == "3 builds: hero, swap-out ×2"
    assert builds_text(builds[:1]) == "1 build: hero"
    assert kinds_text([]) == ""


@pytest.mark.parametrize(
    ("measure", "shown"), [("2", "2 each"), ("½", "½ each"), ("2–3", "2–3 each"), ("2 tsp", "2 tsp")]
)
def test_a_bare_count_says_what_it_counts(measure: str, shown: str) -> None:
    assert measure_text(measure) == shown
