"""Drawing on a page: lines of set text, rules, boxes and circles. Black ink only, so that it copies well."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from binder.paper.run import RISE

if TYPE_CHECKING:
    from collections.abc import Sequence

    from reportlab.pdfgen.canvas import Canvas

    from binder.paper.run import SetLine

HAIRLINE = 0.5
"""Points; thinner lines are lost on a photocopier. Common practice, no source."""


@dataclass
class Pen:
    """Draws on a canvas, y upward from the foot of the page in points, and keeps which signs no face could show."""

    canvas: Canvas
    lacking: dict[str, None] = field(default_factory=dict)

    def text(self, line: SetLine, x: float, top: float) -> None:
        """A line of text, its top at `top`."""
        if not line.pieces:
            return
        text = self.canvas.beginText(x, top - line.size * RISE)
        for piece in line.pieces:
            text.setFont(piece.face, piece.style.size)
            text.textOut(piece.text)
            if piece.lacks:
                self.lacking |= dict.fromkeys(piece.lacks)
        self.canvas.drawText(text)

    def rule(self, x: float, y: float, to_x: float, to_y: float, *, weight: float = HAIRLINE) -> None:
        """A straight line `weight` points thick."""
        self.canvas.setLineWidth(weight)
        self.canvas.line(x, y, to_x, to_y)

    def box(self, x: float, top: float, width: float, height: float, *, weight: float = HAIRLINE) -> None:
        """An empty box."""
        self.canvas.setLineWidth(weight)
        self.canvas.rect(x, top - height, width, height, stroke=1, fill=0)

    def bar(self, x: float, top: float, width: float, height: float, *, grey: float = 0.0) -> None:
        """A filled bar."""
        self.canvas.setFillGray(grey)
        self.canvas.rect(x, top - height, width, height, stroke=0, fill=1)
        self.canvas.setFillGray(0)

    def ring(self, x: float, y: float, radius: float, *, weight: float, dashes: Sequence[float] = ()) -> None:
        """A circle round a point, drawn with dashes and gaps of those lengths where there are any."""
        self.canvas.setLineWidth(weight)
        self.canvas.setDash(list(dashes))
        self.canvas.circle(x, y, radius, stroke=1, fill=0)
        self.canvas.setDash([])

    def wedge(self, corners: Sequence[tuple[float, float]], *, solid: bool, weight: float = 1.0) -> None:
        """A polygon, solid or in outline."""
        self.canvas.setLineWidth(weight)
        path = self.canvas.beginPath()
        path.moveTo(*corners[0])
        for corner in corners[1:]:
            path.lineTo(*corner)
        path.close()
        self.canvas.drawPath(path, stroke=0 if solid else 1, fill=1 if solid else 0)
