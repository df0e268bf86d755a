"""What is wrong with a page, from the boxes that were really drawn on it: judged before anything is printed.

Nothing overlaps, nothing leaves its box or the paper, every sign has a picture, and where a figure is not known the
page says so and shows no number.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.kitchen.wording import _
from binder.paper.pen import Ink, InkKind

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from binder.paper.page import Page, Part, Placed
    from binder.paper.paper_size import PaperSize


class FaultKind(StrEnum):
    """What may be wrong with a page."""

    OVERLAP = "overlap"
    LEAVES_BOX = "leaves its box"
    LEAVES_PAPER = "leaves the paper"
    NO_PICTURE = "no picture"
    NO_NUMBER = "no number"
    NOT_SAID = "not said"


@dataclass(frozen=True)
class Fault:
    """One fault: on which page of the document, of what kind, in a sentence."""

    page: int
    kind: FaultKind
    says: str


_SLACK = 1.0
"""Points that ink may stand out of its box: an accent above the first line, a rounding."""

_TOUCHING = 0.35
"""Points that two boxes may share: neighbouring lines of tall accents touch, and are read all the same."""

_NEAREST = 3.0 * 72 / 25.4
"""Points from the edge of the paper that printers reach. Common practice, no source."""


def page_faults(
    paper: PaperSize, page: Page, number: int, inks: Sequence[Ink], drawn: Sequence[tuple[int, int]]
) -> list[Fault]:
    """The faults of one page; `drawn` gives for each block placed on it the first and the last of its inks."""
    found = [Fault(number, *fault) for fault in _beyond_paper(paper, page, inks)]
    for placed, (begin, end) in zip(page.placed, drawn, strict=True):
        found += [Fault(number, *fault) for fault in _beyond_box(placed, inks[begin:end])]
    found += [Fault(number, *fault) for fault in _overlaps(inks)]
    found += [Fault(number, *fault) for fault in _without_picture(inks)]
    found += [Fault(number, *fault) for fault in _without_number(inks)]
    return found


def unknown_faults(part: Part, words: str, first_page: int) -> list[Fault]:
    """What a part must say is not known, and does not."""
    said = _plain(words)
    says = _("{sheet} does not say: {phrase}.")
    return [
        Fault(first_page, FaultKind.NOT_SAID, says.format(sheet=part.title, phrase=phrase.rstrip(".")))
        for phrase in part.unknown
        if not _is_said(phrase, said)
    ]


def _is_said(phrase: str, said: str) -> bool:
    """Whether a phrase stands on the pages; where a page may have ended within it, whether all its words do."""
    if _plain(phrase) in said:
        return True
    return len(phrase) > _MOST_ON_ONE_PAGE and all(_plain(word) in said for word in phrase.split())


_MOST_ON_ONE_PAGE = 150
"""Letters of a phrase that is not parted between pages."""

_NUMBER_OF_SIGN = re.compile(r"\[U\+[0-9A-F]+(?:\s×\d+)?\]")


def _plain(words: str) -> str:
    """The letters and figures of words that stand in one order, wherever lines end: none that is set right to left."""
    return re.sub(r"[^0-9A-Za-z]+", "", _NUMBER_OF_SIGN.sub("", words))


Found = tuple[FaultKind, str]


def _beyond_paper(paper: PaperSize, page: Page, inks: Sequence[Ink]) -> Iterator[Found]:
    width, height = paper.points
    white = (min(_NEAREST, paper.margin) if page.foot else _NEAREST) - _SLACK
    for ink in inks:
        if min(ink.left, ink.bottom) < white or ink.right > width - white or ink.top > height - white:
            yield FaultKind.LEAVES_PAPER, _("{what} leaves the paper.").format(what=_named(ink))


def _beyond_box(placed: Placed, inks: Sequence[Ink]) -> Iterator[Found]:
    right, bottom = placed.x + placed.width, placed.top - placed.block.height(placed.width)
    for ink in inks:
        across = ink.left < placed.x - _SLACK or ink.right > right + _SLACK
        if across or ink.bottom < bottom - _SLACK or ink.top > placed.top + _SLACK:
            yield FaultKind.LEAVES_BOX, _("{what} leaves its box.").format(what=_named(ink))


def _overlaps(inks: Sequence[Ink]) -> Iterator[Found]:
    """Text over text, over a solid shape, or under a rule; white text only where it stands on something solid.

    From the foot of the page upward, each against those that reach up to where it begins.
    """
    open_below: list[Ink] = []
    for ink in sorted(inks, key=lambda one: one.bottom):
        if ink.kind is InkKind.WHITE_TEXT:
            continue
        open_below = [one for one in open_below if one.top >= ink.bottom]
        for other in open_below:
            if ink.left <= other.right and other.left <= ink.right and _share(ink, other):
                yield FaultKind.OVERLAP, _overlap_text(ink, other)
        open_below.append(ink)
    solid = [ink for ink in inks if ink.kind is InkKind.SOLID]
    for ink in inks:
        if ink.kind is InkKind.WHITE_TEXT and not any(_covers(other, ink) for other in solid):
            yield FaultKind.NO_PICTURE, _("{what} is white on white.").format(what=_named(ink))


def _overlap_text(ink: Ink, other: Ink) -> str:
    if ink.kind is other.kind:
        return _("{what} and {other} overlap.").format(what=_named(ink), other=_named(other))
    return _("{what} is drawn over.").format(what=_named(ink if ink.kind is InkKind.TEXT else other))


def _share(ink: Ink, other: Ink) -> bool:
    """Whether two boxes of ink disturb each other: shapes may lie on shapes, and rules along the edge of text."""
    if ink.kind is not InkKind.TEXT:
        ink, other = other, ink
    if ink.kind is not InkKind.TEXT:
        return False
    if other.kind is InkKind.RULE:
        return _crosses(ink, other)
    wide = min(ink.right, other.right) - max(ink.left, other.left)
    tall = min(ink.top, other.top) - max(ink.bottom, other.bottom)
    return wide > _TOUCHING and tall > _TOUCHING


def _crosses(one: Ink, rule: Ink) -> bool:
    """Whether a rule runs through a line of text, and not along its edge."""
    across, up = one.left < rule.right and rule.left < one.right, one.bottom < rule.top and rule.bottom < one.top
    if rule.top - rule.bottom < rule.right - rule.left:
        return across and one.bottom + _TOUCHING < rule.bottom < one.top - _TOUCHING
    return up and one.left + _TOUCHING < rule.left < one.right - _TOUCHING


def _covers(solid: Ink, ink: Ink) -> bool:
    across = solid.left <= ink.left + _SLACK and solid.right >= ink.right - _SLACK
    return across and solid.bottom <= ink.bottom + _SLACK and solid.top >= ink.top - _SLACK


def _without_picture(inks: Sequence[Ink]) -> Iterator[Found]:
    lacking = dict.fromkeys("".join(ink.lacks for ink in inks))
    for sign in lacking:
        says = _("no installed face has U+{number:04X}: it is shown by its number.")
        yield FaultKind.NO_PICTURE, says.format(number=ord(sign))


_NO_NUMBER = re.compile(
    r"[$€£¥]\s?[-−]?(?:nan|inf|None)\b|(?<!\w)[-−]?(?:nan|inf|None)\s?(?:[$€£¥%]|(?:g|kg|ml|l|min|h)\b)", re.IGNORECASE
)
"""With its currency or its unit: alone it may be the name of a food."""


def _without_number(inks: Sequence[Ink]) -> Iterator[Found]:
    """A figure that is none: what a program writes where a number is missing."""
    for ink in inks:
        if ink.text and _NO_NUMBER.search(ink.text):
            yield FaultKind.NO_NUMBER, _("{what} holds no number.").format(what=_named(ink))


def _named(ink: Ink) -> str:
    if ink.text:
        shown = ink.text if len(ink.text) <= _MOST_SHOWN else ink.text[: _MOST_SHOWN - 1] + "…"
        return f"“{shown}”"
    return {InkKind.RULE: _("a line")}.get(ink.kind, _("a shape"))


_MOST_SHOWN = 40
