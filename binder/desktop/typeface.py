"""The face of the window, Source Sans, and its sizes: everything else on screen is measured by it."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtGui import QFont, QFontDatabase

FAMILY = "Source Sans Pro"
BODY_POINTS = 10.5
SCALE = 1.25
"""Each heading is this much larger than the text below it."""

SMALL = 0.87
"""Units, column heads and second lines against the body."""

_FILES = ("Regular", "It", "Semibold", "SemiboldIt", "Bold")


def register_face() -> None:
    """Make Source Sans known to Qt; the system's own face serves where its package is missing."""
    try:
        import font_source_sans_pro
    except ImportError:
        return
    folder = Path(font_source_sans_pro.font_directory)
    for style in _FILES:
        QFontDatabase.addApplicationFont(str(folder / f"SourceSansPro-{style}.ttf"))


def body_font(points: float = BODY_POINTS) -> QFont:
    """The face of the body, with figures of one width."""
    font = QFont(FAMILY)
    font.setPointSizeF(points)
    font.setFeature(QFont.Tag("tnum"), 1)
    return font


def sized(font: QFont, factor: float, *, strong: bool = False) -> QFont:
    """A font so many times as large, semibold where `strong`."""
    other = QFont(font)
    other.setPointSizeF(font.pointSizeF() * factor)
    if strong:
        other.setWeight(QFont.Weight.DemiBold)
    return other


def heading(font: QFont, level: int) -> QFont:
    """The heading `level` steps of the scale above the body."""
    return sized(font, SCALE**level, strong=True)


def small(font: QFont) -> QFont:
    """The size of units and second lines."""
    return sized(font, SMALL)
