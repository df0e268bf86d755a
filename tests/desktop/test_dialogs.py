"""The system's dialogs, as far as they can be looked at without a person."""

from __future__ import annotations

import pytest
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from binder.desktop.dialogs import dialog_to_make
from binder.desktop.saver import CSV, PDF, WORKBOOK, kinds_text


@pytest.mark.qt_log_ignore("does not support propagateSizeHints")
def test_a_name_without_an_ending_gets_that_of_the_kind_chosen(qtbot: QtBot) -> None:
    window = QWidget()
    qtbot.addWidget(window)
    dialog = dialog_to_make(window, "Where", "list.xlsx", kinds_text(WORKBOOK, CSV, PDF))
    assert dialog.defaultSuffix() == "xlsx"
    assert dialog.nameFilters() == ["Excel workbook (*.xlsx)", "CSV table (*.csv)", "PDF, for printing (*.pdf)"]
    dialog.filterSelected.emit("CSV table (*.csv)")
    assert dialog.defaultSuffix() == "csv"
