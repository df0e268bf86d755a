"""A state's shape beside words is seen where there is one and takes no room where there is none."""

from __future__ import annotations

from PySide6.QtGui import QImage
from PySide6.QtWidgets import QLabel
from pytestqt.qtbot import QtBot

from binder.desktop.mark_label import MarkLabel
from binder.desktop.sheet.cell import Mark


def label(qtbot: QtBot, mark: Mark) -> MarkLabel:
    made = MarkLabel()
    qtbot.addWidget(made)
    made.show_mark(mark)
    return made


def picture(shown: MarkLabel) -> QImage:
    shown.resize(shown.sizeHint())
    return shown.grab().toImage()


def test_each_state_has_its_own_shape(qtbot: QtBot) -> None:
    within, over, again = (picture(label(qtbot, mark)) for mark in (Mark.WITHIN, Mark.OVER, Mark.WITHIN))
    assert within != over
    assert within == again


def test_none_takes_no_room(qtbot: QtBot) -> None:
    shown = label(qtbot, Mark.OVER)
    assert not shown.isHidden()
    shown.show_mark(Mark.NONE)
    assert shown.isHidden()


def test_it_is_no_taller_than_two_lines_of_text(qtbot: QtBot) -> None:
    words = QLabel("so")
    qtbot.addWidget(words)
    assert words.sizeHint().height() / 2 < label(qtbot, Mark.OVER).sizeHint().height() < 2 * words.sizeHint().height()
