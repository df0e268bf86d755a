from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.paper.label_grid import EXAMPLE, LABELS, LabelGrid, UnfitLabelsError, label_grid


def test_the_example_reads_as_what_it_says() -> None:
    grid = label_grid(EXAMPLE)
    assert (grid.paper.key, grid.columns, grid.rows) == ("a4", 3, 8)
    assert (grid.width, grid.height, grid.left, grid.top, grid.across, grid.down) == (70, 36, 0, 4.5, 70, 36)


def test_without_from_and_step_labels_touch_in_the_middle_of_the_paper() -> None:
    grid = label_grid("letter 2X5 90,5×50")
    assert (grid.across, grid.down) == (90.5, 50)
    assert grid.left == pytest.approx((215.9 - 181) / 2)
    assert grid.top == pytest.approx((279.4 - 250) / 2)


@pytest.mark.parametrize("grid", list(LABELS.values()), ids=list(LABELS))
def test_every_label_lies_on_its_paper(grid: LabelGrid) -> None:
    width, height = grid.paper.points
    for at in range(grid.count):
        x, top = grid.corner(at)
        assert x >= -0.01
        assert x + grid.points[0] <= width + 0.01
        assert top <= height + 0.01
        assert top - grid.points[1] >= -0.01


@pytest.mark.parametrize(
    ("measures", "says"),
    [
        ("a4 3 by 8", "they cannot be read"),
        ("a99 3x8 70x36", "No paper is called “a99”"),
        ("a4 30x8 70x36", "larger than the paper"),
        ("a4 3x8 7x3", "20 millimetres"),
        ("a4 3x8 70x36 from 0x0 step 40x36", "do not overlap"),
        ("a4 0x8 70x36", "20 millimetres"),
        ("a4 3x8 70x36 from 20x0", "larger than the paper"),
    ],
)
def test_measures_that_are_no_sheet_of_labels_are_refused_in_one_sentence(measures: str, says: str) -> None:
    with pytest.raises(UnfitLabelsError) as refused:
        label_grid(measures)
    assert says in refused.value.says
    assert "\n" not in refused.value.says


@given(st.text(max_size=40))
def test_any_words_are_measures_or_are_refused(words: str) -> None:
    try:
        grid = label_grid(words)
    except UnfitLabelsError:
        return
    assert grid.count > 0
