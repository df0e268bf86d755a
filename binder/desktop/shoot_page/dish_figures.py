"""What the builds of one dish may still become: builds to propose, and how many more takes there could be."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.desktop.base_page.base_figures import is_quick
from binder.desktop.quick_shopping import shopping_is_quick
from binder.desktop.shoot_page.build_refusal import NoMoreError, require_base_for
from binder.figures.base import BaseVerdict, base_balance
from binder.figures.swap_outs import Proposal, proposed_builds
from binder.figures.takes import Takes, stages, takes
from binder.kitchen.change import Change, apply, joined
from binder.kitchen.edits.shoots import add_build, dish_name
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.latest import Latest
    from binder.kitchen.binder import Binder

    LatestDish = Latest["DishFigures"]


@dataclass(frozen=True)
class Offered:
    """A build to propose; `refused` says why it cannot be made, empty where it can.

    `short` is grams of base short with it and those before it, where it can be made and is wanted all the same.
    """

    proposal: Proposal
    refused: str = ""
    short: float = 0.0


@dataclass(frozen=True)
class DishFigures:
    """Builds to propose; more takes of the whole dish, from each step on and up to each step."""

    offered: tuple[Offered, ...]
    whole: Takes
    from_step: tuple[Takes, ...]
    up_to_step: tuple[Takes, ...]


def dish_figures(binder: Binder, dish: str) -> DishFigures:
    """The figures of a dish."""
    steps = binder.steps.where("recipe", binder.dishes[dish].recipe)
    return DishFigures(
        offered=tuple(offered for offered, _change in _tried(binder, dish)),
        whole=takes(binder, dish, None, None),
        from_step=tuple(takes(binder, dish, step.id, None) for step in steps),
        up_to_step=stages(binder, dish),
    )


def dish_is_quick(binder: Binder, dish: str) -> bool:
    """Whether the figures of a dish are there within a frame: what is bought limits its takes as the base does."""
    shoot = binder.dishes[dish].shoot
    return shopping_is_quick(binder, shoot) and is_quick(binder, shoot)


def _tried(binder: Binder, dish: str) -> list[tuple[Offered, Change | None]]:
    """Each proposed build after those before it, with the change that adds it; None where it cannot be made."""
    grown, found = binder, list[tuple[Offered, Change | None]]()
    for proposal in proposed_builds(binder, dish):
        change, build = add_build(grown, grown.dishes[dish], proposal.kind, up_to=proposal.up_to)
        try:
            require_base_for(grown, None, build, change)
        except NoMoreError as refusal:
            found.append((Offered(proposal, refusal.says), None))
            continue
        grown = apply(grown, change)
        found.append((Offered(proposal, short=_short(grown, dish)), change))
    return found


def _short(binder: Binder, dish: str) -> float:
    """Grams of base that a shoot is short of."""
    balance = base_balance(binder, binder.dishes[dish].shoot)
    short = balance is not None and balance.verdict is BaseVerdict.SHORT
    return -(balance.left or 0.0) if balance is not None and short else 0.0


def add_proposed(binder: Binder, dish: str) -> Change | None:
    """The proposed builds that can be made, as one change; None where there are none. A user's own builds stay."""
    changes = [change for _offered, change in _tried(binder, dish) if change is not None]
    name = dish_name(binder, binder.dishes[dish])
    return joined(_("Add the proposed builds of {dish}").format(dish=name), changes) if changes else None
