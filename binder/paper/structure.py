"""The structure of a document, so that a screen reader knows headings, paragraphs and tables (ISO 32000-1, 14.7)."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from reportlab.pdfbase.pdfdoc import PDFObject

HEADING, SUBHEADING, PARAGRAPH = "H1", "H2", "P"
TABLE, ROW, HEAD_ROW, CELL, HEAD_CELL = "Table", "TR", "TR head", "TD", "TH"
SECTION = "Sect"
"""The types of element that are used (ISO 32000-1, 14.8.4). `TR head` is a row that begins a table of its own."""

_HEADS_A_COLUMN = b"/A <</O /Table /Scope /Column>>"
"""What a head cell is the head of (ISO 32000-1, 14.8.5.7)."""

_GROUPING = {"Document", SECTION, TABLE, ROW}


@dataclass(eq=False)
class Element(PDFObject):
    """An element: its type, what it stands in, and in order the elements in it and the numbers of its contents."""

    role: str
    within: Element | None
    page: Any = None
    kids: list[Element | int] = field(default_factory=list)
    reference: bytes = b""

    def format(self, document: Any) -> bytes:  # noqa: ANN401 - as ReportLab declares it
        """As it stands in the file: written out here, since a document has thousands."""
        kids = b" ".join([b"%d" % kid if isinstance(kid, int) else kid.reference for kid in self.kids])
        within = self.within.reference if self.within else _reference(document.Catalog.StructTreeRoot, document)
        page = b"/Pg " + self.page.format(document) if self.page is not None else b""
        more = _HEADS_A_COLUMN if self.role == HEAD_CELL else b""
        return b"<</S /%b /P %b %b %b /K [%b]>>" % (self.role.encode("ascii"), within, page, more, kids)


def _reference(element: PDFObject, document: Any) -> bytes:  # noqa: ANN401
    return bytes(document.Reference(element).format(document))


@dataclass(eq=False)
class Root(PDFObject):
    """The root of the structure: its one element, and for each page the elements of its contents by their numbers."""

    document: Element
    pages: list[list[Element]]

    def format(self, document: Any) -> bytes:  # noqa: ANN401
        """As it stands in the file."""
        numbers = (
            b"%d [%b]" % (at, b" ".join([element.reference for element in elements]))
            for at, elements in enumerate(self.pages)
        )
        return b"<</Type /StructTreeRoot /K %b /ParentTree <</Nums [%b]>>>>" % (
            _reference(self.document, document),
            b" ".join(numbers),
        )


class Structure:
    """Gathers elements while pages are drawn. Contents that stand in no element of their own become paragraphs."""

    def __init__(self) -> None:
        self._document = Element("Document", None)
        self._open = [self._document]
        self._here: list[Element] = []
        self._pages: list[list[Element]] = []

    def begin(self, role: str) -> None:
        """What is drawn up to `end` belongs to an element of this type; rows one after the other to one table."""
        if role in {ROW, HEAD_ROW}:
            table = self._table(new=role == HEAD_ROW)
            self._open.append(self._begun(ROW, table))
        else:
            self._open.append(self._begun(role, self._open[-1]))

    def end(self) -> None:
        """The end of the element that was begun last."""
        self._open.pop()

    def _table(self, *, new: bool) -> Element:
        within = self._open[-1]
        last = within.kids[-1] if within.kids else None
        if not new and isinstance(last, Element) and last.role == TABLE:
            return last
        return self._begun(TABLE, within)

    @staticmethod
    def _begun(role: str, within: Element) -> Element:
        element = Element(role, within)
        within.kids.append(element)
        return element

    def role(self) -> str:
        """The type of the element that what is drawn next belongs to."""
        open_role = self._open[-1].role
        return PARAGRAPH if open_role in _GROUPING else open_role

    def content(self, role: str) -> int:
        """The number of a piece of content that begins here, on this page."""
        element = self._open[-1]
        if element.role in _GROUPING:
            element = self._begun(role, element)
        number = len(self._here)
        element.kids.append(number)
        self._here.append(element)
        return number

    def end_page(self, page: Any) -> int:  # noqa: ANN401
        """The page's contents end here; returns the page's number in the tree of parents."""
        for element in self._here:
            element.page = page
        self._pages.append(self._here)
        self._here = []
        return len(self._pages) - 1

    def root(self, document: Any) -> Root:  # noqa: ANN401
        """The whole, with every element made known to ReportLab's document."""
        _drop_empty(self._document)
        _make_known(self._document, document)
        return Root(self._document, self._pages)


def _drop_empty(element: Element) -> None:
    kept: list[Element | int] = []
    for kid in element.kids:
        if isinstance(kid, Element):
            _drop_empty(kid)
        if isinstance(kid, int) or kid.kids:
            kept.append(kid)
    element.kids = kept


def _make_known(element: Element, document: Any) -> None:  # noqa: ANN401
    element.reference = _reference(element, document)
    for kid in element.kids:
        if isinstance(kid, Element):
            _make_known(kid, document)
