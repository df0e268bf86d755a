"""What a printed page really shows, read by an independent reader: texts, sizes, what overlaps or leaves the page."""

from __future__ import annotations

import ctypes
import unicodedata
from collections import defaultdict
from dataclasses import dataclass
from typing import TYPE_CHECKING

import pypdfium2 as pdfium
from pypdfium2 import raw

if TYPE_CHECKING:
    from collections.abc import Iterator


@dataclass(frozen=True)
class Sign:
    """A character where it stands, in points from the lower left corner, with its type size.

    `left` to `top` is the box of its ink; it is set on `baseline` from `begins` to `ends`, the width its face gives it.
    """

    text: str
    left: float
    bottom: float
    right: float
    top: float
    size: float
    begins: float = 0.0
    ends: float = 0.0
    baseline: float = 0.0
    at: int = 0

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Left, bottom, right, top of its ink."""
        return self.left, self.bottom, self.right, self.top


class Words(str):
    """Text that is searched without regard to hyphens: PDFium does not tell one of the language from one typed."""

    __slots__ = ()

    def __contains__(self, said: str) -> bool:  # type: ignore[override]
        return _without_hyphens(said) in _without_hyphens(str(self))


def _without_hyphens(words: str) -> str:
    return words.replace("-", "").replace("\u00ad", "")


@dataclass(frozen=True)
class ReadPage:
    """A page as it was read: its size in points, its text and the place of every visible character."""

    width: float
    height: float
    text: str
    signs: tuple[Sign, ...]

    @property
    def words(self) -> Words:
        """Its text with every white space as one blank, and a hyphen where PDFium tells of one at the end of a line."""
        return Words(" ".join(self.text.replace("\ufffe", "-").split()))


def read_pages(content: bytes) -> list[ReadPage]:
    """Every page of a PDF."""
    document = pdfium.PdfDocument(content)
    try:
        return [_read(document[number]) for number in range(len(document))]
    finally:
        document.close()


def _read(page: pdfium.PdfPage) -> ReadPage:
    text_page = page.get_textpage()
    try:
        text = text_page.get_text_range()
        signs = tuple(_signs(text_page))
        width, height = page.get_size()
        return ReadPage(width, height, text, signs)
    finally:
        text_page.close()
        page.close()


def _signs(text_page: pdfium.PdfTextPage) -> Iterator[Sign]:
    for at in range(text_page.count_chars()):
        code = raw.FPDFText_GetUnicode(text_page, at)
        if raw.FPDFText_IsGenerated(text_page, at) or code in {0, 10, 13, 32, 0xA0}:
            continue
        size = raw.FPDFText_GetFontSize(text_page, at)
        begins, baseline = _origin(text_page, at)
        left, bottom, right, top = text_page.get_charbox(at)
        ends = begins + _advance(text_page, at, code, size)
        yield Sign(chr(code), left, bottom, right, top, size, begins, ends, baseline, at)


def _origin(text_page: pdfium.PdfTextPage, at: int) -> tuple[float, float]:
    x, y = ctypes.c_double(), ctypes.c_double()
    raw.FPDFText_GetCharOrigin(text_page, at, x, y)
    return x.value, y.value


def _advance(text_page: pdfium.PdfTextPage, at: int, code: int, size: float) -> float:
    """The width that the font of the PDF gives a character; 0 where it gives none."""
    wide = ctypes.c_float()
    face = raw.FPDFTextObj_GetFont(raw.FPDFText_GetTextObject(text_page, at))
    return wide.value if raw.FPDFFont_GetGlyphWidth(face, code, size, wide) else 0.0


def all_words(content: bytes) -> Words:
    """The text of all pages of a PDF, every white space as one blank."""
    return Words(" ".join(page.words for page in read_pages(content)))


def outside(page: ReadPage, margin: float) -> list[Sign]:
    """The characters that stand nearer to the edge of the paper than `margin` points."""
    return [
        sign
        for sign in page.signs
        if sign.left < margin
        or sign.bottom < margin
        or sign.right > page.width - margin
        or sign.top > page.height - margin
    ]


_CELL = 24.0
_TOUCHING = 0.12
"""Neighbours in a word may touch: part of the smaller box that two boxes may share."""

_SAME_BASELINE = 0.01
_SIGNS_OF_ONE = 3
"""Points, and how far apart the signs stand in a text that PDFium makes of one glyph."""

_SET_TIGHT = 0.02
"""Parts of the type size by which widths may overlap on one baseline, as those of a PDF are rounded."""


def overlapping(page: ReadPage) -> list[tuple[Sign, Sign]]:
    """Pairs of characters drawn over each other. Marks that sit on a letter are left out."""
    cells: dict[tuple[int, int], list[Sign]] = defaultdict(list)
    for sign in page.signs:
        if not unicodedata.combining(sign.text) and sign.right > sign.left and sign.top > sign.bottom:
            for column in range(int(sign.left // _CELL), int(sign.right // _CELL) + 1):
                for row in range(int(sign.bottom // _CELL), int(sign.top // _CELL) + 1):
                    cells[column, row].append(sign)
    found = {}
    for signs in cells.values():
        for at, one in enumerate(signs):
            for other in signs[at + 1 :]:
                if one is not other and _shared(one, other) > _TOUCHING:
                    found[id(one), id(other)] = (one, other)
    return list(found.values())


def _shared(one: Sign, other: Sign) -> float:
    """The part of the smaller box that two boxes share; none for neighbours set as their face sets them.

    The boxes of slanted letters reach over each other, though their strokes are well apart. A sign that PDFium tells of
    as several, as it does of ½ or … beside Hebrew, has one box.
    """
    if one.box == other.box and abs(one.at - other.at) <= _SIGNS_OF_ONE:
        return 0.0
    if abs(one.baseline - other.baseline) < _SAME_BASELINE and _set_apart(one, other):
        return 0.0
    wide = min(one.right, other.right) - max(one.left, other.left)
    tall = min(one.top, other.top) - max(one.bottom, other.bottom)
    if wide <= 0 or tall <= 0:
        return 0.0
    smaller = min(
        (one.right - one.left) * (one.top - one.bottom), (other.right - other.left) * (other.top - other.bottom)
    )
    return wide * tall / smaller


def _set_apart(one: Sign, other: Sign) -> bool:
    """Whether the widths that two signs on one baseline are set in are known and follow each other."""
    if one.begins == one.ends or other.begins == other.ends:
        return False
    return min(one.ends, other.ends) - max(one.begins, other.begins) <= _SET_TIGHT * min(one.size, other.size)
