"""ReportLab's canvas with what it lacks: marked content, structure, lines of text without its slow text objects."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from reportlab.pdfbase.pdfdoc import PDFDictionary, PDFName
from reportlab.pdfgen.canvas import Canvas

from binder.paper.structure import Structure
from binder.paper.typeface import registered_face

if TYPE_CHECKING:
    from io import BytesIO

    from binder.paper.run import Piece, SetLine


_VERSION = (1, 7)
"""Structure came with PDF 1.4; 1.7 is ISO 32000-1."""

_FIRST_PLAIN, _LAST_PLAIN = 32, 126
_ESCAPED = {ord("("): "\\(", ord(")"): "\\)", ord("\\"): "\\\\"}
_SHOWN = tuple(
    _ESCAPED.get(code, chr(code) if _FIRST_PLAIN <= code <= _LAST_PLAIN else f"\\{code:03o}") for code in range(256)
)
"""Each byte of a string as it stands in a page's stream (ISO 32000-1, 7.3.4.2)."""


class PressCanvas(Canvas):
    """A canvas whose lines of text take a third of ReportLab's time, and whose contents are tagged."""

    def __init__(self, held: BytesIO, size: tuple[float, float], language: str) -> None:
        super().__init__(held, pagesize=size, invariant=1, pageCompression=1, lang=language, pdfVersion=_VERSION)
        self.document: Any = self._doc  # type: ignore[attr-defined]
        self.structure = Structure()
        self._known: dict[tuple[str, str], tuple[tuple[str, str], ...]] = {}

    def _make_preamble(self) -> None:
        """The coordinates only: ReportLab would name Helvetica on every page, which is not embedded and not used."""
        self._preamble = "1 0 0 1 0 0 cm"

    def set_line(self, line: SetLine, x: float, baseline: float) -> None:
        """A line of text, its baseline beginning at a point."""
        parts = [f"BT 1 0 0 1 {x:.2f} {baseline:.2f} Tm"]
        font = ""
        white = False
        for piece in line.pieces:
            if piece.style.white is not white:
                white = piece.style.white
                parts.append("1 g" if white else "0 g")
            for name, shown in self._shown(piece):
                sized = f"{name} {piece.style.size:g} Tf"
                parts.append(f"({shown}) Tj" if sized == font else f"{sized} ({shown}) Tj")
                font = sized
        if line.spaced:
            parts.append("( ) Tj")  # every subset of a face has the blank at its own place
        parts.append("ET 0 g" if white else "ET")
        self.addLiteral(" ".join(parts))

    def _shown(self, piece: Piece) -> tuple[tuple[str, str], ...]:
        """The text of a piece as stretches of one subset of its face each: the subset's name, and what is drawn."""
        key = (piece.face, piece.text)
        if key not in self._known:
            face = registered_face(piece.face)
            self._known[key] = tuple(
                (face.getSubsetInternalName(subset, self.document), "".join([_SHOWN[code] for code in codes]))
                for subset, codes in face.splitString(piece.text, self.document)
            )
        return self._known[key]

    def begin_content(self, role: str) -> None:
        """What is drawn from here on is the text of an element of structure."""
        number = self.structure.content(role)
        self.addLiteral(f"/{role} <</MCID {number}>> BDC")

    def begin_artifact(self) -> None:
        """What is drawn from here on carries no text of its own: a rule, a box, the foot of a page."""
        self.addLiteral("/Artifact BMC")

    def end_content(self) -> None:
        """The end of either."""
        self.addLiteral("EMC")

    def end_page(self) -> None:
        """The page is full."""
        parents = self.structure.end_page(self.document.thisPageRef())
        self.showPage()
        page = self.document.Pages.pages[-1]
        page.__NoDefault__ = [*page.__NoDefault__, "StructParents", "Tabs"]
        page.StructParents, page.Tabs = parents, PDFName("S")

    def finish(self) -> None:
        """Write it all out."""
        catalog = self.document.Catalog
        catalog.MarkInfo = PDFDictionary({"Marked": "true"})
        catalog.StructTreeRoot = self.structure.root(self.document)
        self.save()
