"""The foot of a card: the cautions for the steps that stand on it, and the allergens in words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.kitchen.wording import _
from binder.paper.arrangement import Space, Stack
from binder.paper.block import text
from binder.paper.card_frame import PAD
from binder.paper.card_safety import allergens_block, caution_block, deference_block

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
        self._feet: dict[tuple[str, ...], Block] = {}
        self._cautions: dict[str, Block] = {}
        self._allergens, self.flows_on = self._named_and_rest()

    def height(self, cautions: Mapping[str, Caution]) -> float:
        """Points of the foot of a card with these cautions, white included."""
        return self.block(cautions).height(self._space.inner) + 2 * PAD

    def too_large(self, cautions: Mapping[str, Caution]) -> bool:
        """Whether the cautions would leave too little of the card."""
        return self.height(cautions) > _LARGEST * self._space.tall

    def block(self, cautions: Mapping[str, Caution]) -> Block:
        """The foot of a card with these cautions."""
        key = tuple(cautions)
        if key not in self._feet:
            blocks = [self.caution(caution) for caution in cautions.values()]
            blocks += [deference_block(self._style), Space(PAD)] if cautions else []
            self._feet[key] = Stack((*blocks, self._allergens))
        return self._feet[key]

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
