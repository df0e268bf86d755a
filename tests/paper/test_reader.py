"""The reader that other tests rely on must find what is wrong: these pages are wrong on purpose."""

from __future__ import annotations

from io import BytesIO

from reportlab.pdfgen.canvas import Canvas

from binder.paper.typeface import Weight, face_of
from tests.paper.reader import all_words, outside, overlapping, read_pages


def _page(*texts: tuple[float, float, str], weight: Weight = Weight.REGULAR, tight: float = 0.0) -> bytes:
    held = BytesIO()
    canvas = Canvas(held, pagesize=(200, 100))
    canvas.setFont(face_of(weight).fontName, 12)
    for x, y, words in texts:
        canvas.drawString(x, y, words, charSpace=-tight)
    canvas.save()
    return held.getvalue()


def test_text_over_text_is_found_and_neighbouring_lines_are_not() -> None:
    (page,) = read_pages(_page((20, 50, "soaked beans"), (24, 53, "cooked beans")))
    assert overlapping(page)
    (page,) = read_pages(_page((20, 50, "Ågypg soaked"), (20, 50 - 12 * 1.22, "ÅÄÖ cooked")))
    assert not overlapping(page)


def test_slanted_letters_reach_over_each_other_unless_they_are_set_too_tight() -> None:
    (page,) = read_pages(_page((20, 50, "dry 3/4 xxx fry"), weight=Weight.ITALIC))
    assert not overlapping(page)
    (page,) = read_pages(_page((20, 50, "dry 3/4 xxx fry"), weight=Weight.ITALIC, tight=1.5))
    assert overlapping(page)


def test_text_that_leaves_the_page_is_found() -> None:
    (page,) = read_pages(_page((20, 50, "beans"), (190, 50, "beans")))
    assert {sign.text for sign in outside(page, 10)} >= {"e", "a", "n"}
    (page,) = read_pages(_page((20, 50, "beans")))
    assert not outside(page, 10)


def test_text_comes_out_as_it_went_in() -> None:
    assert all_words(_page((20, 50, "1½ cups · 250 g at 165 °F → ⅓"))) == "1½ cups · 250 g at 165 °F → ⅓"
