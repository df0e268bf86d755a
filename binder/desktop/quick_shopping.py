"""Whether a shoot's shopping list is there within a frame, or is to be worked out beside the window."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.buying_terms import buying_terms

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder

_MOST_PACKS = 400
"""Packs among which each food's are chosen within a frame, measured on two cores."""


def shopping_is_quick(binder: Binder, shoot: str) -> bool:
    """Whether nothing ties one food's packs to another's, and there are not very many to choose from.

    A limit on stores and a cost of going to one are tried over all foods at once, which takes seconds.
    """
    terms = buying_terms(binder, shoot)
    tied = terms.most_stores is not None or any((*terms.trip_costs.values(), *terms.avoided.values()))
    return not tied and len(binder.packs) <= _MOST_PACKS
