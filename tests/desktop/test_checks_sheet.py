"""The checks in sight."""

from __future__ import annotations

from binder.desktop.checks_sheet import ChecksSheet, checks_of, waiting_by_page
from binder.desktop.main_window import MainWindow
from binder.desktop.sheet.cell import Mark
from binder.desktop.sheet.sheet import Sight
from binder.figures.checks import Severity
from binder.kitchen.binder import Binder
from tests.desktop.sheets import is_even

CHECKS = ChecksSheet()


def test_every_check_is_a_sentence_the_gravest_first(chickpeas: Binder) -> None:
    sight = Sight(chickpeas, "day")
    rows = CHECKS.rows(sight)
    said = [row.cells[0].text for row in rows if row.place is not None]
    assert said == [check.says for check in checks_of(sight)]
    headings = [row.cells[0].text for row in rows if row.place is None]
    assert headings == ["Stops the shoot", "Wants a look", "Worth knowing"]
    assert is_even(CHECKS, sight)


def test_being_short_of_the_base_is_a_broken_bar(chickpeas: Binder) -> None:
    row = next(row for row in CHECKS.rows(Sight(chickpeas, "day")) if row.key.startswith("short of base"))
    assert row.cells[0].mark is Mark.SHORT


def test_without_a_shoot_it_says_when_checks_begin() -> None:
    assert CHECKS.rows(Sight(Binder(), None))[0].cells[0].text == "Checks begin with the first shoot."


def test_before_anything_is_known_it_is_not_said_that_all_is_well(chickpeas: Binder) -> None:
    (row,) = ChecksSheet(lambda _sight: None).rows(Sight(chickpeas, "day"))
    assert (row.cells[0].text, row.cells[0].mark) == ("being worked out", Mark.NONE)
    (well,) = ChecksSheet(lambda _sight: ()).rows(Sight(chickpeas, "day"))
    assert (well.cells[0].text, well.cells[0].mark) == ("Nothing needs you.", Mark.WITHIN)


def test_the_tally_says_so_too(window: MainWindow) -> None:
    desk, tally = window.desk, window.checks.tally
    assert desk.checks.latest.value
    assert "need" in tally.toolTip()
    desk.checks.latest.value = None
    window.checks.refresh()
    assert tally.toolTip() == "being worked out"


def test_what_waits_is_counted_behind_its_divider(chickpeas: Binder) -> None:
    sight = Sight(chickpeas, "day")
    waiting = waiting_by_page(checks_of(sight))
    stops = sum(check.severity is Severity.STOP for check in checks_of(sight))
    assert sum(one for one, _other in waiting.values()) == stops
