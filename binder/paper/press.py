"""From a booklet to the bytes of a PDF: title, language, outline, structure; the same bytes for the same booklet."""

from __future__ import annotations

import threading
from dataclasses import dataclass
from io import BytesIO
from typing import TYPE_CHECKING

from binder.kitchen.wording import _
from binder.paper.block import text
from binder.paper.leaf import plain_leaves
from binder.paper.page import FOOT_GAP, FOOT_LINES, FOOT_STYLE, PAGE_NUMBER_WIDTH, foot_height, foot_text
from binder.paper.pen import HAIRLINE, Pen
from binder.paper.preflight import Fault, page_faults, unknown_faults
from binder.paper.script import clean
from binder.paper.structure import SECTION

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.paper.leaf import Leaf
    from binder.paper.page import Booklet, Page, Part
    from binder.paper.pen import Ink
    from binder.paper.press_canvas import PressCanvas

_one_at_a_time = threading.Lock()
"""ReportLab's faces belong to one document at a time."""


@dataclass(frozen=True)
class Printed:
    """A finished document: its bytes, how many pages, and what is wrong with which page.

    `missing_glyphs` are the signs that no installed face has: each is shown by its number.
    """

    content: bytes
    pages: int
    missing_glyphs: tuple[str, ...]
    faults: tuple[Fault, ...] = ()


def printed(booklet: Booklet) -> Printed:
    """The booklet as a PDF."""
    with _one_at_a_time:
        return _Press(booklet).printed()


class _Press:
    def __init__(self, booklet: Booklet) -> None:
        from reportlab import rl_config

        from binder.paper.press_canvas import PressCanvas

        rl_config.useA85 = 0  # a file needs no ASCII armour: a fifth smaller, and sooner made
        self._booklet, self._held = booklet, BytesIO()
        self._canvas: PressCanvas = PressCanvas(self._held, booklet.parts[0].paper.points, booklet.language)
        self._faults: list[Fault] = []
        self._lacking: dict[str, None] = {}
        self._before = 0

    def printed(self) -> Printed:
        canvas, title = self._canvas, _one_line(self._booklet.title)
        canvas.setTitle(title)
        canvas.setAuthor("")
        canvas.setSubject("")
        canvas.setCreator("Binder")
        canvas.setViewerPreference("DisplayDocTitle", "true")
        for part in self._booklet.parts:
            canvas.structure.begin(SECTION)
            self._part(part)
            canvas.structure.end()
        canvas.showOutline()
        canvas.finish()
        return Printed(self._held.getvalue(), self._booklet.count, tuple(self._lacking), tuple(self._faults))

    def _part(self, part: Part) -> None:
        several, words = len(self._booklet.parts) > 1, list[str]()
        for at, leaf in enumerate(part.leaves or plain_leaves(part.pages, part.paper)):
            if several and at == 0:
                self._entry(part.title, f"part-{self._before}", 0)
            self._leaf(part, leaf, words, level=int(several))
        self._faults += unknown_faults(part, " ".join(words), self._before + 1)
        self._before += len(part.pages)

    def _leaf(self, part: Part, leaf: Leaf, words: list[str], *, level: int) -> None:
        canvas = self._canvas
        canvas.setPageSize((leaf.width, leaf.height))
        for placing in leaf.placings:
            page, number = part.pages[placing.page], self._before + placing.page + 1
            if page.outline:
                self._entry(page.outline, f"page-{number}", level)
            moved = placing.matrix != (1, 0, 0, 1, 0.0, 0.0)
            if moved:
                canvas.addLiteral("q {} {} {} {} {:.3f} {:.3f} cm".format(*placing.matrix))
            inks = self._draw(part, page, number)
            if moved:
                canvas.addLiteral("Q")
            words += [ink.text for ink in inks if ink.text]
        _draw_cuts(canvas, leaf.cuts)
        canvas.end_page()

    def _entry(self, title: str, key: str, level: int) -> None:
        self._canvas.bookmarkPage(key)
        self._canvas.addOutlineEntry(_one_line(title), key, level=level, closed=level > 0)

    def _draw(self, part: Part, page: Page, number: int) -> list[Ink]:
        """Draw a page, and have what was drawn judged."""
        pen = Pen(self._canvas)
        drawn: list[tuple[int, int]] = []
        for placed in page.placed:
            begin = len(pen.inks)
            placed.block.draw(pen, placed.x, placed.top, placed.width)
            drawn.append((begin, len(pen.inks)))
        if page.foot:
            pen.begin_artifact()
            _draw_foot(pen, part, _page_words(page, number, self._booklet.count))
            pen.end()
        self._faults += page_faults(part.paper, page, number, pen.inks, drawn)
        self._lacking |= dict.fromkeys("".join(ink.lacks for ink in pen.inks))
        return pen.inks


def _one_line(words: str) -> str:
    return " ".join(clean(words).split())


def _page_words(page: Page, number: int, count: int) -> str:
    says = _("page {number} of {count}").format(number=number, count=count)
    return " · ".join(part for part in (page.note, says) if part)


def _draw_foot(pen: Pen, part: Part, says: str) -> None:
    margin, (width, _height) = part.paper.margin, part.paper.points
    left = width - 2 * margin - PAGE_NUMBER_WIDTH
    foot, top = foot_text(part.foot).shortened(left, FOOT_LINES), margin + foot_height() - FOOT_GAP
    pen.rule(margin, top + FOOT_GAP / 2, width - margin, top + FOOT_GAP / 2, weight=HAIRLINE)
    foot.draw(pen, margin, top, left)
    right = text(says, FOOT_STYLE, to_right=True).shortened(PAGE_NUMBER_WIDTH, FOOT_LINES)
    right.draw(pen, width - margin - PAGE_NUMBER_WIDTH, top, PAGE_NUMBER_WIDTH)


def _draw_cuts(canvas: PressCanvas, cuts: Sequence[tuple[float, float, float, float]]) -> None:
    if cuts:
        canvas.begin_artifact()
        canvas.setLineWidth(HAIRLINE)
        canvas.lines(list(cuts))
        canvas.end_content()
