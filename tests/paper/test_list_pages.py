from __future__ import annotations

from binder.paper.block import text
from binder.paper.cell import Column, cell
from binder.paper.list_pages import Section, Sheet, SheetLayout
from binder.paper.list_type import list_type
from binder.paper.page import Booklet, Part
from binder.paper.paper_size import PAPERS
from binder.paper.press import printed
from binder.paper.table import table
from tests.paper.reader import ReadPage, read_pages

STYLE = list_type()


def _pages(*sections: Section) -> list[ReadPage]:
    sheet, paper = Sheet("Long list", (text("Bean day", STYLE.plain),), sections, STYLE), PAPERS["a5"]
    part = Part("t", paper, "foot", SheetLayout(sheet, paper).pages())
    return read_pages(printed(Booklet("t", "en", [part])).content)


def _section(name: str, count: int) -> Section:
    rows = [(cell(f"row{number:03}", STYLE.plain), cell("12 g", STYLE.plain)) for number in range(count)]
    return Section(table=table((Column("food"), Column("needed", figure=True)), rows, STYLE, name))


def test_every_row_is_printed_once_and_in_order() -> None:
    words = " ".join(page.words for page in _pages(_section("Produce", 150))).split()
    rows = [word for word in words if word.startswith("row")]
    assert rows == [f"row{number:03}" for number in range(150)]


def test_a_section_that_goes_on_has_its_head_again() -> None:
    first, second, *_others = _pages(_section("Produce", 150))
    assert "Produce needed" in first.words
    assert "Long list Produce, continued needed" in second.words


def test_a_head_never_stands_alone_at_the_foot_of_a_page() -> None:
    for count in range(20, 40):
        for page in _pages(_section("Produce", count), _section("Baking", 3)):
            assert "Baking needed" not in page.words or "Baking needed row000" in page.words


def test_a_row_taller_than_a_page_is_parted() -> None:
    rows = [(cell(" ".join(f"w{number}" for number in range(2000)), STYLE.plain),)]
    pages = _pages(Section(table=table((Column("food"),), rows, STYLE, "Tall")))
    assert len(pages) > 1
    assert [word for page in pages for word in page.words.split() if word.startswith("w")] == [
        f"w{n}" for n in range(2000)
    ]
