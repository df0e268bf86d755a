"""Amounts as they are set out."""

from __future__ import annotations

import pytest

from binder.figures.portion_text import set_out
from binder.kitchen.recipe import Line
from binder.kitchen.settings import SETTINGS_ID, Measures, Settings
from tests.kitchen_binder import small_binder


@pytest.mark.parametrize(
    ("line", "factor", "text"),
    [
        (
            Line(id="l", step="s", food="onion", low=1.5, high=1.5, unit="cup", preparation="chopped"),
            1,
            "240 g · 1½ cups",
        ),
        (Line(id="l", step="s", food="onion", low=2, high=2), 1.5, "330 g · 3"),
        (Line(id="l", step="s", food="tahini", low=2, high=2, unit="tbsp"), 1, "30 g · 2 tbsp"),
        (Line(id="l", step="s", food="salt", low=1, high=1, unit="tsp"), 1, "1 tsp"),
        (Line(id="l", step="s", food="salt", low=5, high=5, unit="g"), 1, "5 g"),
        (Line(id="l", step="s", made="spread", low=250, high=250, unit="g"), 2, "500 g"),
        (Line(id="l", step="s", made="spread", low=2, high=2), 1, "2 portions"),
        (Line(id="l", step="s", food="tahini", low=1, high=1, unit="(300 g) jar"), 2, "600 g · 2 (300 g) jars"),
    ],
)
def test_weight_first_then_the_cooks_measure(line: Line, factor: float, text: str) -> None:
    assert set_out(small_binder(), line, factor).both == text


def test_a_metric_kitchen_sees_millilitres() -> None:
    metric = small_binder(Settings(id=SETTINGS_ID, name="m", measures=Measures.METRIC, locale="de_DE"))
    line = Line(id="l", step="s", food="oil", low=250, high=250, unit="ml")
    assert set_out(metric, line, 1).both == "225 g · 250 ml"
    assert set_out(metric, line, 6).weight == "1,35 kg"


def test_what_cannot_be_weighed_is_still_set_out_as_written() -> None:
    line = Line(id="l", step="s", food="tahini", low=1, high=1, unit="bunch")
    shown = set_out(small_binder(), line, 2)
    assert (shown.grams, shown.both) == (None, "2 bunches")
