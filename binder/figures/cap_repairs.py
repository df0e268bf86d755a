"""How a dish stands to its cap, and where it is over the smallest single changes that bring it under.

Each change is tried: it is applied to the binder, and the dish is costed again.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import islice
from typing import TYPE_CHECKING

from binder.figures.cap_candidate import Candidate, CapRepairKind
from binder.figures.cap_candidates import candidates
from binder.figures.cost import BreakEven, DishCost, Verdict, break_even_prices, dish_cost
from binder.figures.memory import COSTS, remembered_from
from binder.figures.money_words import money_beside
from binder.kitchen.change import apply
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator

    from binder.figures.missing import Place
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change

_MOST_OF_A_KIND = 4
"""No one weighs more changes of one kind against each other."""


@dataclass(frozen=True)
class CapRepair:
    """One change that alone brings a dish under its cap. `cost` and `saves` are minor units a portion.

    `size` tells repairs of one kind apart, the smaller the less it changes; `place` is where it changes something.
    """

    kind: CapRepairKind
    says: str
    change: Change
    cost: float
    saves: float
    size: float
    place: Place


@dataclass(frozen=True)
class CapStanding:
    """How a dish stands to its cap: repairs where it is over, what each food may come to cost where it is within."""

    cost: DishCost
    repairs: tuple[CapRepair, ...]
    break_even: tuple[BreakEven, ...]

    @property
    def headroom(self) -> float | None:
        """Cap less cost, minor units a portion; below zero where it is over, None where either is not known."""
        return self.cost.headroom

    @property
    def part_of_cap(self) -> float | None:
        """Cost over cap: 0.25 for 4.00 beside 16.00; None where either is not known, or the cap is nothing."""
        return self.cost.per_portion / self.cost.cap if self.cost.per_portion is not None and self.cost.cap else None


def cap_standing(binder: Binder, dish_id: str) -> CapStanding:
    """How a dish stands to its cap, with what to do about it."""
    cost = dish_cost(binder, dish_id)
    within = break_even_prices(binder, dish_id) if cost.verdict is Verdict.WITHIN else ()
    return CapStanding(cost, cap_repairs(binder, dish_id), within)


@remembered_from(COSTS | {"stores"})
def cap_repairs(binder: Binder, dish_id: str) -> tuple[CapRepair, ...]:
    """The changes that each alone bring a dish under its cap, those that change the cooking least first.

    Another pack before less of a food, that before more portions, and these before another food; of each kind the
    smallest, a handful at most. None where the dish is not over its cap.
    """
    if dish_cost(binder, dish_id).verdict is not Verdict.OVER:
        return ()
    by_kind: dict[CapRepairKind, list[Candidate]] = {}
    for candidate in candidates(binder, dish_id):
        by_kind.setdefault(candidate.kind, []).append(candidate)
    found = (islice(_tried(binder, dish_id, by_kind.get(kind, [])), _MOST_OF_A_KIND) for kind in CapRepairKind)
    return tuple(repair for kind in found for repair in kind)


def _tried(binder: Binder, dish_id: str, proposed: list[Candidate]) -> Iterator[CapRepair]:
    """The candidates that do, the smallest first."""
    before = dish_cost(binder, dish_id)
    for one in sorted(proposed, key=lambda candidate: (candidate.size, candidate.place.id)):
        after = dish_cost(apply(binder, one.change), dish_id)
        if after.verdict is Verdict.WITHIN and after.per_portion is not None and after.cap is not None:
            says = _("{change}: {cost} a portion.").format(
                change=one.says(), cost=money_beside(binder, after.per_portion, after.cap)
            )
            saves = (before.per_portion or 0.0) - after.per_portion
            yield CapRepair(one.kind, says, one.change, after.per_portion, saves, one.size, one.place)
