"""Which builds a dish wants by its own steps.

A swap-out past each long wait, a beauty build, and the spares the shoot asks for.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.demand import builds_of
from binder.figures.memory import remembered
from binder.kitchen.shoot import BuildKind
from binder.kitchen.wording import _

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


@remembered
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
    """One for each step the camera begins and then would have to wait for: a build that has passed that wait."""
    limit = binder.shoots[dish.shoot].wait_limit
    steps = binder.steps.where("recipe", dish.recipe)
    for at, step in enumerate(steps):
        filmed_again = any(later.on_camera for later in steps[at + 1 :])
        if step.on_camera and step.waiting_minutes > limit and filmed_again:
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
        yield Proposal(
            dish.id, BuildKind.SPARE, None, _("The shoot asks for {count} spare of each dish.").format(count=count)
        )
