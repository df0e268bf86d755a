"""The face on paper: Source Sans, embedded from the TrueType files of font-source-sans-pro (ReportLab takes no CFF)."""

from __future__ import annotations

import functools
import struct
from enum import StrEnum
from typing import Any, cast

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.pdfdoc import PDFTrueTypeFont
from reportlab.pdfbase.ttfonts import TTFError, TTFont

from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _

_LARGEST_IN_ONE_UNIT = 0xFFFF


class Weight(StrEnum):
    """The four cuts a page is set in; each value is the name of its file in the package."""

    REGULAR = "SourceSansPro"
    SEMIBOLD = "SourceSansProSemibold"
    BOLD = "SourceSansProBold"
    ITALIC = "SourceSansProIt"


class FaceMissingError(BinderError):
    """The package that carries the face is not installed, or a file of it is damaged."""

    def __init__(self, name: str) -> None:
        super().__init__(
            _("The face {name} cannot be read. Install the package font-source-sans-pro again.").format(name=name)
        )


class Face(TTFont):
    """A TrueType face that also copies and searches right beyond U+FFFF, where ReportLab writes an unreadable map."""

    def addObjects(self, doc: Any) -> None:  # noqa: ANN401, N802 - as ReportLab declares it
        """Put the face's subsets into a document, their maps back to Unicode in UTF-16 as ISO 32000-1, 9.10.3 asks."""
        subsets = [list(subset) for subset in self.state[doc].subsets] if doc in self.state else []
        super().addObjects(doc)
        name = self.face.name.decode("latin-1")
        for key, found in doc.idToObject.items():
            if key.startswith("toUnicodeCMap:") and name in key:
                found.content = _in_utf16(found.content, subsets)
            elif isinstance(found, PDFTrueTypeFont) and name in found.BaseFont:  # type: ignore[attr-defined]
                _write_out(found.Widths)  # type: ignore[attr-defined]


def _write_out(widths: Any) -> None:  # noqa: ANN401 - ReportLab's array has no types
    """The widths as one piece of text, which ReportLab would else format one by one: a face has hundreds."""
    if len(widths.sequence) > 1:
        widths.sequence = [" ".join([f"{width:.6g}" for width in widths.sequence]).encode("ascii")]


def _in_utf16(content: str, subsets: list[list[int]]) -> str:
    for code in {code for subset in subsets for code in subset if code > _LARGEST_IN_ONE_UNIT}:
        content = content.replace(f"<{code:04X}>", f"<{chr(code).encode('utf-16-be').hex().upper()}>")
    return content


@functools.cache
def face_of(weight: Weight) -> Face:
    """The face of a weight, known to ReportLab by the weight's value. Raises FaceMissingError."""
    try:
        import font_source_sans_pro

        return registered(weight.value, font_source_sans_pro.font_files_ttf[weight.value])
    except (ImportError, KeyError, OSError, TTFError) as error:
        raise FaceMissingError(weight.value) from error


def registered(name: str, path: str) -> Face:
    """A TrueType file made known to ReportLab by a name. Raises TTFError or OSError."""
    face = Face(name, path)
    pdfmetrics.registerFont(face)
    return face


def has(face: Face, code: int) -> bool:
    """Whether a face has a glyph of its own for a code point; glyph 0 is the empty box."""
    return bool(face.face.charToGlyph.get(code, 0))


@functools.cache
def capital_ratio(weight: Weight) -> float:
    """The height of a capital H as a part of the type size, measured from its outline."""
    outlines = face_of(weight).face
    start = outlines.glyphPos[outlines.charToGlyph[ord("H")]]
    glyphs: bytes = outlines.get_table("glyf")  # type: ignore[no-untyped-call]
    _contours, _left, _bottom, _right, top = struct.unpack_from(">hhhhh", glyphs, start)
    return float(top / outlines.unitsPerEm)


@functools.lru_cache(maxsize=65536)
def width_of_one(face_name: str, text: str) -> float:
    """The width of a text in a registered face at a size of one point, in points."""
    widths = registered_face(face_name).face
    return float(sum(widths.charWidths.get(ord(sign), widths.defaultWidth) for sign in text)) / 1000


@functools.cache
def registered_face(name: str) -> Face:
    """The face that a name stands for, those of the package made known when they are first asked for."""
    if name in list(Weight):
        return face_of(Weight(name))
    return cast("Face", pdfmetrics.getFont(name))
