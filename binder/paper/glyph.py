"""How far glyphs reach above and below the baseline, measured from their outlines."""

from __future__ import annotations

import functools
import struct

from binder.paper.typeface import registered_face

_NOTHING = (0.0, 0.0)
_ASSUMED = (-0.3, 1.0)
"""Parts of the type size, where a face's outlines cannot be read."""


@functools.lru_cache(maxsize=65536)
def ink_height(face_name: str, text: str) -> tuple[float, float]:
    """The lowest and the highest point of a text in a face at a size of one point, in points from its baseline."""
    reaches = [_reach(face_name, sign) for sign in set(text)]
    return min((low for low, _high in reaches), default=0.0), max((high for _low, high in reaches), default=0.0)


@functools.lru_cache(maxsize=65536)
def _reach(face_name: str, sign: str) -> tuple[float, float]:
    outlines = registered_face(face_name).face
    glyph = outlines.charToGlyph.get(ord(sign), 0)
    start, end = outlines.glyphPos[glyph], outlines.glyphPos[glyph + 1]
    if start == end or sign in "  ":
        return _NOTHING
    try:
        _contours, _left, low, _right, high = struct.unpack_from(">hhhhh", _glyphs(face_name), start)
    except struct.error:
        return _ASSUMED
    return low / outlines.unitsPerEm, high / outlines.unitsPerEm


@functools.cache
def _glyphs(face_name: str) -> bytes:
    table: bytes = registered_face(face_name).face.get_table("glyf")  # type: ignore[no-untyped-call]
    return table
