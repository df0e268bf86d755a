"""A failing page is named; a page that only lacks a picture of a sign is not called unfit."""

from __future__ import annotations

from binder.desktop.cards_page.preflight_words import fault_text, marks_of, verdict_of
from binder.desktop.sheet.cell import Mark
from binder.paper.preflight import Fault, FaultKind
from binder.paper.press import Printed


def printed(*faults: Fault) -> Printed:
    return Printed(b"", 9, (), faults)


LACKS = Fault(2, FaultKind.NO_PICTURE, "no installed face has U+1F34B: it is shown by its number.")
LEAVES = Fault(5, FaultKind.LEAVES_BOX, "“salt” leaves its box.")


def test_all_well_is_said() -> None:
    verdict = verdict_of(printed())
    assert (verdict.mark, verdict.says, verdict.faults) == (Mark.WITHIN, "9 pages, nothing is wrong with them", ())


def test_the_gravest_fault_is_the_first_and_gives_the_mark() -> None:
    verdict = verdict_of(printed(LACKS, LEAVES))
    assert verdict.mark is Mark.OVER
    assert verdict.faults == (LEAVES, LACKS)
    assert fault_text(verdict.faults[0]) == "Page 5: “salt” leaves its box."
    assert "2 things" in verdict.says


def test_a_sign_shown_by_its_number_only_wants_a_look() -> None:
    assert verdict_of(printed(LACKS)).mark is Mark.WARN


def test_the_pages_of_many_faults_are_all_named() -> None:
    many = [Fault(page, FaultKind.OVERLAP, "a and b overlap.") for page in (1, 2, 3, 4, 7, 8, 8)]
    verdict = verdict_of(printed(*many))
    assert len(verdict.faults) == 4
    assert verdict.more == "and 3 more, on pages 7 and 8"


def test_a_page_has_the_mark_of_its_gravest_fault() -> None:
    also = Fault(5, FaultKind.NO_PICTURE, "")
    assert marks_of(printed(also, LACKS, LEAVES, also)) == {2: Mark.WARN, 5: Mark.OVER}
