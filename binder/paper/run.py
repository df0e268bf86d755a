"""What a line of text is made of: runs in one style, pieces in one face, words, and lines as they are drawn."""

from __future__ import annotations

from dataclasses import dataclass

from binder.paper.script import UNBROKEN_SPACE
from binder.paper.typeface import Weight

LEADING = 1.22
"""Line height as a multiple of the type size: clears the tallest accents of the face."""

RISE = 0.94
"""Baseline below the top of its line, as a multiple of the type size."""


@dataclass(frozen=True)
class Style:
    """How a run of text is set: weight, and `size` in points, in black, which copies best, or `white` on black.

    In a `language` (as `de_DE`) long words may be parted with a hyphen where that language parts them.
    """

    weight: Weight = Weight.REGULAR
    size: float = 10.0
    language: str = ""
    white: bool = False


@dataclass(frozen=True)
class Run:
    """A piece of text in one style."""

    text: str
    style: Style


@dataclass(frozen=True)
class Piece:
    """A piece of a word in one face, its width in points. `lacks` are signs that no face has, shown by their number."""

    face: str
    style: Style
    text: str
    width: float
    lacks: str = ""


@dataclass(frozen=True)
class Word:
    """Pieces that stay together on a line where they fit, `width` points in all.

    `space` in points follows it, `ends` says that a line end does.
    """

    pieces: tuple[Piece, ...]
    width: float
    space: float = 0.0
    ends: bool = False


@dataclass(frozen=True)
class SetLine:
    """One line as it is drawn, from left to right; `width` and `size` (of its largest type) in points.

    `spaced`: a blank follows its last word, which readers need where the text goes on.
    """

    pieces: tuple[Piece, ...]
    width: float
    size: float
    spaced: bool = False

    @property
    def height(self) -> float:
        """Points from the top of this line to the top of the next."""
        return self.size * LEADING


def unbroken(text: str) -> str:
    """A text that stays on one line where it fits: an amount with its unit, a temperature, a price."""
    return text.replace(" ", UNBROKEN_SPACE)
