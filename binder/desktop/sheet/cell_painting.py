"""How a cell is set: text and unit, label, second line, mark and picture, with numbers on their decimal mark."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter

from binder.desktop.pictures.cost_bar import CostBar, draw_cost_bar
from binder.desktop.pictures.pans import Pans, draw_pans
from binder.desktop.pictures.price_line import PriceLine, draw_price_line
from binder.desktop.pictures.state_mark import draw_mark
from binder.desktop.pictures.tick_box import TickBox, draw_tick_box
from binder.desktop.sheet.cell import Align, Cell, Mark, Tone
from binder.desktop.sheet.cell_faces import WRAPPED, padding, text_font
from binder.desktop.spacing import step
from binder.desktop.typeface import small

if TYPE_CHECKING:
    from PySide6.QtGui import QFont

    from binder.desktop.sheet.cell import Column
    from binder.desktop.sheet.cell_faces import CellFaces, Face
    from binder.desktop.theme import Tokens

_NUMBER = re.compile(r"^(?P<whole>[^\d]{0,4}[\d\s'.,]*?\d)(?P<tail>[.,]\d+)?$|^(?P<sign>[½⅓⅔¼¾⅛⅜⅝⅞]|–)$")


_LEFT = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
_RIGHT = int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)


@dataclass(frozen=True)
class Brushes:
    """What a cell is painted with: the painter, the tokens and the faces."""

    painter: QPainter
    tokens: Tokens
    faces: CellFaces

    def write(self, box: QRectF, text: str, face: Face, token: str, flags: int) -> None:
        """Write text in a box."""
        self.painter.setFont(face.font)
        self.painter.setPen(self.tokens.colour(token))
        self.painter.drawText(box, flags, text)


def paint_cell(brushes: Brushes, box: QRectF, cell: Cell, column: Column, *, wraps: bool) -> None:
    """Paint a cell into its box."""
    room = brushes.faces.padding
    inner = box.adjusted(room, 0, -room, 0)
    if cell.picture is not None:
        inner = _picture(brushes, inner, cell)
    if wraps and not cell.picture and not cell.under:
        _wrapped(brushes, inner.adjusted(0, brushes.faces.step(), 0, 0), cell)
        return
    if cell.folds and not cell.picture:
        _folded(brushes, inner, cell, column)
        return
    line, under = _lines(brushes, inner, cell)
    if cell.under:
        _under(brushes, under, cell, column)
    _line(brushes, line, cell, column)


def wrapped_height(font: QFont, cell: Cell, width: float) -> float:
    """How high a cell is that wraps in a width, its padding in."""
    room = width - 2 * padding(font) - _mark_room(QFontMetricsF(font).height(), cell)
    metrics = QFontMetricsF(text_font(font, cell.size))
    text = cell.text or cell.placeholder or " "
    flags = int(Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft)
    return metrics.boundingRect(QRectF(0, 0, max(room, 1), 1e6), flags, text).height() + 2 * step(font)


def folded_height(font: QFont, cell: Cell, width: float) -> float:
    """How high a cell is that folds in a width, with what stands under its text and a little room."""
    under = QFontMetricsF(small(font)).height() if cell.under else 0.0
    return wrapped_height(font, cell, width) - step(font) + under


def _mark_room(line: float, cell: Cell) -> float:
    return line * 0.95 if cell.mark is not Mark.NONE else 0.0


def _wrapped(brushes: Brushes, box: QRectF, cell: Cell) -> None:
    box = _marked(brushes, box, cell, at_top=True)
    brushes.write(box, cell.text or cell.placeholder, brushes.faces.of(cell.size), _token(cell), WRAPPED)


def _folded(brushes: Brushes, box: QRectF, cell: Cell, column: Column) -> None:
    """The text, as many lines as it takes, and what stands under it: together in the middle."""
    box = _marked(brushes, box, cell)
    face, text = brushes.faces.of(cell.size), cell.text or cell.placeholder
    upper = face.height_in(max(box.width(), 1), text)
    lower = brushes.faces.lesser.height if cell.under else 0.0
    top = max(box.top(), box.center().y() - (upper + lower) / 2)
    brushes.write(QRectF(box.left(), top, box.width(), upper), text, face, _token(cell), WRAPPED)
    if cell.under:
        _under(brushes, QRectF(box.left(), top + upper, box.width(), lower), cell, column)


def _lines(brushes: Brushes, box: QRectF, cell: Cell) -> tuple[QRectF, QRectF]:
    """Where the text and the second line go: both together in the middle."""
    if not cell.under:
        return box, box
    upper, lower = brushes.faces.of(cell.size).height, brushes.faces.lesser.height
    top = box.center().y() - (upper + lower) / 2
    return QRectF(box.left(), top, box.width(), upper), QRectF(box.left(), top + upper, box.width(), lower)


def _picture(brushes: Brushes, box: QRectF, cell: Cell) -> QRectF:
    """Draw the picture in the upper part and give what is left for the words; a line of prices takes all of it."""
    if isinstance(cell.picture, PriceLine):
        draw_price_line(brushes.painter, box, cell.picture, brushes.tokens)
        return QRectF(box.left(), box.bottom(), box.width(), 0)
    line = brushes.faces.body.height
    words = 1 if cell.text or cell.under else 0
    top = box.center().y() - (line * (0.85 + words)) / 2
    upper = QRectF(box.left(), top, box.width(), line * 0.8)
    if isinstance(cell.picture, CostBar):
        draw_cost_bar(brushes.painter, upper, cell.picture, brushes.tokens)
    elif isinstance(cell.picture, Pans):
        draw_pans(brushes.painter, upper, cell.picture, brushes.tokens)
    elif isinstance(cell.picture, TickBox):
        draw_tick_box(brushes.painter, upper, cell.picture, brushes.tokens)
    return QRectF(box.left(), top + line * 0.9, box.width(), line)


def _under(brushes: Brushes, box: QRectF, cell: Cell, column: Column) -> None:
    face = brushes.faces.lesser
    brushes.write(
        box, face.cut(cell.under, box.width()), face, "quiet", _LEFT if column.align is Align.LEFT else _RIGHT
    )


def _line(brushes: Brushes, box: QRectF, cell: Cell, column: Column) -> None:
    box = _labelled(brushes, _marked(brushes, box, cell), cell)
    if not (cell.text or cell.placeholder or cell.unit):
        return
    if column.align is Align.DECIMAL and _NUMBER.match(cell.text):
        _on_decimal(brushes, box, cell, column)
    elif column.align is not Align.LEFT:
        _at_right(brushes, box, cell)
    else:
        _at_left(brushes, box, cell)


def _marked(brushes: Brushes, box: QRectF, cell: Cell, *, at_top: bool = False) -> QRectF:
    if cell.mark is Mark.NONE:
        return box
    line = brushes.faces.body.height
    side = line * 0.58
    middle = box.top() + line / 2 if at_top else box.center().y()
    draw_mark(brushes.painter, QRectF(box.left(), middle - side / 2, side, side), cell.mark, brushes.tokens)
    return box.adjusted(_mark_room(line, cell), 0, 0, 0)


def _labelled(brushes: Brushes, box: QRectF, cell: Cell) -> QRectF:
    if not cell.label:
        return box
    face = brushes.faces.lesser
    brushes.write(box, cell.label, face, "quiet", _LEFT)
    return box.adjusted(face.width(cell.label) + brushes.faces.step(1.25), 0, 0, 0)


def _at_left(brushes: Brushes, box: QRectF, cell: Cell) -> None:
    face = brushes.faces.of(cell.size)
    text = face.cut(cell.text or cell.placeholder, box.width())
    brushes.write(box, text, face, _token(cell), _LEFT)
    if cell.unit and cell.text:
        end = box.left() + face.width(text)
        _unit(brushes, box, end, brushes.faces.lesser.cut(f" {cell.unit}", box.right() - end), face)


def _at_right(brushes: Brushes, box: QRectF, cell: Cell) -> None:
    face = brushes.faces.of(cell.size)
    unit = f" {cell.unit}" if cell.unit else ""
    unit_width = brushes.faces.lesser.width(unit)
    text = face.cut(cell.text or cell.placeholder, box.width() - unit_width)
    brushes.write(box.adjusted(0, 0, -unit_width, 0), text, face, _token(cell), _RIGHT)
    if unit:
        _unit(brushes, box, box.right() - unit_width, unit, face)


def _on_decimal(brushes: Brushes, box: QRectF, cell: Cell, column: Column) -> None:
    face = brushes.faces.of(cell.size)
    whole, tail = split_at_decimal(cell.text)
    unit_room = brushes.faces.lesser.width(f" {column.unit_room}") if column.unit_room else 0.0
    tail_room = face.width("." + "0" * column.decimals) if column.decimals else 0.0
    tail_width = face.width(tail)
    mark_at = box.right() - unit_room - max(tail_room, tail_width)
    left = QRectF(box.left(), box.top(), mark_at - box.left(), box.height())
    brushes.write(left, whole, face, _token(cell), _RIGHT)
    if tail:
        brushes.write(QRectF(mark_at, box.top(), tail_width + 2, box.height()), tail, face, _token(cell), _LEFT)
    if cell.unit:
        _unit(brushes, box, box.right() - unit_room, f" {cell.unit}", face)


def _unit(brushes: Brushes, box: QRectF, x: float, unit: str, beside: Face) -> None:
    """A unit stands on the line of its number, smaller and quieter."""
    face = brushes.faces.lesser
    place = QRectF(x, box.top() + (beside.rise - face.rise) / 2, face.width(unit) + 2, box.height())
    brushes.write(place, unit, face, "quiet", _LEFT)


def split_at_decimal(text: str) -> tuple[str, str]:
    """A number's text before its decimal mark, and from it on: `1`, `.25`."""
    found = re.search(r"[.,]\d{1,5}$", text)
    grouping = found is not None and len(found[0]) == 4 and not re.search(r"[.,]\d+[.,]", text)  # noqa: PLR2004
    if found is None or (grouping and "." not in found[0] and "," in text):
        return text, ""
    return text[: found.start()], found[0]


def _token(cell: Cell) -> str:
    if not cell.text:
        return "quiet"
    return Tone.LINK.value if cell.leads_to is not None and cell.tone is Tone.INK else cell.tone.value
