"""Pages laid out and not yet drawn, and their booklet: how many there are is known before the first is drawn."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from binder.paper.block import Text, text
from binder.paper.run import LEADING, Style

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.paper.block import Block
    from binder.paper.leaf import Leaf
    from binder.paper.paper_size import PaperSize

FOOT_STYLE = Style(size=8.0)
"""The foot is looked up, not read while cooking: it may be small (ISO 9241-3, as quoted by IBM Healthy Computing)."""

FOOT_LINES = 2
"""The foot has room for so many lines; longer names are shortened in it."""


@dataclass
class Placed:
    """A block with the top left corner and the width it is drawn at, in points from the page's lower left corner."""

    block: Block
    x: float
    top: float
    width: float


@dataclass
class Page:
    """One page. `outline` is its entry in the document's outline, empty where it goes on with the entry before.

    `note` stands beside the page number; a page without a `foot` is a sheet of labels.
    """

    placed: list[Placed] = field(default_factory=list)
    outline: str = ""
    note: str = ""
    foot: bool = True

    def put(self, block: Block, x: float, top: float, width: float) -> float:
        """Place a block; returns the y of its lower edge."""
        self.placed.append(Placed(block, x, top, width))
        return top - block.height(width)


@dataclass
class Part:
    """Pages of one sheet: its `title`, the `paper` they are laid out for, what stands at the `foot` of each.

    `leaves` are the sheets of paper they are printed on, each page on one of its own where there are none given.
    `unknown` are phrases that must stand on these pages, because the figures they speak of are not known.
    """

    title: str
    paper: PaperSize
    foot: str
    pages: list[Page]
    leaves: Sequence[Leaf] = ()
    unknown: Sequence[str] = ()


@dataclass
class Booklet:
    """A document: its `title`, `language` as BCP 47 has it, and its parts."""

    title: str
    language: str
    parts: Sequence[Part]

    @property
    def count(self) -> int:
        """Pages in all."""
        return sum(len(part.pages) for part in self.parts)


def foot_text(words: str) -> Text:
    """What stands at the foot of a page, before it is broken."""
    return text(words, FOOT_STYLE)


def foot_height() -> float:
    """Points that the foot takes above the margin, with its rule and white."""
    return FOOT_LINES * FOOT_STYLE.size * LEADING + FOOT_GAP


PAGE_NUMBER_WIDTH = 110.0
"""Points at the right of the foot for the page number, and whether a card goes on."""

FOOT_GAP = 5.0
"""Points of white above the foot's text."""
