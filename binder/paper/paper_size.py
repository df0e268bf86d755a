"""The papers a print set is made for: one table of sizes, their margins, and which is used unless another is asked."""

from __future__ import annotations

from dataclasses import dataclass, replace

from binder.kitchen.errors import BinderError
from binder.kitchen.settings import Measures
from binder.kitchen.wording import _, listed

POINTS_PER_MILLIMETRE = 72 / 25.4
"""A point is 1/72 inch (ISO 32000-1, 8.3.2.3); an inch is 25.4 mm exactly (NIST Handbook 44, Appendix C)."""

_INCH = 25.4
_ISO, _ANSI = "ISO 216", "ANSI/ASME Y14.1, size A"


class UnknownPaperError(BinderError):
    """A paper that is not in the table."""

    def __init__(self, name: str) -> None:
        super().__init__(
            _("No paper is called “{name}”. Choose {papers}.").format(
                name=name[:60], papers=listed(PAPERS, joined_by=_("or"))
            )
        )


class UnfitMarginError(BinderError):
    """A margin that no printer reaches into, or that leaves too little of the paper."""

    def __init__(self, margin: str) -> None:
        says = _(
            "A margin of “{margin}” does not do. Choose {printers}, or {least} to {most} millimetres, "
            "a fifth of the paper’s width at most."
        )
        super().__init__(
            says.format(
                margin=margin[:60], printers=listed(PRINTERS, joined_by=_("or")), least=LEAST_MARGIN, most=MOST_MARGIN
            )
        )


LEAST_MARGIN, MOST_MARGIN = 3, 40
"""Millimetres."""

_MOST_OF_THE_WIDTH = 0.2

PRINTERS = {"laser": 5.0, "ink-jet": 13.0}
"""Millimetres of white that clear what common printers leave unprinted: a laser printer about 4.2 mm (1/6 inch) on
every side, an ink-jet printer up to 12.7 mm (1/2 inch) at the foot. From memory."""


@dataclass(frozen=True)
class PaperSize:
    """A sheet: `width` and `height` in millimetres, where the size comes from, and `white` on every side if chosen."""

    key: str
    name: str
    width: float
    height: float
    source: str
    white: float | None = None

    @property
    def points(self) -> tuple[float, float]:
        """Width and height in points."""
        return self.width * POINTS_PER_MILLIMETRE, self.height * POINTS_PER_MILLIMETRE

    @property
    def margin(self) -> float:
        """Points left white on every side: office printers leave 4 to 6 mm unprinted. Common practice, no source."""
        usual = 10.0 if min(self.width, self.height) > _FULL_SHEET else 7.0
        return (usual if self.white is None else self.white) * POINTS_PER_MILLIMETRE

    def with_margin(self, millimetres: float | None) -> PaperSize:
        """The same paper with so much white on every side (None: as is usual). Raises UnfitMarginError."""
        if millimetres is None:
            return self
        most = min(MOST_MARGIN, min(self.width, self.height) * _MOST_OF_THE_WIDTH)
        if not LEAST_MARGIN <= millimetres <= most:
            raise UnfitMarginError(f"{millimetres:g}")
        return replace(self, white=millimetres)

    @property
    def lying(self) -> PaperSize:
        """The same paper with its long side level."""
        return replace(self, width=max(self.width, self.height), height=min(self.width, self.height))


_FULL_SHEET = 200.0
"""Millimetres; wider than this is a whole office sheet, held in two hands or laid on a table."""

PAPERS: dict[str, PaperSize] = {
    paper.key: paper
    for paper in (
        PaperSize("a3", "A3", 297, 420, _ISO),
        PaperSize("a4", "A4", 210, 297, _ISO),
        PaperSize("a5", "A5", 148, 210, _ISO),
        PaperSize("a6", "A6", 105, 148, _ISO),
        PaperSize("letter", "Letter", 8.5 * _INCH, 11 * _INCH, _ANSI),
        PaperSize("legal", "Legal", 8.5 * _INCH, 14 * _INCH, "US legal, 8½ × 14 in"),
        PaperSize("half-letter", "Half Letter", 5.5 * _INCH, 8.5 * _INCH, f"half of {_ANSI}"),
        PaperSize("4x6", "4 × 6 in", 4 * _INCH, 6 * _INCH, "trade size of index cards, from memory"),
        PaperSize("5x8", "5 × 8 in", 5 * _INCH, 8 * _INCH, "trade size of index cards, from memory"),
    )
}
"""Every paper by its key, as commands name it."""


def paper_called(name: str) -> PaperSize:
    """The paper of that key, however its letters are cased. Raises UnknownPaperError."""
    paper = PAPERS.get(name.strip().casefold())
    if paper is None:
        raise UnknownPaperError(name)
    return paper


def margin_called(name: str) -> float:
    """Millimetres of a margin: a kind of printer's, or the number itself. Raises UnfitMarginError."""
    folded = name.strip().casefold()
    if folded in PRINTERS:
        return PRINTERS[folded]
    try:
        millimetres = float(folded.removesuffix("mm").strip().replace(",", "."))
    except ValueError:
        raise UnfitMarginError(name) from None
    if not LEAST_MARGIN <= millimetres <= MOST_MARGIN:
        raise UnfitMarginError(name)
    return millimetres


def card_paper(measures: Measures) -> PaperSize:
    """What station cards are printed on: half Letter where kitchens measure in US customary units, A5 elsewhere."""
    return PAPERS["half-letter" if measures is Measures.US_CUSTOMARY else "a5"]


def list_paper(measures: Measures) -> PaperSize:
    """What lists are printed on: Letter where kitchens measure in US customary units, A4 elsewhere."""
    return PAPERS["letter" if measures is Measures.US_CUSTOMARY else "a4"]
