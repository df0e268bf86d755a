"""Where the base runs short.

What is short of, and the smallest changes that would make it go round, each tried by the balance.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.figures.base import BaseBalance, BaseVerdict, base_balance
from binder.figures.base_network import Network, least_base, network_of
from binder.figures.demand import build_needs, builds_of
from binder.figures.memory import remembered
from binder.figures.missing import Missing
from binder.figures.portion_text import number_style
from binder.figures.price import chosen_pack
from binder.kitchen.amount_text import grams_text
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.money import money_text
from binder.kitchen.shoot import BuildKind
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping

    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Build, Dish

_SLACK = 1e-9


class RepairKind(StrEnum):
    """What a repair changes."""

    BUILD = "one build fewer"
    PORTIONS = "fewer portions"
    BUY = "more of the base"


@dataclass(frozen=True)
class Repair:
    """One change that alone makes the base go round.

    `dish` and `build` say where; `portions` is how many the dish keeps; `grams` how much more base to have; `frees`
    is grams of
    base that the change spares or adds.
    """

    kind: RepairKind
    says: str
    frees: float
    dish: str | None = None
    build: str | None = None
    portions: float | None = None
    grams: float | None = None


@dataclass(frozen=True)
class Bottleneck:
    """The form that runs out: grams short of it, and grams of base that making so much more takes."""

    form: str
    short: float
    base: float
    says: str


_DISPENSABLE = (BuildKind.SPARE, BuildKind.TASTING, BuildKind.BEAUTY, BuildKind.SWAP_OUT)
"""Builds in the order they are given up; the hero stays."""


def _short(binder: Binder, shoot_id: str) -> tuple[BaseBalance, Network, float] | None:
    """The balance, its network and the grams there are, where the base is short; None where it is not."""
    balance = base_balance(binder, shoot_id)
    if balance is None or balance.verdict is not BaseVerdict.SHORT or balance.there_is is None:
        return None
    network = network_of(binder, balance.base)
    return None if isinstance(network, Missing) else (balance, network, balance.there_is)


@remembered
def bottleneck(binder: Binder, shoot_id: str) -> Bottleneck | None:
    """What runs out where the base is short.

    The form whose demand drives it, and how much of that form cannot be made.
    """
    found = _short(binder, shoot_id)
    if found is None:
        return None
    balance, network, there_is = found
    wanted = {form.form: form.used for form in balance.forms}
    form = balance.driver or balance.base
    reached = _largest(
        lambda grams: least_base(network, {**wanted, form: grams}).base <= there_is * (1 + _SLACK), wanted[form]
    )
    short, base = wanted[form] - reached, -(balance.left or 0.0)
    return Bottleneck(form, short, base, _bottleneck_text(binder, balance, form, short, base))


def _bottleneck_text(binder: Binder, balance: BaseBalance, form: str, short: float, base: float) -> str:
    style = number_style(binder)
    if form == balance.base:
        says = _("{base} is what runs out: {base_grams} short.")
    else:
        says = _("{form} is what runs out: {grams} short, which takes {base_grams} more {base}.")
    return says.format(
        form=binder.foods[form].name,
        grams=grams_text(short, style),
        base_grams=grams_text(base, style),
        base=balance.name,
    )


def _largest(fits: Callable[[float], bool], most: float) -> float:
    """The largest value up to `most` that fits, by halving; 0 where none does. What fits for more fits for less."""
    low, high = 0.0, most
    if fits(most):
        return most
    for _halving in range(50):
        middle = (low + high) / 2
        low, high = (middle, high) if fits(middle) else (low, middle)
    return low


@remembered
def base_repairs(binder: Binder, shoot_id: str) -> tuple[Repair, ...]:
    """The changes that each alone make the base go round, the smallest first.

    A build or portions less, or more of the base.
    """
    found = _short(binder, shoot_id)
    if found is None:
        return ()
    balance, network, there_is = found
    wanted = {form.form: form.used for form in balance.forms}
    cuts: list[Repair] = []
    for dish in binder.dishes.where("shoot", shoot_id):
        needs = build_needs(binder, dish.id)
        trial = _Trial(network, wanted, there_is, balance.needed or 0.0)
        cuts += _fewer_builds(binder, dish, needs, trial)
        cuts += _fewer_portions(binder, dish, needs, trial)
    return (*sorted(cuts, key=lambda repair: repair.frees), _buy(binder, balance))


@dataclass(frozen=True)
class _Trial:
    """The balance with some of the demand taken away."""

    network: Network
    wanted: Mapping[str, float]
    there_is: float
    needed: float

    def base_without(self, less: Mapping[str, float]) -> float:
        left = {form: max(0.0, grams - less.get(form, 0.0)) for form, grams in self.wanted.items()}
        return least_base(self.network, left).base

    def goes_round(self, less: Mapping[str, float]) -> bool:
        return self.base_without(less) <= self.there_is * (1 + _SLACK)


def _fewer_builds(
    binder: Binder, dish: Dish, needs: Mapping[str, Mapping[str, float]], trial: _Trial
) -> Iterator[Repair]:
    for kind in _DISPENSABLE:
        build = next((one for one in reversed(builds_of(binder, dish.id)) if one.kind is kind), None)
        if build is not None and trial.goes_round(needs.get(build.id, {})):
            freed = trial.needed - trial.base_without(needs[build.id])
            yield Repair(RepairKind.BUILD, _build_text(binder, dish, build), freed, dish=dish.id, build=build.id)


def _build_text(binder: Binder, dish: Dish, build: Build) -> str:
    says = _("Leave out one {kind} of dish {number}, {dish}.")
    return says.format(kind=build.kind.value, number=dish.position + 1, dish=dish_name(binder, dish))


def _fewer_portions(
    binder: Binder, dish: Dish, needs: Mapping[str, Mapping[str, float]], trial: _Trial
) -> Iterator[Repair]:
    """The most whole portions the dish can keep, its builds that follow the dish's portions all made smaller."""
    following = [build.id for build in builds_of(binder, dish.id) if build.portions is None]
    for portions in range(math.ceil(dish.portions) - 1, 0, -1):
        cut = 1 - portions / dish.portions
        less: dict[str, float] = {}
        for build in following:
            for food, grams in needs.get(build, {}).items():
                less[food] = less.get(food, 0.0) + grams * cut
        if trial.goes_round(less):
            freed = trial.needed - trial.base_without(less)
            yield Repair(
                RepairKind.PORTIONS,
                _portions_text(binder, dish, portions),
                freed,
                dish=dish.id,
                portions=float(portions),
            )
            return


def _portions_text(binder: Binder, dish: Dish, portions: int) -> str:
    says = ngettext(
        "Make dish {number}, {dish}, for {portions} portion instead of {before:g}.",
        "Make dish {number}, {dish}, for {portions} portions instead of {before:g}.",
        portions,
    )
    return says.format(number=dish.position + 1, dish=dish_name(binder, dish), portions=portions, before=dish.portions)


def _buy(binder: Binder, balance: BaseBalance) -> Repair:
    grams = -(balance.left or 0.0)
    priced = chosen_pack(binder, balance.base)
    says = _("Have {grams} more {base}.").format(grams=grams_text(grams, number_style(binder)), base=balance.name)
    if not isinstance(priced, Missing):
        cost = money_text(priced.per_gram * grams, binder.settings.currency, binder.settings.locale)
        says = _("Have {grams} more {base}, worth {cost}.").format(
            grams=grams_text(grams, number_style(binder)), base=balance.name, cost=cost
        )
    return Repair(RepairKind.BUY, says, grams, grams=grams)
