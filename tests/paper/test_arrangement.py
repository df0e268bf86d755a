from __future__ import annotations

from dataclasses import dataclass, field

import pytest

from binder.paper.arrangement import Beside, Flow, Rule, Space, Stack, stacked
from binder.paper.block import Lines, text
from binder.paper.pen import Pen
from binder.paper.run import LEADING, RISE, SetLine, Style

SMALL, LARGE = Style(size=10), Style(size=20)


@dataclass
class Notes(Pen):
    """A pen that only remembers where it drew."""

    drawn: list[tuple[str, float, float]] = field(default_factory=list)

    def begin_content(self) -> None:
        pass

    def end(self) -> None:
        pass

    def text(self, line: SetLine, x: float, top: float) -> None:
        self.drawn.append(("".join(piece.text for piece in line.pieces), x, top - line.size * RISE))


def test_a_stack_is_parted_after_the_last_block_that_fits() -> None:
    stack = Stack((text("one", SMALL), text("two", SMALL), text("three", SMALL)))
    first, rest = stack.parted(100, 2.2 * 10 * LEADING)
    assert first is not None
    assert rest is not None
    assert (round(first.height(100), 6), round(rest.height(100), 6)) == (
        round(2 * 10 * LEADING, 6),
        round(10 * LEADING, 6),
    )


def test_white_at_the_end_of_a_page_is_not_carried_over() -> None:
    first, rest = Stack((text("one", SMALL), Space(50))).parted(100, 15)
    assert isinstance(first, Lines | type(text("", SMALL)))
    assert rest is None


def test_blocks_side_by_side_stand_on_one_baseline() -> None:
    pen = Notes(canvas=None)  # type: ignore[arg-type]
    Beside(((text("250", LARGE), 50.0), (text("g", SMALL), 50.0))).draw(pen, 0, 100, 100)
    assert len({round(baseline, 6) for _text, _x, baseline in pen.drawn}) == 1
    pen.drawn.clear()
    Beside(((text("250", LARGE), 50.0), (text("g", SMALL), 50.0)), level=False).draw(pen, 0, 100, 100)
    assert len({round(baseline, 6) for _text, _x, baseline in pen.drawn}) == 2


def test_side_by_side_the_room_left_is_shared() -> None:
    pen = Notes(canvas=None)  # type: ignore[arg-type]
    Beside(((text("a", SMALL), 20.0), (text("b", SMALL), None), (text("c", SMALL), None)), gap=5).draw(pen, 0, 50, 130)
    assert [x for _text, x, _baseline in pen.drawn] == [0, 25, 80]


def test_a_row_is_parted_in_all_its_cells_or_in_none() -> None:
    long = text("\n".join("abcdefgh"), SMALL)
    row = Beside(((text("tick", SMALL), 30.0), (long, None)))
    first, rest = row.parted(200, 3.2 * 10 * LEADING)
    assert first is not None
    assert rest is not None
    assert first.height(200) == pytest.approx(3 * 10 * LEADING)
    assert rest.height(200) == pytest.approx(5 * 10 * LEADING)
    assert row.parted(200, 5) == (None, row)


def test_nothing_stacked_is_nothing() -> None:
    assert stacked() is None
    rule = Rule()
    assert stacked(rule) is rule


def test_short_blocks_flow_from_left_to_right_on_as_many_rows_as_they_take() -> None:
    pen = Notes(canvas=None)  # type: ignore[arg-type]
    flow = Flow(tuple((text(word, SMALL), 40.0) for word in ("one", "two", "three")), gap=10)
    flow.draw(pen, 0, 100, 95)
    assert [(word, x) for word, x, _baseline in pen.drawn] == [("one", 0), ("two", 50), ("three", 0)]
    assert flow.height(95) == pytest.approx(2 * 10 * LEADING)
    assert flow.height(500) == pytest.approx(10 * LEADING)
