"""How a cell is set: text and unit, label, second line, mark and picture, with numbers on their decimal mark."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter

from binder.desktop.pictures.cost_bar import CostBar, draw_cost_bar
from binder.desktop.pictures.pans import Pans, draw_pans
from binder.desktop.pictures.price_line import PriceLine, draw_price_line
from binder.desktop.pictures.state_mark import draw_mark
from binder.desktop.pictures.tick_box import TickBox, draw_tick_box
from binder.desktop.sheet.cell import Align, Cell, Mark, Size, Tone
from binder.desktop.spacing import step
from binder.desktop.typeface import heading, sized, small

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from binder.desktop.sheet.cell import Column
    from binder.desktop.theme import Tokens

_NUMBER = re.compile(r"^(?P<whole>[^\d]{0,4}[\d\s'.,]*?\d)(?P<tail>[.,]\d+)?$|^(?P<sign>[½⅓⅔¼¾⅛⅜⅝⅞]|–)$")
WRAPPED = Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop


@dataclass(frozen=True)
class Brushes:
    """What a cell is painted with: the painter, the tokens and the font of the body."""

    painter: QPainter
    tokens: Tokens
    font: QFont

    def write(self, box: QRectF, text: str, font: QFont, token: str, flags: int) -> None:
        """Write text in a box."""
        self.painter.setFont(font)
        self.painter.setPen(self.tokens.colour(token))
        self.painter.drawText(box, flags, text)


def text_font(font: QFont, size: Size) -> QFont:
    """The font of a cell's text."""
    return _FONTS[size](font)


_FONTS: Mapping[Size, Callable[[QFont], QFont]] = {
    Size.SMALL: small,
    Size.BODY: lambda font: font,
    Size.STRONG: lambda font: sized(font, 1.0, strong=True),
    Size.HEADING: lambda font: heading(font, 1),
    Size.TITLE: lambda font: heading(font, 2),
}


def padding(font: QFont) -> int:
    """Space at the left and right of a cell, in pixels."""
    return step(font, 1.75)


def paint_cell(brushes: Brushes, box: QRectF, cell: Cell, column: Column, *, wraps: bool) -> None:
    """Paint a cell into its box."""
    room = padding(brushes.font)
    inner = box.adjusted(room, 0, -room, 0)
    if cell.picture is not None:
        inner = _picture(brushes, inner, cell)
    if wraps and not cell.picture and not cell.under:
        _wrapped(brushes, inner.adjusted(0, step(brushes.font), 0, 0), cell)
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
    room = width - 2 * padding(font) - _mark_room(font, cell)
    metrics = QFontMetricsF(text_font(font, cell.size))
    text = cell.text or cell.placeholder or " "
    flags = int(Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft)
    return metrics.boundingRect(QRectF(0, 0, max(room, 1), 1e6), flags, text).height() + 2 * step(font)


def folded_height(font: QFont, cell: Cell, width: float) -> float:
    """How high a cell is that folds in a width, with what stands under its text and a little room."""
    under = QFontMetricsF(small(font)).height() if cell.under else 0.0
    return wrapped_height(font, cell, width) - step(font) + under


def _mark_room(font: QFont, cell: Cell) -> float:
    return QFontMetricsF(font).height() * 0.95 if cell.mark is not Mark.NONE else 0.0


def _wrapped(brushes: Brushes, box: QRectF, cell: Cell) -> None:
    font = text_font(brushes.font, cell.size)
    box = _marked(brushes, box, cell, at_top=True)
    brushes.write(box, cell.text or cell.placeholder, font, _token(cell), int(WRAPPED))


def _folded(brushes: Brushes, box: QRectF, cell: Cell, column: Column) -> None:
    """The text, as many lines as it takes, and what stands under it: together in the middle."""
    box = _marked(brushes, box, cell)
    font, text = text_font(brushes.font, cell.size), cell.text or cell.placeholder
    upper = QFontMetricsF(font).boundingRect(QRectF(0, 0, max(box.width(), 1), 1e6), int(WRAPPED), text).height()
    lower = QFontMetricsF(small(brushes.font)).height() if cell.under else 0.0
    top = max(box.top(), box.center().y() - (upper + lower) / 2)
    brushes.write(QRectF(box.left(), top, box.width(), upper), text, font, _token(cell), int(WRAPPED))
    if cell.under:
        _under(brushes, QRectF(box.left(), top + upper, box.width(), lower), cell, column)


def _lines(brushes: Brushes, box: QRectF, cell: Cell) -> tuple[QRectF, QRectF]:
    """Where the text and the second line go: both together in the middle."""
    if not cell.under:
        return box, box
    upper = QFontMetricsF(text_font(brushes.font, cell.size)).height()
    lower = QFontMetricsF(small(brushes.font)).height()
    top = box.center().y() - (upper + lower) / 2
    return QRectF(box.left(), top, box.width(), upper), QRectF(box.left(), top + upper, box.width(), lower)


def _picture(brushes: Brushes, box: QRectF, cell: Cell) -> QRectF:
    """Draw the picture in the upper part and give what is left for the words; a line of prices takes all of it."""
    if isinstance(cell.picture, PriceLine):
        draw_price_line(brushes.painter, box, cell.picture, brushes.tokens)
        return QRectF(box.left(), box.bottom(), box.width(), 0)
    line = QFontMetricsF(brushes.font).height()
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
    font = small(brushes.font)
    text = QFontMetricsF(font).elidedText(cell.under, Qt.TextElideMode.ElideRight, box.width())
    side = Qt.AlignmentFlag.AlignLeft if column.align is Align.LEFT else Qt.AlignmentFlag.AlignRight
    brushes.write(box, text, font, "quiet", int(side | Qt.AlignmentFlag.AlignVCenter))


def _line(brushes: Brushes, box: QRectF, cell: Cell, column: Column) -> None:
    box = _labelled(brushes, _marked(brushes, box, cell), cell)
    numeric = _NUMBER.match(cell.text)
    if column.align is Align.DECIMAL and numeric:
        _on_decimal(brushes, box, cell, column)
    elif column.align is not Align.LEFT:
        _at_right(brushes, box, cell)
    else:
        _at_left(brushes, box, cell)


def _marked(brushes: Brushes, box: QRectF, cell: Cell, *, at_top: bool = False) -> QRectF:
    if cell.mark is Mark.NONE:
        return box
    line = QFontMetricsF(brushes.font).height()
    side = line * 0.58
    middle = box.top() + line / 2 if at_top else box.center().y()
    draw_mark(brushes.painter, QRectF(box.left(), middle - side / 2, side, side), cell.mark, brushes.tokens)
    return box.adjusted(_mark_room(brushes.font, cell), 0, 0, 0)


def _labelled(brushes: Brushes, box: QRectF, cell: Cell) -> QRectF:
    if not cell.label:
        return box
    font = small(brushes.font)
    width = QFontMetricsF(font).horizontalAdvance(cell.label)
    brushes.write(box, cell.label, font, "quiet", int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter))
    return box.adjusted(width + step(brushes.font, 1.25), 0, 0, 0)


def _at_left(brushes: Brushes, box: QRectF, cell: Cell) -> None:
    font = text_font(brushes.font, cell.size)
    metrics = QFontMetricsF(font)
    text = metrics.elidedText(cell.text or cell.placeholder, Qt.TextElideMode.ElideRight, box.width())
    flags = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
    brushes.write(box, text, font, _token(cell), flags)
    if cell.unit and cell.text:
        end = box.left() + metrics.horizontalAdvance(text)
        room = max(0.0, box.right() - end)
        shown = QFontMetricsF(small(brushes.font)).elidedText(f" {cell.unit}", Qt.TextElideMode.ElideRight, room)
        _unit(brushes, box, end, shown, metrics)


def _at_right(brushes: Brushes, box: QRectF, cell: Cell) -> None:
    font = text_font(brushes.font, cell.size)
    unit = f" {cell.unit}" if cell.unit else ""
    unit_width = QFontMetricsF(small(brushes.font)).horizontalAdvance(unit)
    flags = int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
    shown = cell.text or cell.placeholder
    text = QFontMetricsF(font).elidedText(shown, Qt.TextElideMode.ElideRight, max(0.0, box.width() - unit_width))
    brushes.write(box.adjusted(0, 0, -unit_width, 0), text, font, _token(cell), flags)
    if unit:
        _unit(brushes, box, box.right() - unit_width, unit, QFontMetricsF(font))


def _on_decimal(brushes: Brushes, box: QRectF, cell: Cell, column: Column) -> None:
    font, lesser = text_font(brushes.font, cell.size), small(brushes.font)
    metrics = QFontMetricsF(font)
    whole, tail = split_at_decimal(cell.text)
    unit_room = QFontMetricsF(lesser).horizontalAdvance(f" {column.unit_room}") if column.unit_room else 0.0
    tail_room = metrics.horizontalAdvance("." + "0" * column.decimals) if column.decimals else 0.0
    tail_width = metrics.horizontalAdvance(tail)
    mark_at = box.right() - unit_room - max(tail_room, tail_width)
    flags = int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
    brushes.write(QRectF(box.left(), box.top(), mark_at - box.left(), box.height()), whole, font, _token(cell), flags)
    if tail:
        rest = QRectF(mark_at, box.top(), tail_width + 2, box.height())
        left = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        brushes.write(rest, tail, font, _token(cell), left)
    if cell.unit:
        _unit(brushes, box, box.right() - unit_room, f" {cell.unit}", metrics)


def _unit(brushes: Brushes, box: QRectF, x: float, unit: str, beside: QFontMetricsF) -> None:
    """A unit stands on the line of its number, smaller and quieter."""
    font = small(brushes.font)
    lesser = QFontMetricsF(font)
    down = (beside.ascent() - beside.descent() - (lesser.ascent() - lesser.descent())) / 2
    place = QRectF(x, box.top() + down, lesser.horizontalAdvance(unit) + 2, box.height())
    brushes.write(place, unit, font, "quiet", int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter))


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
