"""A set is asked for by ticks, and what its files will be called is said before they are written."""

from __future__ import annotations

import pytest
from pytestqt.qtbot import QtBot

from binder.desktop.cards_page.print_wishes import Wishes
from binder.desktop.cards_page.set_window import SetWindow
from binder.desktop.main_window import MainWindow
from binder.kitchen.binder import Binder
from binder.paper.print_set import SheetKind, kinds_of


@pytest.fixture
def asking(qtbot: QtBot, window: MainWindow, chickpeas: Binder) -> SetWindow:
    made = SetWindow(chickpeas, "day", Wishes(), window)
    qtbot.addWidget(made)
    return made


def test_what_the_shoot_has_to_say_is_ticked(asking: SetWindow, chickpeas: Binder) -> None:
    ticked = tuple(kind for kind, box in asking.kinds.items() if box.isChecked())
    assert ticked == kinds_of(chickpeas, "day")


def test_the_names_of_files_follow_the_pattern(asking: SetWindow) -> None:
    assert asking.says.text() == "as station-cards.pdf"
    asking.pattern.setText("{date}-{sheet}")
    assert asking.says.text() == "as 2026-11-06-station-cards.pdf"
    asking.together.setChecked(True)
    assert asking.says.text() == "as 2026-11-06-print-set.pdf"


def test_a_pattern_that_names_no_files_is_said_and_cannot_be_used(asking: SetWindow) -> None:
    asking.pattern.setText("{all}")
    assert "names no files" in asking.says.text()
    assert not asking.save.isEnabled()


def test_nothing_ticked_is_nothing_to_save(asking: SetWindow) -> None:
    for box in asking.kinds.values():
        box.setChecked(False)
    assert not asking.save.isEnabled()
    asking.kinds[SheetKind.MISE].setChecked(True)
    assert asking.save.isEnabled()


def test_what_is_ticked_is_asked_for(asking: SetWindow, qtbot: QtBot) -> None:
    for kind, box in asking.kinds.items():
        box.setChecked(kind is SheetKind.LABELS)
    asking.pattern.setText("x-{sheet}")
    with qtbot.waitSignal(asking.asked) as asked:
        asking.save.click()
    shoots, kinds, wishes = asked.args or [None, None, None]
    assert (shoots, kinds) == (("day",), (SheetKind.LABELS,))
    assert wishes == Wishes(pattern="x-{sheet}")
