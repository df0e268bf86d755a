"""Type on the set is as large as the angle asks it to be, whatever the screen."""

from __future__ import annotations

import pytest
from PySide6.QtGui import QFont, QFontMetricsF, QGuiApplication
from PySide6.QtWidgets import QApplication

from binder.desktop.appearance import Wardrobe
from binder.desktop.set_view.set_type import METRES, dots_per_inch, set_type
from binder.paper.legibility import LEAST_ARC, PREFERRED_ARC, seen_under


def arc_of(font: QFont, dots: float, metres: float = METRES) -> float:
    """Minutes of arc under which a capital of a font is seen."""
    return seen_under(QFontMetricsF(font).capHeight() / dots * 25.4, metres)


@pytest.mark.parametrize("dots", [72.0, 96.0, 109.0, 218.0])
def test_what_is_read_is_seen_under_the_least_angle_or_more(
    wardrobe: Wardrobe, qapp: QApplication, dots: float
) -> None:
    fonts = set_type(qapp.font(), dots)
    assert arc_of(fonts.text, dots) >= LEAST_ARC * 0.99
    assert arc_of(fonts.dish, dots) >= PREFERRED_ARC * 0.99
    assert arc_of(fonts.clock, dots) > arc_of(fonts.dish, dots)
    assert arc_of(fonts.text, dots) < LEAST_ARC * 1.1


def test_from_nearer_type_may_be_smaller(wardrobe: Wardrobe, qapp: QApplication) -> None:
    near = set_type(qapp.font(), 96.0, metres=1.5)
    assert near.text.pixelSize() < set_type(qapp.font(), 96.0).text.pixelSize()
    assert arc_of(near.text, 96.0, 1.5) >= LEAST_ARC * 0.99


def test_a_screen_that_says_nothing_believable_is_taken_at_its_logical_inch(qapp: QApplication) -> None:
    class Odd:
        def physicalDotsPerInch(self) -> float:
            return 2032.0

        def logicalDotsPerInch(self) -> float:
            return 96.0

    assert dots_per_inch(Odd()) == 96.0  # type: ignore[arg-type]
    real = QGuiApplication.primaryScreen()
    assert 50 <= dots_per_inch(real) <= 400
