"""The papers a print set is made for: one table of sizes, and which a binder prints on unless told otherwise."""

from __future__ import annotations

from dataclasses import dataclass

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


@dataclass(frozen=True)
class PaperSize:
    """An upright sheet: `width` and `height` in millimetres, and where the size comes from."""

    key: str
    name: str
    width: float
    height: float
    source: str

    @property
    def points(self) -> tuple[float, float]:
        """Width and height in points."""
        return self.width * POINTS_PER_MILLIMETRE, self.height * POINTS_PER_MILLIMETRE

    @property
    def margin(self) -> float:
        """Points left white on every side: office printers leave 4 to 6 mm unprinted. Common practice, no source."""
        return (10.0 if self.width > _FULL_SHEET else 7.0) * POINTS_PER_MILLIMETRE


_FULL_SHEET = 200.0
"""Millimetres; wider than this is a whole office sheet, held in two hands or laid on a table."""

PAPERS: dict[str, PaperSize] = {
    paper.key: paper
    for paper in (
        PaperSize("a4", "A4", 210, 297, _ISO),
        PaperSize("a5", "A5", 148, 210, _ISO),
        PaperSize("a6", "A6", 105, 148, _ISO),
        PaperSize("letter", "Letter", 8.5 * _INCH, 11 * _INCH, _ANSI),
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


def card_paper(measures: Measures) -> PaperSize:
    """What station cards are printed on: half Letter where kitchens measure in US customary units, A5 elsewhere."""
    return PAPERS["half-letter" if measures is Measures.US_CUSTOMARY else "a5"]


def list_paper(measures: Measures) -> PaperSize:
    """What lists are printed on: Letter where kitchens measure in US customary units, A4 elsewhere."""
    return PAPERS["letter" if measures is Measures.US_CUSTOMARY else "a4"]
