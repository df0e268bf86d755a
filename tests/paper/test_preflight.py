"""Pages that are wrong on purpose: the preflight names the page and what is wrong with it."""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from binder.paper.block import Block, text
from binder.paper.cell import Column, cell
from binder.paper.list_type import list_type
from binder.paper.page import Booklet, Page, Part
from binder.paper.paper_size import PAPERS
from binder.paper.pen import Pen
from binder.paper.preflight import FaultKind
from binder.paper.press import Printed, printed
from binder.paper.print_choices import PrintChoices
from binder.paper.print_set import SheetKind, finished_set
from binder.paper.run import Style
from binder.paper.table import table
from tests.paper.example import SHOOT, full_binder, hostile_binder

STYLE = Style(size=12)
PAPER = PAPERS["a5"]
WIDTH, HEIGHT = PAPER.points


@dataclass
class Drawn:
    """A block of one kind of ink, as tall as it says."""

    how: str
    tall: float = 40.0

    def height(self, width: float) -> float:
        return self.tall

    def rise(self, width: float) -> float:
        return 0.0

    def parted(self, width: float, room: float) -> tuple[Block | None, Block | None]:
        return None, self

    def draw(self, pen: Pen, x: float, top: float, width: float) -> None:
        if self.how == "bar over words":
            text("words that are hidden", STYLE).draw(pen, x, top, width)
            pen.bar(x, top, 60, 20)
        elif self.how == "line through words":
            text("words struck out", STYLE).draw(pen, x, top, width)
            pen.rule(x, top - 8, x + 60, top - 8)
        elif self.how == "white on white":
            text("never seen", Style(size=12, white=True)).draw(pen, x, top, width)
        elif self.how == "taller than it says":
            text("one\ntwo\nthree\nfour\nfive", STYLE).draw(pen, x, top, width)


def _printed(*placed: tuple[Block, float, float, float]) -> Printed:
    """A clean page, then one with these blocks."""
    clean, page = Page(outline="clean"), Page()
    clean.put(text("a clean page", STYLE), PAPER.margin, HEIGHT - PAPER.margin, 200)
    for block, x, top, width in placed:
        page.put(block, x, top, width)
    return printed(Booklet("t", "en", [Part("t", PAPER, "foot", [clean, page])]))


@pytest.mark.parametrize(
    ("blocks", "kind", "says"),
    [
        (
            ((text("over", STYLE), 60, 300, 100), (text("under", STYLE), 62, 303, 100)),
            FaultKind.OVERLAP,
            "“under” and “over” overlap",
        ),
        (((Drawn("bar over words"), 60, 300, 200),), FaultKind.OVERLAP, "“words that are hidden” is drawn over"),
        (((Drawn("line through words"), 60, 300, 200),), FaultKind.OVERLAP, "“words struck out” is drawn over"),
        (((Drawn("white on white"), 60, 300, 200),), FaultKind.NO_PICTURE, "“never seen” is white on white"),
        (((Drawn("taller than it says"), 60, 300, 200),), FaultKind.LEAVES_BOX, "“five” leaves its box"),
        (((text("beyond the edge", STYLE), WIDTH - 40, 300, 200),), FaultKind.LEAVES_PAPER, "leaves the paper"),
        (((text("costs $nan", STYLE), 60, 300, 200),), FaultKind.NO_NUMBER, "“costs $nan” holds no number"),
        (((text("inf kg of salt", STYLE), 60, 300, 200),), FaultKind.NO_NUMBER, "holds no number"),
        (((text("a \ue123 sign", STYLE), 60, 300, 200),), FaultKind.NO_PICTURE, "no installed face has U+E123"),
    ],
)
def test_a_fault_is_named_with_its_page(
    blocks: tuple[tuple[Block, float, float, float], ...], kind: FaultKind, says: str
) -> None:
    faults = _printed(*blocks).faults
    assert {fault.page for fault in faults} == {2}
    assert any(fault.kind is kind and says in fault.says for fault in faults), faults


def test_food_called_nan_and_a_clean_page_have_no_fault() -> None:
    style = list_type()
    rows = [(cell("nan bread, None better", style.plain), cell("$1.20", style.plain))]
    block = table((Column("food"), Column("cost", figure=True)), rows, style, "Bread").blocks(300)[0]
    assert _printed((block, 60, 300, 300)).faults == ()


def test_a_sheet_that_keeps_quiet_about_what_is_not_known_is_found() -> None:
    page = Page()
    page.put(text("Spend at the till: $12.00", STYLE), PAPER.margin, 300, 200)
    part = Part("Costs", PAPER, "foot", [page], unknown=["not known: no price for tahini."])
    (fault,) = printed(Booklet("t", "en", [part])).faults
    assert (fault.page, fault.kind) == (1, FaultKind.NOT_SAID)
    assert fault.says == "Costs does not say: not known: no price for tahini."


def test_every_sheet_with_figures_that_are_not_known_says_which() -> None:
    binder = full_binder()  # parsley has no price
    for sheet in finished_set(binder, [SHOOT], paper="a4"):
        assert sheet.printed.faults == (), sheet.name
    (costs,) = finished_set(binder, [SHOOT], only=[SheetKind.COSTS])
    assert costs.printed.faults == ()


def test_every_sign_of_a_hostile_binder_that_no_face_has_is_named_on_every_page_it_is_on() -> None:
    kinds = [SheetKind.SHOPPING, SheetKind.ALLERGENS, SheetKind.BASE]
    for sheet in finished_set(hostile_binder(), [SHOOT], paper="a4", only=kinds, choices=PrintChoices()):
        faults = sheet.printed.faults
        assert {fault.kind for fault in faults} == {FaultKind.NO_PICTURE}
        assert any("U+E000" in fault.says for fault in faults)
        named = {sign for sign in sheet.printed.missing_glyphs if any(f"U+{ord(sign):04X}" in f.says for f in faults)}
        assert named == set(sheet.printed.missing_glyphs)
