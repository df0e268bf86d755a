"""A fold shows what it folds, and says in short what that is while it does not."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from binder.desktop.appearance import Wardrobe
from binder.desktop.fold import Fold


def test_the_keyboard_opens_and_folds_it(qtbot: QtBot, wardrobe: Wardrobe) -> None:
    window = QWidget()
    qtbot.addWidget(window)
    window.resize(600, 300)
    page = QWidget(window)
    content = QLabel("what is folded", page)
    fold = Fold("Terms", content, page)
    column = QVBoxLayout(page)
    column.addWidget(fold)
    column.addWidget(content)
    fold.say("in short")
    window.show()
    short = next(label for label in fold.findChildren(QLabel) if label.text() == "in short")
    assert not content.isVisible()
    assert fold.button.accessibleName() == "Terms, folded away"
    fold.button.setFocus()
    QTest.keyClick(fold.button, Qt.Key.Key_Space)
    assert content.isVisible()
    assert fold.is_open
    assert fold.button.accessibleName() == "Terms, shown"
    assert not short.text()
    fold.say("said meanwhile")
    QTest.keyClick(fold.button, Qt.Key.Key_Space)
    assert not content.isVisible()
    assert short.text() == "said meanwhile"
