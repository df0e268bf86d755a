"""From runs to words. Nothing a user types is read as markup, because there is none: every text is set as it stands.

A sign that the face lacks is set in another installed face that has it, or else shown by its number in Unicode.
"""

from __future__ import annotations

import functools
import re
from dataclasses import replace
from itertools import groupby
from typing import TYPE_CHECKING

from binder.paper.run import Piece, Run, Style, Word
from binder.paper.script import UNBROKEN_SPACE, clean
from binder.paper.spare_face import spare_face
from binder.paper.typeface import Weight, face_of, has, width_of_one

if TYPE_CHECKING:
    from collections.abc import Iterable


@functools.lru_cache(maxsize=32768)
def in_faces(text: str, weight: Weight) -> tuple[tuple[str, str, str], ...]:
    """A text in stretches of one face: face name, what is drawn, and which signs of it no face has."""
    stretches = []
    for (face, lacking), signs in groupby(text, lambda sign: _face_for(sign, weight)):
        stretch = "".join(signs)
        stretches.append((face, _by_number(stretch), stretch) if lacking else (face, stretch, ""))
    return tuple(stretches)


def _face_for(sign: str, weight: Weight) -> tuple[str, bool]:
    if has(face_of(weight), ord(sign)) or sign == UNBROKEN_SPACE:
        return weight.value, False
    spare = spare_face(ord(sign))
    return (spare, False) if spare else (weight.value, True)


def _by_number(signs: str) -> str:
    """`[U+1F35C]`, `[U+1F35C ×3]`: a sign that no face has, by its number in Unicode; repeats are counted."""
    parts = []
    for sign, repeats in groupby(signs):
        count = len(list(repeats))
        parts.append(f"[U+{ord(sign):04X}]" if count == 1 else f"[U+{ord(sign):04X}{UNBROKEN_SPACE}×{count}]")
    return "".join(parts)


def width_of_runs(runs: Iterable[Run]) -> float:
    """Points that some runs take on one line."""
    return sum(
        width_of_one(face, drawn) * run.style.size
        for run in runs
        for face, drawn, _lacks in in_faces(clean(run.text), run.style.weight)
    )


_TOKENS = re.compile(r"\n| +|[^ \n]+")
_BREAKS_WITHIN = re.compile(r"(?<=[^\W\d_]{4}[-–—])(?=[^\W\d_]{4})|(?<=[^\W\d_]/)(?=\w)")
"""After a hyphen or a dash between parts of four letters and more, and after a slash, a line may end."""


def words_of(runs: Iterable[Run]) -> tuple[Word, ...]:
    """The words of some runs; runs without a space between them make one word."""
    return _words_of(tuple(runs))


@functools.lru_cache(maxsize=16384)
def _words_of(runs: tuple[Run, ...]) -> tuple[Word, ...]:
    """The same, kept: one food stands on many sheets."""
    words: list[Word] = []
    open_word = False
    for run in runs:
        for token in _TOKENS.findall(clean(run.text)):
            if token.startswith("\n"):
                _end_line(words)
                open_word = False
            elif token[0] == " ":
                if words and not words[-1].ends:
                    last = words[-1]
                    words[-1] = Word(last.pieces, last.width, space_width(last.pieces[-1].style), last.ends)
                open_word = False
            else:
                found = _words_of_token(token, run.style)
                if open_word:
                    words[-1] = _grown(words[-1], found[0])
                words += found[1:] if open_word else found
                open_word = True
    return tuple(words)


@functools.lru_cache(maxsize=32768)
def _words_of_token(token: str, style: Style) -> tuple[Word, ...]:
    return tuple(word_of(_pieces(part, style)) for part in _parts(token))


def word_of(pieces: tuple[Piece, ...], space: float = 0.0, *, ends: bool = False) -> Word:
    """A word of these pieces."""
    return Word(pieces, sum(piece.width for piece in pieces), space, ends)


def _grown(word: Word, more: Word) -> Word:
    return Word(word.pieces + more.pieces, word.width + more.width, more.space, more.ends)


@functools.lru_cache(maxsize=256)
def space_width(style: Style) -> float:
    """Points of a blank."""
    return width_of_one(style.weight.value, " ") * style.size


def _end_line(words: list[Word]) -> None:
    if words and not words[-1].ends:
        words[-1] = replace(words[-1], ends=True)


def _parts(token: str) -> list[str]:
    """A token cut where a line may end within it: after hyphens and slashes, and around ideographs."""
    if token.isascii() and "-" not in token and "/" not in token:
        return [token]
    parts = []
    for part in _BREAKS_WITHIN.split(token):
        parts += re.findall(r"[^\u2e80-\ua4cf\uac00-\ud7af\uf900-\ufaff\U00020000-\U0003ffff]+|.", part)
    return parts


def _pieces(text: str, style: Style) -> tuple[Piece, ...]:
    return tuple(
        Piece(face, style, drawn, width_of_one(face, drawn) * style.size, lacks)
        for face, drawn, lacks in in_faces(text, style.weight)
    )
