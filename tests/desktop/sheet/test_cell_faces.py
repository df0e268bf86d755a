"""Faces are measured as Qt measures them, once; and a table's delegate takes others as soon as its font is another."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QFontMetricsF
from PySide6.QtWidgets import QApplication

from binder.desktop.sheet import cell_faces
from binder.desktop.sheet.cell import Size
from binder.desktop.sheet.cell_faces import CellFaces, Face, padding, text_font
from binder.desktop.spacing import step
from binder.desktop.typeface import sized

TEXTS = ("", "chickpeas, dried", "3.49", "½", "a name so long that no column of any table holds it")


@pytest.mark.parametrize("text", TEXTS)
@pytest.mark.parametrize("room", [-5.0, 0.0, 40.0, 10_000.0])
def test_a_text_is_cut_where_qt_cuts_it(qapp: QApplication, text: str, room: float) -> None:
    face, metrics = Face(qapp.font()), QFontMetricsF(qapp.font())
    for _time in range(2):
        assert face.width(text) == metrics.horizontalAdvance(text)
        assert face.cut(text, room) == metrics.elidedText(text, Qt.TextElideMode.ElideRight, max(0.0, room))


@pytest.mark.parametrize("text", [*TEXTS[1:], "two\nlines"])
@pytest.mark.parametrize("room", [1.0, 40.0, 10_000.0])
def test_a_text_that_folds_is_as_high_as_qt_makes_it(qapp: QApplication, text: str, room: float) -> None:
    qt = QFontMetricsF(qapp.font()).boundingRect(QRectF(0, 0, room, 1e6), cell_faces.WRAPPED, text)
    assert Face(qapp.font()).height_in(room, text) == pytest.approx(qt.height(), abs=0.01)


def test_widths_are_forgotten_and_not_kept_without_end(qapp: QApplication, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(cell_faces, "_MOST_WIDTHS", 3)
    face = Face(qapp.font())
    widths = [face.width(text) for text in TEXTS]
    assert len(face._widths) <= 3
    assert [face.width(text) for text in TEXTS] == widths


def test_faces_follow_the_body(qapp: QApplication) -> None:
    small, large = CellFaces(qapp.font()), CellFaces(sized(qapp.font(), 2))
    for size in Size:
        assert small.of(size).font == text_font(qapp.font(), size)
        assert small.of(size) is small.of(size)
        assert large.of(size).height > small.of(size).height
    assert small.padding == padding(qapp.font())
    assert [small.step(count) for count in (0.0, 1.0, 1.0, 4.5)] == [step(qapp.font(), n) for n in (0.0, 1.0, 1.0, 4.5)]
