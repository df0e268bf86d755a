"""Where things stand on a card: one hairline frame, a band, two columns where there is room for them, a foot."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.paper.legibility import ARMS_LENGTH
from binder.paper.page import foot_height
from binder.paper.print_choices import Look

if TYPE_CHECKING:
    from binder.paper.block import Block
    from binder.paper.paper_size import PaperSize
    from binder.paper.pen import Pen

PAD = 4.0
"""Points of white above and below what a band, a body or a foot holds."""

_INSET = 7.0
_OUTER, _AROUND, _UNDER_BAND = 1.6, 3.6, 3.0
"""Points: the outer line of a card that is filmed, how far it stands around the inner one, the bar under its band."""

_GUTTER = 17.0
"""Points of white between the card's frame and what is in it, and between its columns."""

_LEFT_SHARE = 0.38
_TWO_COLUMNS_FROM = 300.0 / ARMS_LENGTH
"""Points for each metre that the card is read from: narrower cards have one column, containers above their step."""


class CardSpace:
    """The measures of a card in points: `x` and `inner` are where its contents begin and how wide they are."""

    def __init__(self, paper: PaperSize, metres: float = ARMS_LENGTH, look: Look = Look.PLAIN) -> None:
        width, height = paper.points
        self.around = _AROUND if look is Look.ON_CAMERA else 0.0
        white = paper.margin + self.around
        self.edge, self.top = white, height - white
        self.wide = width - 2 * white
        self.tall = height - 2 * white - foot_height() - 2
        self.x, self.inner = self.edge + _INSET, self.wide - 2 * _INSET
        self.two_columns = self.inner >= _TWO_COLUMNS_FROM * max(metres, ARMS_LENGTH)
        self.left = (self.inner - _GUTTER) * _LEFT_SHARE if self.two_columns else self.inner
        self.right = self.inner - _GUTTER - self.left if self.two_columns else self.inner
        self.right_x = self.x + (self.left + _GUTTER if self.two_columns else 0.0)
        self.between = self.right_x - self.edge - _GUTTER / 2

    def right_column(self, *, left_is_empty: bool) -> tuple[float, float]:
        """Where the right column begins and how wide it is: the whole card where nothing stands left of it."""
        return (self.x, self.inner) if left_is_empty else (self.right_x, self.right)


@dataclass
class Frame:
    """The card's one hairline frame, with the band and the foot ruled off and lines between the columns.

    `between` is where the columns meet, `columns` from where to where down the card there are two. A card that is
    filmed has a second line so many points `around` it.
    """

    tall: float
    band: float
    foot: float
    between: float | None
    columns: tuple[tuple[float, float], ...]
    around: float = 0.0

    def height(self, width: float) -> float:  # noqa: ARG002
        """The whole card, with what stands around it."""
        return self.tall + 2 * self.around

    def rise(self, width: float) -> float:  # noqa: ARG002
        """None."""
        return 0.0

    def parted(self, width: float, room: float) -> tuple[Block | None, Block | None]:  # noqa: ARG002
        """Never."""
        return None, self

    def draw(self, pen: Pen, x: float, top: float, width: float) -> None:
        """Box and rules."""
        if self.around:
            self._draw_filmed(pen, x, top, width)
            return
        pen.box(x, top, width, self.tall)
        pen.rule(x, top - self.band, x + width, top - self.band, weight=1.5)
        if self.foot:
            pen.rule(x, top - self.tall + self.foot, x + width, top - self.tall + self.foot)
        if self.between is not None:
            for from_top, to_top in self.columns:
                pen.rule(x + self.between, top - from_top, x + self.between, top - to_top)

    def _draw_filmed(self, pen: Pen, x: float, top: float, width: float) -> None:
        """Two lines round the card, a strong one under the band, a fine one over the foot; white between columns."""
        pen.box(x, top, width, self.tall + 2 * self.around, weight=_OUTER)
        x, top, width = x + self.around, top - self.around, width - 2 * self.around
        pen.box(x, top, width, self.tall)
        pen.bar(x + _INSET, top - self.band + _UNDER_BAND / 2, width - 2 * _INSET, _UNDER_BAND)
        if self.foot:
            at = top - self.tall + self.foot
            pen.rule(x + _INSET, at, x + width - _INSET, at)
