"""The foot of a card: the cautions for the steps that stand on it, and the allergens in words.

A caution stands in full, with its source, on the first card of a dish that has its hazard; the next cards name it and
say on which card that is. The mark with its name stands at every step.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.kitchen.wording import _
from binder.paper.arrangement import Space, Stack
from binder.paper.block import text
from binder.paper.card_frame import PAD
from binder.paper.card_safety import allergens_block, caution_block, deference_block, said_before_block

if TYPE_CHECKING:
    from collections.abc import Mapping

    from binder.figures.card import StationCard
    from binder.kitchen.reference import Caution
    from binder.kitchen.settings import AllergenScheme
    from binder.paper.block import Block, Text
    from binder.paper.card_frame import CardSpace
    from binder.paper.card_type import CardType

_ALLERGEN_LINES = 3
_LARGEST_ALLERGENS = 0.15
_LARGEST = 0.45
"""Lines, and parts of the card's height, that allergens and the whole foot may take; more than that flows on."""


class CardFoot:
    """The feet of one dish's cards. `flows_on`: allergens with the foods that carry them, where it is too small."""

    def __init__(self, card: StationCard, scheme: AllergenScheme, space: CardSpace, style: CardType) -> None:
        self._card, self._scheme, self._space, self._style = card, scheme, space, style
        self._feet: dict[tuple[tuple[str, int], ...], Block] = {}
        self._cautions: dict[str, Block] = {}
        self._allergens, self.flows_on = self._named_and_rest()

    def height(self, cautions: Mapping[str, Caution], said: Mapping[str, int]) -> float:
        """Points of the foot of a card with these cautions, white included."""
        return self.block(cautions, said).height(self._space.inner) + 2 * PAD

    def too_large(self, cautions: Mapping[str, Caution], said: Mapping[str, int]) -> bool:
        """Whether the cautions would leave too little of the card."""
        return self.height(cautions, said) > _LARGEST * self._space.tall

    def block(self, cautions: Mapping[str, Caution], said: Mapping[str, int]) -> Block:
        """The foot of a card with these cautions; `said` has the hazards of earlier cards, with the card's number."""
        key = tuple((hazard, said.get(hazard, 0)) for hazard in cautions)
        if key not in self._feet:
            self._feet[key] = Stack((*self._cautioned(cautions, said), self._allergens))
        return self._feet[key]

    def _cautioned(self, cautions: Mapping[str, Caution], said: Mapping[str, int]) -> list[Block]:
        new = [self.caution(caution) for hazard, caution in cautions.items() if hazard not in said]
        known = [(caution.title, said[hazard]) for hazard, caution in cautions.items() if hazard in said]
        blocks = [*new, *([deference_block(self._style)] if new else [])]
        blocks += [said_before_block(known, self._style)] if known else []
        return [*blocks, Space(PAD)] if blocks else []

    def caution(self, caution: Caution) -> Block:
        """A caution in full."""
        if caution.hazard not in self._cautions:
            self._cautions[caution.hazard] = caution_block(caution, self._style)
        return self._cautions[caution.hazard]

    def _named_and_rest(self) -> tuple[Text, Text | None]:
        in_full = allergens_block(self._card, self._scheme, self._style, carriers=True)
        if len(in_full.lines(self._space.inner).lines) <= _ALLERGEN_LINES:
            return in_full, None
        named = allergens_block(self._card, self._scheme, self._style, carriers=False)
        if named.height(self._space.inner) <= self._space.tall * _LARGEST_ALLERGENS:
            return named, in_full
        return text(_("Contains allergens: a card of this dish names them all."), self._style.strong), in_full
