"""The band at the top of a card: the running number very large, the name, how much is made, which card of how many."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from binder.kitchen.wording import _
from binder.paper.arrangement import Beside, Stack, Tagged
from binder.paper.block import text
from binder.paper.card_frame import PAD
from binder.paper.card_number import Numeral
from binder.paper.print_choices import Look
from binder.paper.structure import HEADING

if TYPE_CHECKING:
    from binder.paper.block import Block, Text
    from binder.paper.card_frame import CardSpace
    from binder.paper.card_type import CardType

_GAP = 10.0
"""Points of white between number and name."""

_NAME_LINES = 2
_LARGEST_NAME = 0.3
_LARGEST_NUMBER = 0.3
_TALLEST_NUMBER = 0.22
"""Parts of the card's height that the name, and of its width that the number may take; the rest of a name flows on."""


class CardBand:
    """The bands of one dish's cards. `rest_of_name` is what of a very long name flows on below the first."""

    def __init__(self, name: str, label: str, makes: Text, space: CardSpace, style: CardType) -> None:
        self._called, self._label, self._space, self._style = name, label, space, style
        self._makes = makes
        self._numeral = self._sized_numeral()
        self._counted_width = text(_count_words(88, 88), style.near.strong).natural_width() + 0.1
        self._number_width = max(self._numeral.width(), self._counted_width)
        self._name_width = space.inner - (self._number_width if label else self._counted_width) - _GAP
        self._name, self.rest_of_name = self._name_and_rest()
        self._heights = {first: self.block(first=first, at=1, count=2).height(space.inner) for first in (True, False)}

    def height(self, *, first: bool) -> float:
        """Points of the band of the first card, or of one that goes on, white included."""
        return self._heights[first] + 2 * PAD

    def block(self, *, first: bool, at: int, count: int) -> Beside:
        """The band of card `at` of so many."""
        says = [text(_count_words(at, count), self._style.near.strong, to_right=not self._label)] if count > 1 else []
        numeral = self._numeral if first or self._space.two_columns else self._small_numeral()
        name = Stack((Tagged(self._name, HEADING), self._makes)) if first else self._going_on()
        if not self._label:
            return Beside(((name, None), (says[0] if says else None, self._counted_width)), gap=_GAP)
        return Beside(((Stack((numeral, *says)), self._number_width), (name, None)), gap=_GAP, level=False)

    def _going_on(self) -> Stack:
        style = self._style.near
        shortened = text(self._called, style.lead).shortened(self._name_width, _NAME_LINES)
        return Stack((shortened, text(_("continued"), style.plain)))

    def _sized_numeral(self) -> Numeral:
        """The running number, smaller where the name would have no room beside it or the card none below it."""
        style, most = self._style.number, self._space.inner * _LARGEST_NUMBER
        wide = Numeral(self._label, style).width() or most
        tallest = self._space.tall * _TALLEST_NUMBER
        solid = self._style.look is Look.ON_CAMERA
        return Numeral(self._label, replace(style, size=min(style.size * min(1.0, most / wide), tallest)), solid)

    def _small_numeral(self) -> Numeral:
        """On narrow cards that go on, the number is as large as a name."""
        style = self._numeral.style
        return Numeral(self._label, replace(style, size=min(style.size, self._style.name.size)), self._numeral.solid)

    def _name_and_rest(self) -> tuple[Block, Block | None]:
        """The dish's name in the largest type that needs two lines at most, and what of a very long one flows on."""
        middle = replace(self._style.name, size=self._style.name.size * 0.8)
        most = self._space.tall * _LARGEST_NAME
        for style in (self._style.name, middle, self._style.lead, self._style.near.lead):
            name = text(self._called, style)
            tall = name.height(self._name_width)
            if len(name.lines(self._name_width).lines) <= _NAME_LINES and tall <= most / 2:
                return name, None
        if name.height(self._name_width) <= most:
            return name, None
        first, rest = name.parted(self._name_width, most)
        return first or name, rest


def _count_words(at: int, count: int) -> str:
    return _("{card} of {cards}").format(card=at, cards=count)
