"""How large type on the set is, so that it is read from three metres: by the angle it is seen under.

The angles are those of the printed cards (see `binder.paper.legibility`). A screen says how many dots it has to the
inch; one that says nothing believable is taken to have as many as its logical inch.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtGui import QFont, QFontMetricsF

from binder.paper.legibility import LARGE_ARC, LEAST_ARC, PREFERRED_ARC, capital_height

if TYPE_CHECKING:
    from PySide6.QtGui import QScreen

METRES = 3.0
"""From where the screen is read, where it is large enough to hold what is shown."""

HEADING_ARC = 11.0
"""Minutes of arc of what only names a part of the screen: it is known by its place once it has been read.

Print that is read only now and then may be smaller (ISO 9241-3, as quoted by IBM Healthy Computing).
"""

CLOCK_ARC = 1.5 * LARGE_ARC
_MILLIMETRES = 25.4
_BELIEVABLE = (50.0, 400.0)
"""Dots to the inch of screens that there are; some say 0, or 1 mm for the whole screen."""


@dataclass(frozen=True)
class SetType:
    """Fonts for the set, in pixels of a screen."""

    clock: QFont
    dish: QFont
    text: QFont
    heading: QFont


def dots_per_inch(screen: QScreen) -> float:
    """Device-independent pixels to an inch of the glass."""
    dots = screen.physicalDotsPerInch()
    least, most = _BELIEVABLE
    return dots if least <= dots <= most else screen.logicalDotsPerInch()


def set_type(face: QFont, dots: float, *, metres: float = METRES) -> SetType:
    """Fonts that are read from so many metres on a screen with so many dots to the inch."""
    return SetType(
        clock=sized_for(face, CLOCK_ARC, dots, metres=metres, strong=True),
        dish=sized_for(face, PREFERRED_ARC, dots, metres=metres, strong=True),
        text=sized_for(face, LEAST_ARC, dots, metres=metres),
        heading=sized_for(face, HEADING_ARC, dots, metres=metres),
    )


def sized_for(face: QFont, arc: float, dots: float, *, metres: float = METRES, strong: bool = False) -> QFont:
    """A font whose capitals are seen under so many minutes of arc from so many metres; to the pixel below."""
    font = QFont(face)
    if strong:
        font.setWeight(QFont.Weight.DemiBold)
    font.setPixelSize(1000)
    capitals = QFontMetricsF(font).capHeight() / 1000
    pixels = capital_height(metres, arc) / _MILLIMETRES * dots / capitals
    font.setPixelSize(math.ceil(pixels))
    return font


def share_of(font: QFont, share: float = 1.0, *, strong: bool = False) -> QFont:
    """A font set in pixels, so many times as large, semibold where `strong`."""
    other = QFont(font)
    other.setPixelSize(max(1, round(font.pixelSize() * share)))
    if strong:
        other.setWeight(QFont.Weight.DemiBold)
    return other
