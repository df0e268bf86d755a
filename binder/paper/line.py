"""From words to lines: broken where they are full, a word parted with a hyphen where much white would stand else.

A word is cut anywhere only where it alone is wider than the line and no language parts it.
"""

from __future__ import annotations

import functools
import re
import unicodedata
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from binder.paper.hyphenation import parting_points
from binder.paper.run import Piece, SetLine, Word
from binder.paper.script import in_setting_order, turns
from binder.paper.typeface import width_of_one
from binder.paper.word import space_width, word_of

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from binder.paper.run import Style


def lines_of(words: Sequence[Word], width: float) -> tuple[SetLine, ...]:
    """The words broken into lines of at most `width` points; a word too long for a line is cut between its signs."""
    lines: list[SetLine] = []
    line = _OpenLine()
    for whole in words:
        word = whole
        if line.words and line.width_with(word) > width:
            first, word = _parted(word, line, width, after_hyphen=bool(lines) and _ends_in_hyphen(lines[-1]))
            if first is not None:
                line.add(first)
            lines.append(line.closed())
            line = _OpenLine()
        if lines and not line.words and _separates(word):
            continue
        for part in _fitting(word, width) if word.width > width else (word,):
            if line.words and line.width_with(part) > width:
                lines.append(line.closed())
                line = _OpenLine()
            line.add(part)
        if word.ends:
            lines.append(line.closed())
            line = _OpenLine()
    return (*lines, line.closed()) if line.words else tuple(lines)


HYPHEN = "\u00ad"
"""Drawn where a word is parted: Source Sans draws it as a hyphen, and whoever copies the text gets a whole word."""

_RAGGED = 0.22
"""Part of a line that may stand white at its end before a word is parted for it."""

_PARTED_WORD = re.compile(r"[^\W\d_]{8,}")


def _ends_in_hyphen(line: SetLine) -> bool:
    return line.pieces[-1].text.endswith(HYPHEN)


def _parted(word: Word, line: _OpenLine, width: float, *, after_hyphen: bool) -> tuple[Word | None, Word]:
    """What of a word still goes on a line, with a hyphen, and what is left; never two lines in a row."""
    room = width - line.width - line.words[-1].space
    if after_hyphen or room < width * _RAGGED:
        return None, word
    return _hyphenated(word, room) or (None, word)


def _hyphenated(word: Word, room: float) -> tuple[Word, Word] | None:
    """A word parted in its own language so that its beginning is at most `room` wide; None where it cannot be."""
    if len(word.pieces) != 1 or not word.pieces[0].style.language or word.pieces[0].lacks:
        return None
    piece = word.pieces[0]
    letters = _PARTED_WORD.search(piece.text)
    if letters is None:
        return None
    for point in reversed(parting_points(letters.group(), piece.style.language)):
        at = letters.start() + point
        first = _piece_of(piece, piece.text[:at] + HYPHEN)
        if first.width <= room:
            rest = _piece_of(piece, piece.text[at:])
            return word_of((first,)), word_of((rest,), word.space, ends=word.ends)
    return None


def _piece_of(piece: Piece, text: str) -> Piece:
    return replace(piece, text=text, width=width_of_one(piece.face, text) * piece.style.size)


def _fitting(word: Word, width: float) -> Iterator[Word]:
    """A word that is wider than a line in parts that are not: parted with hyphens, or else cut."""
    rest = word
    while rest.width > width and (parts := _hyphenated(rest, width)):
        yield parts[0]
        rest = parts[1]
    yield from _cut(rest, width) if rest.width > width else (rest,)


SEPARATOR = "·"
"""Stands between parts of a line, and is not drawn where a line begins or ends with it."""


def _separates(word: Word) -> bool:
    return not word.ends and len(word.pieces) == 1 and word.pieces[0].text == SEPARATOR


@dataclass
class _OpenLine:
    words: list[Word] = field(default_factory=list)
    width: float = 0.0

    def width_with(self, word: Word) -> float:
        return self.width + (self.words[-1].space if self.words else 0.0) + word.width - 1e-6

    def add(self, word: Word) -> None:
        self.width += (self.words[-1].space if self.words else 0.0) + word.width
        self.words.append(word)

    def closed(self) -> SetLine:
        if len(self.words) > 1 and _separates(self.words[-1]):
            dropped = self.words.pop()
            self.width -= self.words[-1].space + dropped.width
        pieces: list[Piece] = []
        for at, word in enumerate(self.words):
            pieces += word.pieces
            if word.space and at + 1 < len(self.words):
                pieces.append(_space_after(word.pieces[-1].style))
        spaced = bool(self.words) and self.words[-1].space > 0
        if turns("".join([piece.text for piece in pieces])):
            pieces = _in_order(pieces)
        merged = tuple(_merged(pieces))
        size = max([piece.style.size for piece in merged], default=0.0)
        return SetLine(merged, self.width, size, spaced)


@functools.lru_cache(maxsize=256)
def _space_after(style: Style) -> Piece:
    return Piece(style.weight.value, style, " ", space_width(style))


def _merged(pieces: Sequence[Piece]) -> Iterator[Piece]:
    """Neighbours in one face and style as one piece, so that text comes out of the page as it went in."""
    same: list[Piece] = []
    for piece in pieces:
        if same and (piece.face != same[0].face or piece.style != same[0].style):
            yield _as_one(same)
            same = []
        same.append(piece)
    if same:
        yield _as_one(same)


def _as_one(same: Sequence[Piece]) -> Piece:
    if len(same) == 1:
        return same[0]
    text, lacks = "".join([piece.text for piece in same]), "".join([piece.lacks for piece in same])
    return Piece(same[0].face, same[0].style, text, sum([piece.width for piece in same]), lacks)


def _in_order(pieces: list[Piece]) -> list[Piece]:
    signs = [sign for piece in pieces for sign in _signs(piece)]
    return in_setting_order(signs, lambda sign: sign.text[:1], _mirrored)


def _mirrored(sign: Piece, text: str) -> Piece:
    return sign if sign.lacks else replace(sign, text=text)


def _signs(piece: Piece) -> list[Piece]:
    """A piece sign by sign; what stands for a sign that no face has stays whole."""
    if piece.lacks:
        return [piece]
    per_point = piece.style.size
    return [replace(piece, text=sign, width=width_of_one(piece.face, sign) * per_point) for sign in piece.text]


def _cut(word: Word, width: float) -> Iterator[Word]:
    """A word in parts that each fill a line, cut between signs, never before a mark that sits on one."""
    part: list[Piece] = []
    used = 0.0
    for piece in word.pieces:
        for cluster in _clusters(piece, width):
            if part and used + cluster.width > width:
                yield word_of(tuple(_merged(part)))
                part, used = [], 0.0
            part.append(cluster)
            used += cluster.width
    yield word_of(tuple(_merged(part)), word.space, ends=word.ends)


def _clusters(piece: Piece, width: float) -> Iterator[Piece]:
    """The signs of a piece, each with the marks that sit on it; a sign's number stays whole where it fits."""
    parts = _NUMBER_OF_SIGN.findall(piece.text) if piece.lacks else _with_marks(piece.text)
    lacks = piece.lacks
    for part in parts:
        wide = width_of_one(piece.face, part) * piece.style.size
        for text in part if wide > width and piece.lacks else (part,):
            yield replace(piece, text=text, width=width_of_one(piece.face, text) * piece.style.size, lacks=lacks)
            lacks = ""


_NUMBER_OF_SIGN = re.compile(r"\[[^]]*\]|.")


def _with_marks(text: str) -> Iterator[str]:
    start = 0
    for end in range(1, len(text) + 1):
        if end == len(text) or not unicodedata.combining(text[end]):
            yield text[start:end]
            start = end
