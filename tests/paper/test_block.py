from __future__ import annotations

from binder.paper.block import Lines, text
from binder.paper.run import LEADING, Style

STYLE = Style(size=10)
LINE = 10 * LEADING
TEN = text("\n".join(f"line {number}" for number in range(10)), STYLE)


def _count(block: object) -> int:
    assert isinstance(block, Lines)
    return len(block.lines)


def test_text_is_as_tall_as_its_lines() -> None:
    assert round(TEN.height(200), 6) == round(10 * LINE, 6)


def test_text_is_parted_between_lines() -> None:
    first, rest = TEN.parted(200, 4.5 * LINE)
    assert (_count(first), _count(rest)) == (4, 6)


def test_no_single_line_is_left_alone_at_either_side() -> None:
    first, rest = TEN.parted(200, 9.5 * LINE)
    assert (_count(first), _count(rest)) == (8, 2)
    first, rest = TEN.parted(200, 1.5 * LINE)
    assert first is None
    assert _count(rest) == 10


def test_a_shortened_text_says_that_there_is_more_and_keeps_its_room() -> None:
    short = text("chickpeas and oil and salt and lemon", STYLE).shortened(60, 2)
    assert len(short.lines) == 2
    assert "".join(piece.text for piece in short.lines[-1].pieces).endswith("…")
    assert all(line.width <= 60 for line in short.lines)
    assert text("chickpeas", STYLE).shortened(60, 2).lines == text("chickpeas", STYLE).lines(60).lines
