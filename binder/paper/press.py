"""From a booklet to the bytes of a PDF: title, language, outline, page numbers; the same bytes for the same booklet."""

from __future__ import annotations

import threading
from dataclasses import dataclass
from io import BytesIO
from typing import TYPE_CHECKING

from binder.kitchen.wording import _
from binder.paper.block import text
from binder.paper.page import FOOT_GAP, FOOT_LINES, FOOT_STYLE, PAGE_NUMBER_WIDTH, foot_height, foot_text
from binder.paper.pen import HAIRLINE, Pen
from binder.paper.script import clean

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas

    from binder.paper.page import Booklet, Page

_one_at_a_time = threading.Lock()
"""ReportLab's faces belong to one document at a time."""


@dataclass(frozen=True)
class Printed:
    """A finished document: its bytes, how many pages, the signs that no installed face has, shown by their number."""

    content: bytes
    pages: int
    missing_glyphs: tuple[str, ...]


def printed(booklet: Booklet) -> Printed:
    """The booklet as a PDF."""
    with _one_at_a_time:
        return _printed(booklet)


def _printed(booklet: Booklet) -> Printed:
    from reportlab import rl_config
    from reportlab.pdfgen.canvas import Canvas

    rl_config.useA85 = 0  # a file needs no ASCII armour: a fifth smaller, and sooner made
    held = BytesIO()
    canvas = Canvas(held, pagesize=booklet.paper.points, invariant=1, pageCompression=1, lang=booklet.language)
    title = " ".join(clean(booklet.title).split())
    canvas.setTitle(title)
    canvas.setAuthor("")
    canvas.setSubject("")
    canvas.setCreator("Binder")
    canvas.setViewerPreference("DisplayDocTitle", "true")
    pen = Pen(canvas)
    for number, page in enumerate(booklet.pages, start=1):
        _entry(canvas, page, number)
        _draw(pen, booklet, page, number)
        canvas.showPage()
    canvas.showOutline()
    canvas.save()
    return Printed(held.getvalue(), len(booklet.pages), tuple(pen.lacking))


def _entry(canvas: Canvas, page: Page, number: int) -> None:
    if page.outline:
        key = f"page-{number}"
        canvas.bookmarkPage(key)
        canvas.addOutlineEntry(" ".join(clean(page.outline).split()), key, level=0)


def _draw(pen: Pen, booklet: Booklet, page: Page, number: int) -> None:
    for placed in page.placed:
        placed.block.draw(pen, placed.x, placed.top, placed.width)
    margin, (width, _height) = booklet.paper.margin, booklet.paper.points
    left = width - 2 * margin - PAGE_NUMBER_WIDTH
    foot, top = foot_text(booklet.foot).shortened(left, FOOT_LINES), margin + foot_height() - FOOT_GAP
    pen.rule(margin, top + FOOT_GAP / 2, width - margin, top + FOOT_GAP / 2, weight=HAIRLINE)
    foot.draw(pen, margin, top, left)
    says = _("page {number} of {count}").format(number=number, count=len(booklet.pages))
    right = text(" · ".join(part for part in (page.note, says) if part), FOOT_STYLE, to_right=True)
    right.shortened(PAGE_NUMBER_WIDTH, FOOT_LINES).draw(pen, width - margin - PAGE_NUMBER_WIDTH, top, PAGE_NUMBER_WIDTH)
