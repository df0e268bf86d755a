"""Distances on screen: steps of four pixels at the usual text size, larger where the text is larger."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtGui import QFontMetricsF

if TYPE_CHECKING:
    from PySide6.QtGui import QFont
    from PySide6.QtWidgets import QWidget

_STEPS_A_LINE = 4.5
"""A line of the body is 18 px high at the usual size, which is four and a half steps."""


def step(font: QFont, count: float = 1.0) -> int:
    """So many steps in pixels, at least one pixel."""
    return max(1, round(QFontMetricsF(font).height() / _STEPS_A_LINE * count))


def space(widget: QWidget, count: float = 1.0) -> int:
    """So many steps in pixels for a widget's own font."""
    return step(widget.font(), count)


def characters(font: QFont, count: float) -> int:
    """The width of so many digits in pixels."""
    return round(QFontMetricsF(font).horizontalAdvance("0") * count)
