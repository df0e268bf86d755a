"""Where a shoot may go to too few stores to get everything: which come nearest, and what they do not sell."""

from __future__ import annotations

import itertools
from typing import TYPE_CHECKING

from binder.kitchen.wording import _, listed, ngettext

if TYPE_CHECKING:
    from collections.abc import Collection, Mapping

    from binder.kitchen.binder import Binder

_MOST_SETS = 5000
"""Sets of stores looked at; of more, those that sell most come first."""

_NAMED = 3
"""Foods named; of the others only how many they are."""


def too_few_stores_text(binder: Binder, most: int, sold: Mapping[str, Collection[str]]) -> str:
    """What is said where no `most` stores sell everything; `sold` are the stores of each food that must be bought."""
    stores = _nearest(most, sold)
    lacking = sorted((binder.foods[food].name for food in _lacking(stores, sold)), key=str.casefold)
    says = ngettext(
        "No store alone sells everything on the list. {stores} comes nearest, without {foods}: allow more stores.",
        "No {count} stores together sell everything on the list. {stores} come nearest, without {foods}: "
        "allow more stores.",
        most,
    )
    names = listed(sorted(binder.stores[store].name for store in stores))
    return says.format(count=most, stores=names, foods=_named(lacking))


def _nearest(most: int, sold: Mapping[str, Collection[str]]) -> tuple[str, ...]:
    """The stores that sell the most of it."""
    every = sorted({store for stores in sold.values() for store in stores})
    every.sort(key=lambda store: -sum(store in stores for stores in sold.values()))
    sets = itertools.islice(itertools.combinations(every, min(most, len(every))), _MOST_SETS)
    return min(sets, key=lambda stores: len(_lacking(stores, sold)))


def _lacking(stores: Collection[str], sold: Mapping[str, Collection[str]]) -> list[str]:
    return [food for food, others in sold.items() if not set(stores) & set(others)]


def _named(names: list[str]) -> str:
    more = len(names) - _NAMED
    if more <= 1:
        return listed(names)
    return listed([*names[:_NAMED], _("{count} more").format(count=more)])
