"""What stands in for an empty page can be read whole, in a window of any size."""

from __future__ import annotations

import pytest
from PySide6.QtWidgets import QLabel, QWidget
from pytestqt.qtbot import QtBot

from binder.desktop.empty_page import EmptyPage

SENTENCES = (
    "Add a food.",
    "A shoot is one day before the camera: a base ingredient, dishes in a fixed order, and so many builds of each.",
    "flour, water, salt, " * 20,
)


@pytest.mark.parametrize("sentence", SENTENCES)
@pytest.mark.parametrize(("width", "height"), [(1200, 800), (700, 500)])
def test_all_of_the_sentence_is_seen(qtbot: QtBot, sentence: str, width: int, height: int) -> None:
    window = QWidget()
    qtbot.addWidget(window)
    page = EmptyPage(sentence, "Begin", window)
    page.resize(width, height)
    page.ensurePolished()
    layout = page.layout()
    assert layout is not None
    layout.activate()
    (label,) = page.findChildren(QLabel)
    assert label.height() >= label.heightForWidth(label.width())
    assert not label.geometry().intersects(page.button.geometry())


def test_the_button_begins_it(qtbot: QtBot) -> None:
    page = EmptyPage("Add a food.", "Begin")
    qtbot.addWidget(page)
    with qtbot.waitSignal(page.begun):
        page.button.click()
