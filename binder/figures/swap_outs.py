"""Which builds a dish wants by its own steps: swap-outs past long waits, a beauty build, the spares of the shoot."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.demand import builds_of
from binder.figures.memory import PLANS, remembered_from
from binder.kitchen.shoot import BuildKind
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Iterator

    from binder.kitchen.binder import Binder
    from binder.kitchen.recipe import Step
    from binder.kitchen.shoot import Dish


@dataclass(frozen=True)
class Proposal:
    """A build a dish wants and has not: what kind, up to and with which step (None: to the end), and why."""

    dish: str
    kind: BuildKind
    up_to: str | None
    why: str


@remembered_from(PLANS)
def proposed_builds(binder: Binder, dish_id: str) -> tuple[Proposal, ...]:
    """The builds to propose for a dish; those it has already, whoever made them, are not proposed again."""
    dish = binder.dishes[dish_id]
    has = [(build.kind, build.up_to) for build in builds_of(binder, dish_id)]
    wanted = [*_swap_outs(binder, dish), *_beauty(binder, dish), *_spares(binder, dish)]
    proposals = []
    for proposal in wanted:
        key = (proposal.kind, proposal.up_to)
        if key in has:
            has.remove(key)
        else:
            proposals.append(proposal)
    return tuple(proposals)


def _swap_outs(binder: Binder, dish: Dish) -> Iterator[Proposal]:
    """One for each long wait after filming has begun and before it ends: a build that has passed that wait."""
    limit = binder.shoots[dish.shoot].wait_limit
    steps = binder.steps.where("recipe", dish.recipe)
    filmed = [at for at, step in enumerate(steps) if step.on_camera] or [0]
    for at in range(filmed[0], filmed[-1]):
        step = steps[at]
        if step.waiting_minutes > limit:
            yield Proposal(dish.id, BuildKind.SWAP_OUT, step.id, _wait_text(at, step, limit))


def _wait_text(at: int, step: Step, limit: float) -> str:
    says = _("Step {number} waits {minutes:g} min, longer than the {limit:g} min the camera stays.")
    return says.format(number=at + 1, minutes=step.waiting_minutes, limit=limit)


def _beauty(binder: Binder, dish: Dish) -> Iterator[Proposal]:
    if binder.steps.where("recipe", dish.recipe):
        yield Proposal(dish.id, BuildKind.BEAUTY, None, _("A finished one for the closing shot."))


def _spares(binder: Binder, dish: Dish) -> Iterator[Proposal]:
    count = binder.shoots[dish.shoot].spares
    for _number in range(count):
        says = ngettext(
            "The shoot asks for {count} spare of each dish.", "The shoot asks for {count} spares of each dish.", count
        )
        yield Proposal(dish.id, BuildKind.SPARE, None, says.format(count=count))
