from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.paper.line import lines_of
from binder.paper.run import Run, Style
from binder.paper.typeface import width_of_one
from binder.paper.word import words_of

STYLE = Style(size=10)


def _lines(text: str, width: float) -> list[str]:
    return ["".join(piece.text for piece in line.pieces) for line in lines_of(words_of([Run(text, STYLE)]), width)]


def test_lines_break_at_blanks_and_at_line_ends() -> None:
    width = width_of_one(STYLE.weight.value, "chickpeas and") * 10 + 1
    assert _lines("chickpeas and oil\nsalt", width) == ["chickpeas and", "oil", "salt"]


def test_a_word_wider_than_the_line_is_cut_and_loses_nothing() -> None:
    lines = _lines("x" * 1000 + " end", 100)
    assert "".join(lines[:-1]).count("x") + lines[-1].count("x") == 1000
    assert lines[-1].endswith("end")


def test_a_mark_is_not_cut_from_its_letter() -> None:
    lines = _lines("g\u0303" * 50, 40)
    assert all(line.startswith("g") for line in lines)


def test_a_separator_neither_begins_nor_ends_a_line() -> None:
    width = width_of_one(STYLE.weight.value, "4 min hands on ·") * 10
    assert _lines("4 min hands on · holds 2 h", width - 0.1) == ["4 min hands on", "holds 2 h"]
    assert _lines("4 min hands on · holds 2 h", width + 0.1) == ["4 min hands on", "holds 2 h"]


@pytest.mark.parametrize("width", [24.0, 61.5, 200.0])
@given(text=st.text(max_size=120))
def test_no_line_is_wider_than_its_room(text: str, width: float) -> None:
    for line in lines_of(words_of([Run(text, STYLE)]), width):
        assert line.width <= width + 1e-6
        assert line.width == pytest.approx(sum(piece.width for piece in line.pieces), abs=1e-6)
