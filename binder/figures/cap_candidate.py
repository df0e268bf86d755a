"""A change that may bring a dish under its cap."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable

    from binder.figures.missing import Place
    from binder.kitchen.change import Change


class CapRepairKind(StrEnum):
    """What a repair changes, in the order of how little that changes the cooking."""

    PACK = "another pack"
    QUOTE = "the cheapest price on record"
    LESS = "less of it"
    PORTIONS = "more portions"
    SWAP = "another food"


@dataclass(frozen=True)
class Candidate:
    """A change that may do; the smaller its `size`, the less it changes. `says` puts it in words without its cost."""

    kind: CapRepairKind
    says: Callable[[], str]
    change: Change
    size: float
    place: Place
