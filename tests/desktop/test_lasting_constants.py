"""PySide6 may take references of None and True that it does not own: the interpreter must not run out of them."""

from __future__ import annotations

import sys

from PySide6.QtCore import QObject, Signal
from pytestqt.qtbot import QtBot


class Bell(QObject):
    rung = Signal(object)

    def heard(self, _what: object) -> None:
        pass


def test_more_signals_than_there_were_references_leave_the_constants_alive(qtbot: QtBot) -> None:
    bell = Bell()
    bell.rung.connect(bell.heard)
    for _time in range(20_000):
        bell.rung.emit(None)
    assert min(sys.getrefcount(constant) for constant in (None, True, False)) > 1 << 30
