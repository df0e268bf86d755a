"""Where the base runs short.

What is short of, and the smallest changes that would make it go round, each tried by the balance.
"""

from __future__ import annotations

import functools
import itertools
import math
from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.figures.base import BaseBalance, BaseVerdict, base_balance
from binder.figures.base_network import Network, furthest, least_grams, network_of, worth
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
_SOLVED = 1e-6
"""How exactly a solver knows what a form is worth."""

_MOST_CUTS = 12
"""No one weighs more ways out than these against each other."""


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
    room = there_is * (1 + _SLACK)
    reached = furthest(network, {**wanted, form: 0.0}, {form: 1.0}, base=room, most=wanted[form])
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


@remembered
def base_repairs(binder: Binder, shoot_id: str) -> tuple[Repair, ...]:
    """The changes that each alone make the base go round, the smallest first: at most a dozen cuts, then buying more.

    A cut is a build or portions less.
    """
    found = _short(binder, shoot_id)
    if found is None:
        return ()
    balance, network, there_is = found
    trial = _Trial(network, {form.form: form.used for form in balance.forms}, there_is)
    cuts = [cut for dish in binder.dishes.where("shoot", shoot_id) for cut in _cuts(binder, dish, trial)]
    tried = (_first_that_does(cut, trial) for cut in sorted(cuts, key=lambda cut: cut.worth))
    enough = itertools.islice((found for found in tried if found is not None), _MOST_CUTS)
    repairs = [make((balance.needed or 0.0) - base) for make, base in enough]
    return (*sorted(repairs, key=lambda repair: repair.frees), _buy(binder, balance))


@dataclass(frozen=True)
class _Cut:
    """A repair that may do, or several of which the first that does is meant: what each takes off the demand.

    `worth` is the most grams of base that the first can free.
    """

    worth: float
    tries: tuple[tuple[Mapping[str, float], Callable[[float], Repair]], ...]


class _Trial:
    """The balance with some of the demand taken away."""

    def __init__(self, network: Network, wanted: Mapping[str, float], there_is: float) -> None:
        self._network, self._wanted = network, wanted
        self._room = there_is * (1 + _SLACK)
        self._worth = worth(network, wanted)
        self._short = least_grams(network, wanted, batches=False) - self._room

    def base_without(self, less: Mapping[str, float]) -> float:
        left = {form: max(0.0, grams - less.get(form, 0.0)) for form, grams in self._wanted.items()}
        return least_grams(self._network, left)

    def fits(self, base: float) -> bool:
        return base <= self._room

    def may_do(self, less: Mapping[str, float]) -> bool:
        """Whether taking so much away could be enough; nothing frees more base than it is worth."""
        return self.worth_of(less) * (1 + _SOLVED) >= self._short

    def worth_of(self, less: Mapping[str, float]) -> float:
        return sum(grams * self._worth.get(form, 0.0) for form, grams in less.items() if form in self._wanted)


def _first_that_does(cut: _Cut, trial: _Trial) -> tuple[Callable[[float], Repair], float] | None:
    """How to make the repair from what it frees, and grams of base then needed; None where none does."""
    tried = ((make, trial.base_without(less)) for less, make in cut.tries)
    return next(((make, base) for make, base in tried if trial.fits(base)), None)


def _cuts(binder: Binder, dish: Dish, trial: _Trial) -> Iterator[_Cut]:
    """The cuts of one dish that may do."""
    needs = build_needs(binder, dish.id)
    yield from _fewer_builds(binder, dish, needs, trial)
    yield from _fewer_portions(binder, dish, needs, trial)


def _fewer_builds(
    binder: Binder, dish: Dish, needs: Mapping[str, Mapping[str, float]], trial: _Trial
) -> Iterator[_Cut]:
    for kind in _DISPENSABLE:
        build = next((one for one in reversed(builds_of(binder, dish.id)) if one.kind is kind), None)
        less = needs.get(build.id, {}) if build is not None else {}
        if build is not None and less and trial.may_do(less):
            says = _build_text(binder, dish, build)
            made = functools.partial(Repair, RepairKind.BUILD, says, dish=dish.id, build=build.id)
            yield _Cut(trial.worth_of(less), ((less, made),))


def _build_text(binder: Binder, dish: Dish, build: Build) -> str:
    says = _("Leave out one {kind} of dish {number}, {dish}.")
    return says.format(kind=build.kind.value, number=dish.position + 1, dish=dish_name(binder, dish))


def _fewer_portions(
    binder: Binder, dish: Dish, needs: Mapping[str, Mapping[str, float]], trial: _Trial
) -> Iterator[_Cut]:
    """The most whole portions the dish can keep, its builds that follow the dish's portions all made smaller."""
    whole: dict[str, float] = {}
    for build in builds_of(binder, dish.id):
        for food, grams in needs.get(build.id, {}).items() if build.portions is None else ():
            whole[food] = whole.get(food, 0.0) + grams
    tries = []
    for portions in range(math.ceil(dish.portions) - 1, 0, -1):
        less = {food: grams * (1 - portions / dish.portions) for food, grams in whole.items()}
        if less and trial.may_do(less):
            says = _portions_text(binder, dish, portions)
            made = functools.partial(Repair, RepairKind.PORTIONS, says, dish=dish.id, portions=float(portions))
            tries.append((less, made))
    if tries:
        yield _Cut(trial.worth_of(tries[0][0]), tuple(tries))


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
