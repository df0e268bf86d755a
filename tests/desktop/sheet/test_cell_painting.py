"""Numbers stand on their decimal mark, and no text is cut by its own cell."""

from __future__ import annotations

from dataclasses import replace

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QFontMetricsF, QImage, QPainter
from PySide6.QtWidgets import QApplication

from binder.desktop.appearance import Wardrobe
from binder.desktop.pictures.cost_bar import CostBar
from binder.desktop.pictures.pans import Pan, Pans
from binder.desktop.pictures.price_line import price_line
from binder.desktop.sheet.cell import Align, Cell, Column, Mark
from binder.desktop.sheet.cell_faces import CellFaces
from binder.desktop.sheet.cell_painting import Brushes, folded_height, paint_cell, split_at_decimal, wrapped_height
from binder.desktop.theme import LIGHT, Tokens


def painted(cell: Cell, column: Column, *, width: int = 300, tokens: Tokens = LIGHT) -> QImage:
    """The cell on the page."""
    image = QImage(width, 60, QImage.Format.Format_RGB32)
    image.fill(tokens.colour("raised"))
    painter = QPainter(image)
    faces = CellFaces(QApplication.font())
    paint_cell(Brushes(painter, tokens, faces), QRectF(0, 0, width, 60), cell, column, wraps=False)
    painter.end()
    return image


def ink(image: QImage, *, left: int = 0, right: int | None = None) -> int:
    """How many points are not the page's."""
    ground = LIGHT.colour("raised").rgb()
    columns = range(left, right if right is not None else image.width())
    return sum(image.pixel(x, y) != ground for x in columns for y in range(image.height()))


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("1.25", ("1", ".25")),
        ("$3.49", ("$3", ".49")),
        ("3,49", ("3", ",49")),
        ("250", ("250", "")),
        ("1,250", ("1,250", "")),
        ("0.002", ("0", ".002")),
        ("1½", ("1½", "")),
    ],
)
def test_a_number_is_parted_at_its_decimal_mark(text: str, parts: tuple[str, str]) -> None:
    assert split_at_decimal(text) == parts


def test_whole_numbers_end_where_decimals_begin(wardrobe: Wardrobe) -> None:
    column = Column("w", "", align=Align.DECIMAL, decimals=2, unit_room="kg")
    metrics = QFontMetricsF(QApplication.font())
    room = round(metrics.horizontalAdvance(".00"))
    whole, parted = painted(Cell("25", "g"), column), painted(Cell("25.75", "g"), column)
    middle = next(x for x in range(299, 0, -1) if ink(parted, left=x, right=x + 1))
    assert ink(parted, left=middle - 4 * room) > ink(whole, left=middle - 4 * room) > 0


@pytest.mark.parametrize("mark", [mark for mark in Mark if mark is not Mark.NONE])
def test_every_state_has_a_shape_of_its_own(wardrobe: Wardrobe, mark: Mark) -> None:
    column = Column("c", "")
    shapes = {one: bytes(painted(Cell("x", mark=one), column, width=40).constBits()) for one in Mark}
    assert all(shapes[mark] != shape for other, shape in shapes.items() if other is not mark)


def test_a_cost_over_its_cap_is_drawn_otherwise_than_one_within(wardrobe: Wardrobe) -> None:
    column = Column("c", "")
    within, over, unknown = (
        painted(Cell("x", picture=bar), column) for bar in (CostBar(0.5, 0.7), CostBar(0.9, 0.7), CostBar(None, 0.7))
    )
    assert bytes(within.constBits()) != bytes(over.constBits()) != bytes(unknown.constBits())


def test_many_pans_stay_in_their_cell(wardrobe: Wardrobe) -> None:
    image = painted(Cell(picture=Pans((Pan(0.5),) * 40)), Column("b", ""), width=200)
    assert ink(image, left=196) == 0


def test_a_paragraph_is_as_high_as_its_lines(wardrobe: Wardrobe) -> None:
    font = QApplication.font()
    line = QFontMetricsF(font).height()
    short, long = (wrapped_height(font, Cell("word " * count), 200) for count in (2, 60))
    assert short < 2.5 * line
    assert long > 8 * line


def test_a_line_of_prices_goes_up_where_they_rise() -> None:
    rising, falling = (price_line(enumerate(prices)) for prices in ((100, 150, 200), (200, 150, 100)))
    assert [up for _at, up in rising.points] == [0.0, 0.5, 1.0]
    images = [painted(Cell(picture=line), Column("b", ""), width=300) for line in (rising, falling)]
    assert images[0] != images[1]
    assert [round(up, 6) for _at, up in price_line(enumerate((95, 100))).points] == [0.75, 1.0]


def test_a_line_of_prices_of_one_day_or_of_nothing_is_drawn_too() -> None:
    for prices in ([(5, 0), (5, 0)], [(5, 100)]):
        assert not painted(Cell(picture=price_line(prices)), Column("b", ""), width=300).isNull()


def test_a_text_that_folds_makes_its_row_as_high_as_it_takes() -> None:
    font = QApplication.font()
    short, long = Cell("Stew", folds=True), Cell("A stew of many a bean, and of all that grows beside it", folds=True)
    heights = [folded_height(font, cell, 150) for cell in (short, long, replace(long, under="dish 1"))]
    assert heights == sorted(heights)
    assert heights[1] > 2 * heights[0] * 0.9
    assert painted(long, Column("a", ""), width=150) != painted(replace(long, folds=False), Column("a", ""), width=150)
