"""Widgets that go on in the next line."""

from __future__ import annotations

from PySide6.QtWidgets import QPushButton, QWidget
from pytestqt.qtbot import QtBot

from binder.desktop.appearance import Wardrobe
from binder.desktop.wrapping_row import WrappingRow


def test_each_keeps_its_size_and_goes_on_below_where_a_line_is_full(qtbot: QtBot, wardrobe: Wardrobe) -> None:
    window = QWidget()
    qtbot.addWidget(window)
    window.resize(900, 400)
    holder = QWidget(window)
    row = WrappingRow(6, holder)
    buttons = [QPushButton(f"Way number {number}") for number in range(5)]
    for button in buttons:
        row.addWidget(button)
    wide = sum(button.sizeHint().width() for button in buttons) + 4 * 6
    assert row.heightForWidth(wide) == buttons[0].sizeHint().height()
    assert row.heightForWidth(wide - 1) > buttons[0].sizeHint().height()
    assert row.minimumSize().width() == max(button.minimumSizeHint().width() for button in buttons)
    holder.resize(wide // 2, 300)
    window.show()
    boxes = [button.geometry() for button in buttons]
    assert all(box.right() <= wide // 2 for box in boxes)
    assert len({box.top() for box in boxes}) > 1
    assert not any(one.intersects(other) for at, one in enumerate(boxes) for other in boxes[at + 1 :])


def test_an_empty_row_has_no_height(qtbot: QtBot) -> None:
    holder = QWidget()
    qtbot.addWidget(holder)
    assert WrappingRow(6, holder).heightForWidth(300) == 0
