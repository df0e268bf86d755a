"""Drawing on a page: lines of set text, rules, boxes and circles. Black ink only, so that it copies well.

What is drawn is noted down too, as boxes in the page's own coordinates: `preflight` judges a page by them.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.paper.glyph import ink_height
from binder.paper.run import RISE

if TYPE_CHECKING:
    from collections.abc import Sequence

    from reportlab.pdfgen.pathobject import PDFPathObject

    from binder.paper.press_canvas import PressCanvas
    from binder.paper.run import SetLine

HAIRLINE = 0.5
"""Points; thinner lines are lost on a photocopier. Common practice, no source."""


class InkKind(StrEnum):
    """What a piece of ink is."""

    TEXT = "text"
    WHITE_TEXT = "white text"
    RULE = "rule"
    SOLID = "solid"


@dataclass(frozen=True, slots=True)
class Ink:
    """A box that something was drawn in, in points from the page's lower left corner, and the text of a line."""

    kind: InkKind
    left: float
    bottom: float
    right: float
    top: float
    text: str = ""
    lacks: str = ""


@dataclass(frozen=True)
class End:
    """One upright edge of a band: where it stands and from where to where it reaches, in points."""

    x: float
    top: float
    bottom: float


_HATCH = 4.0
"""Points from line to line of a hatching: nearer ones run together on a photocopier. Common practice, no source."""

_DARK = 0.6
"""A grey lighter than this (0 black, 1 white) may lie under black text. Common practice, no source."""


@dataclass
class Pen:
    """Draws on a canvas, y upward from the foot of the page in points, and keeps what it drew."""

    canvas: PressCanvas
    inks: list[Ink] = field(default_factory=list)
    _open: int = 0

    def begin_element(self, role: str) -> None:
        """What is drawn up to `end_element` belongs to an element of the document's structure."""
        self.canvas.structure.begin(role)

    def end_element(self) -> None:
        """The end of the element that was begun last."""
        self.canvas.structure.end()

    def begin_content(self) -> None:
        """What is drawn up to `end` is one text: its lines are read one after the other."""
        if not self._open:
            self.canvas.begin_content(self.canvas.structure.role())
        self._open += 1

    def begin_artifact(self) -> None:
        """What is drawn up to `end` is no text of the document: a rule, a box, the foot of a page."""
        if not self._open:
            self.canvas.begin_artifact()
        self._open += 1

    def end(self) -> None:
        """The end of either."""
        self._open -= 1
        if not self._open:
            self.canvas.end_content()

    def _artifact(self, drawing: str) -> None:
        """A piece of drawing, as a page's stream has it."""
        self.canvas.addLiteral(drawing if self._open else f"/Artifact BMC {drawing} EMC")

    def text(self, line: SetLine, x: float, top: float) -> None:
        """A line of text, its top at `top`."""
        if not line.pieces:
            return
        baseline = top - line.size * RISE
        self.begin_content()
        self.canvas.set_line(line, x, baseline)
        self.end()
        self._note_text(line, x, baseline)

    def _note_text(self, line: SetLine, x: float, baseline: float) -> None:
        low, high, words, lacks = 0.0, 0.0, [], ""
        for piece in line.pieces:
            below, above = ink_height(piece.face, piece.text)
            low, high = min(low, below * piece.style.size), max(high, above * piece.style.size)
            words.append(piece.text)
            lacks += piece.lacks
        kind = InkKind.WHITE_TEXT if line.pieces[0].style.white else InkKind.TEXT
        self.inks.append(Ink(kind, x, baseline + low, x + line.width, baseline + high, "".join(words), lacks))

    def rule(self, x: float, y: float, to_x: float, to_y: float, *, weight: float = HAIRLINE) -> None:
        """A straight line `weight` points thick."""
        self._artifact(f"{weight:.3f} w n {x:.2f} {y:.2f} m {to_x:.2f} {to_y:.2f} l S")
        self._note(InkKind.RULE, (x, to_x), (y, to_y))

    def box(self, x: float, top: float, width: float, height: float, *, weight: float = HAIRLINE) -> None:
        """An empty box."""
        self._artifact(f"{weight:.3f} w n {x:.2f} {top - height:.2f} {width:.2f} {height:.2f} re S")
        for ends in (((x, x + width), (top, top)), ((x, x + width), (top - height, top - height))):
            self._note(InkKind.RULE, *ends)
        for side in (x, x + width):
            self._note(InkKind.RULE, (side, side), (top, top - height))

    def bar(self, x: float, top: float, width: float, height: float, *, grey: float = 0.0) -> None:
        """A filled bar."""
        self._artifact(f"{grey:g} g n {x:.2f} {top - height:.2f} {width:.2f} {height:.2f} re f 0 g")
        if grey < _DARK:
            self._note(InkKind.SOLID, (x, x + width), (top, top - height))

    def ring(self, x: float, y: float, radius: float, *, weight: float, dashes: Sequence[float] = ()) -> None:
        """A circle round a point, drawn with dashes and gaps of those lengths where there are any."""
        self.begin_artifact()
        self.canvas.setLineWidth(weight)
        self.canvas.setDash(list(dashes))
        self.canvas.circle(x, y, radius, stroke=1, fill=0)
        self.canvas.setDash([])
        self.end()

    def disc(self, x: float, y: float, radius: float) -> None:
        """A solid circle round a point."""
        self.begin_artifact()
        self.canvas.circle(x, y, radius, stroke=0, fill=1)
        self.end()
        self._note(InkKind.SOLID, (x - radius, x + radius), (y - radius, y + radius))

    def wedge(
        self, corners: Sequence[tuple[float, float]], *, solid: bool, weight: float = 1.0, grey: float = 0.0
    ) -> None:
        """A polygon, solid (in a grey) or in outline."""
        self.begin_artifact()
        self.canvas.setLineWidth(weight)
        self.canvas.setFillGray(grey)
        path = self.canvas.beginPath()
        path.moveTo(*corners[0])
        for corner in corners[1:]:
            path.lineTo(*corner)
        path.close()
        self.canvas.drawPath(path, stroke=0 if solid else 1, fill=1 if solid else 0)
        self.canvas.setFillGray(0)
        self.end()
        if solid and grey < _DARK:
            self._note(InkKind.SOLID, [x for x, _y in corners], [y for _x, y in corners])

    def ribbon(self, left: End, right: End, *, grey: float) -> None:
        """A band in a grey that leaves one upright edge level and comes to another level.

        Its edges are drawn dark: a photocopier loses the grey and keeps them.
        """
        self.begin_artifact()
        self.canvas.setFillGray(grey)
        self.canvas.setLineWidth(HAIRLINE)
        self.canvas.drawPath(self._ribbon(left, right), stroke=0, fill=1)
        self.canvas.setFillGray(0)
        self.canvas.drawPath(self._edges(left, right), stroke=1, fill=0)
        self.end()

    def hatched_ribbon(self, left: End, right: End) -> None:
        """A band of slanting lines: what is left over, also where grey is lost."""
        low, high = min(left.bottom, right.bottom), max(left.top, right.top)
        self.begin_artifact()
        self.canvas.saveState()
        self.canvas.setLineWidth(HAIRLINE)
        path = self._ribbon(left, right)
        self.canvas.drawPath(path, stroke=1, fill=0)
        self.canvas.clipPath(self._ribbon(left, right), stroke=0, fill=0)
        tall, at = high - low, left.x - (high - low)
        lines = []
        while at < right.x:
            lines.append((at, low, at + tall, high))
            at += _HATCH
        self.canvas.lines(lines)
        self.canvas.restoreState()
        self.end()

    def dashes(self, x: float, y: float, length: float) -> None:
        """A level dashed line."""
        self.begin_artifact()
        self.canvas.setLineWidth(1.0)
        self.canvas.setDash([3, 2])
        self.canvas.line(x, y, x + length, y)
        self.canvas.setDash([])
        self.end()

    def _ribbon(self, left: End, right: End) -> PDFPathObject:
        middle = (left.x + right.x) / 2
        path = self.canvas.beginPath()
        path.moveTo(left.x, left.top)
        path.curveTo(middle, left.top, middle, right.top, right.x, right.top)
        path.lineTo(right.x, right.bottom)
        path.curveTo(middle, right.bottom, middle, left.bottom, left.x, left.bottom)
        path.close()
        return path

    def _edges(self, left: End, right: End) -> PDFPathObject:
        middle = (left.x + right.x) / 2
        path = self.canvas.beginPath()
        for begin, end in ((left.top, right.top), (left.bottom, right.bottom)):
            path.moveTo(left.x, begin)
            path.curveTo(middle, begin, middle, end, right.x, end)
        return path

    def _note(self, kind: InkKind, across: Sequence[float], up: Sequence[float]) -> None:
        self.inks.append(Ink(kind, min(across), min(up), max(across), max(up)))
