from __future__ import annotations

import pytest

from binder.paper.arrangement import Beside, Stack, Tagged
from binder.paper.cell import Cell, Column, cell, cell_width, natural_width, tail_of
from binder.paper.list_type import list_type
from binder.paper.mark import Shape
from binder.paper.ruling import Ruling
from binder.paper.table import Table, table

STYLE = list_type()
COLUMNS = (
    Column("", figure=True, head=True),
    Column("food", head=True),
    Column("cost", figure=True, decimal_mark="."),
    Column("where"),
)


def _row(food: str, cost: str) -> tuple[Cell, ...]:
    tick = Cell(shape=Shape.TICK_BOX, size=STYLE.lead.size)
    return tick, cell(food, STYLE.lead), cell(cost, STYLE.plain), cell("Quayside Market", STYLE.plain)


def test_columns_of_figures_are_as_wide_as_their_widest_and_words_share_the_rest() -> None:
    rows = [_row("salt", "$1.29"), _row("oil", "$1,248.995")]
    widths = Ruling(COLUMNS, rows, STYLE).widths(500)
    assert widths is not None
    over = [widths[at] - natural_width(rows[0][at]) for at in (1, 3)]
    assert over[0] > 0
    assert over[0] == pytest.approx(over[1], abs=0.2)
    assert abs(sum(widths) + 3 * 9 - 500) < 1e-6
    assert widths[2] >= cell_width(rows[1][2], 0)


def test_a_column_of_short_words_leaves_its_room_to_one_whose_lines_would_break() -> None:
    long = "a sauce of many words that goes with everything on the table and on the shelf" * 2
    rows = [(*_row("salt", "$1.29")[:3], cell(long, STYLE.plain))]
    widths = Ruling(COLUMNS, rows, STYLE).widths(500)
    assert widths is not None
    assert widths[1] == pytest.approx(natural_width(rows[0][1]), abs=0.2)
    assert widths[3] > 300


def test_columns_of_large_type_stand_further_apart() -> None:
    large = list_type(3.0)
    assert Ruling(COLUMNS, [], large).gap > Ruling(COLUMNS, [], STYLE).gap
    assert Ruling(COLUMNS, [], large).gap >= 0.4 * large.lead.size


def test_a_name_wider_than_its_column_stands_above_the_labels() -> None:
    rows = [_row("salt", "$1.29")]
    wide, narrow = (table(COLUMNS, rows, STYLE, name).head(400) for name in ("What is made ahead of the day " * 3, "x"))
    assert wide is not None
    assert narrow is not None
    assert wide.height(400) > 1.5 * narrow.height(400)


def test_decimal_marks_stand_below_each_other() -> None:
    rows = [_row("salt", "$1.29"), _row("oil", "$12.995"), _row("water", "not known"), _row("flour", "$7")]
    ruling = Ruling(COLUMNS, rows, STYLE)
    assert ruling.tails[2] == tail_of(rows[1][2], COLUMNS[2])
    assert tail_of(rows[0][2], COLUMNS[2]) < ruling.tails[2]
    assert tail_of(rows[2][2], COLUMNS[2]) == 0
    assert tail_of(rows[3][2], COLUMNS[2]) == 0


def test_where_words_have_no_room_a_row_becomes_lines_with_labels() -> None:
    rows = [_row("salt", "$1.29")]
    narrow = table(COLUMNS, rows, STYLE, "Spices")
    assert Ruling(COLUMNS, rows, STYLE).widths(200) is None
    (wide_row,), (narrow_row,) = narrow.blocks(500), narrow.blocks(200)
    assert narrow_row.height(200) > wide_row.height(500)


def test_tables_of_one_ruling_stand_in_line() -> None:
    rows = [_row("salt", "$1.29"), _row("oil", "$1,248.995")]
    ruling = Ruling(COLUMNS, rows, STYLE)
    first, second = (Table(ruling, [row], "x").blocks(500)[0] for row in rows)
    cells = []
    for block in (first, second):
        assert isinstance(block, Tagged)
        assert isinstance(block.block, Stack)
        row = block.block.blocks[1]
        assert isinstance(row, Beside)
        cells.append([wide for _block, wide in row.cells])
    assert cells[0] == cells[1]


def test_a_table_without_a_name_set_narrow_has_no_head() -> None:
    assert table(COLUMNS, [_row("salt", "$1.29")], STYLE).head(200) is None
    assert table(COLUMNS, [_row("salt", "$1.29")], STYLE, "Spices").head(200) is not None
