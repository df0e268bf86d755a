"""The faces cells are set in, measured once: a page of a table has hundreds of cells, and all share a few faces."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QFontMetricsF

from binder.desktop.sheet.cell import Size
from binder.desktop.spacing import step
from binder.desktop.typeface import heading, sized, small

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from PySide6.QtGui import QFont

WRAPPED = int(Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)

_MOST_WIDTHS = 4000
"""Texts whose width is kept; what is in sight, and a few screens around it."""


class Face:
    """A font and what is measured in it, in pixels."""

    def __init__(self, font: QFont) -> None:
        self.font = font
        self.metrics = QFontMetricsF(font)
        self.height = self.metrics.height()
        self.rise = self.metrics.ascent() - self.metrics.descent()
        self._widths: dict[str, float] = {}

    def width(self, text: str) -> float:
        """How wide a text is on one line."""
        width = self._widths.get(text)
        if width is None:
            if len(self._widths) >= _MOST_WIDTHS:
                self._widths.clear()
            width = self._widths[text] = self.metrics.horizontalAdvance(text)
        return width

    def cut(self, text: str, room: float) -> str:
        """A text, or where it is wider than the room its beginning and an ellipsis."""
        if self.width(text) <= room:
            return text
        return self.metrics.elidedText(text, Qt.TextElideMode.ElideRight, max(0.0, room))

    def height_in(self, room: float, text: str) -> float:
        """How high a text is that folds in a room; most are no more than one line, which is told by their width."""
        if self.width(text) <= room and "\n" not in text:
            return self.height
        return self.metrics.boundingRect(QRectF(0, 0, room, 1e6), WRAPPED, text).height()


class CellFaces:
    """The faces of a table whose body is set in a font."""

    def __init__(self, font: QFont) -> None:
        self.font = font
        self.lesser = Face(small(font))
        self.padding = padding(font)
        self._faces: dict[Size, Face] = {}
        self._steps: dict[float, int] = {}
        self.body = self.of(Size.BODY)

    def of(self, size: Size) -> Face:
        """The face of a cell's text."""
        face = self._faces.get(size)
        if face is None:
            face = self._faces[size] = Face(text_font(self.font, size))
        return face

    def step(self, count: float = 1.0) -> int:
        """So many steps in pixels."""
        pixels = self._steps.get(count)
        if pixels is None:
            pixels = self._steps[count] = step(self.font, count)
        return pixels


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
