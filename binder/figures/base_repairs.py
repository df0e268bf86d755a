"""Where the base runs short: what it is short of, and the smallest changes that would make it go round.

Each change is tried by the balance before it is proposed.
"""

from __future__ import annotations

import functools
import itertools
import math
from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.figures.base import BaseBalance, BaseVerdict, base_balance
from binder.figures.base_network import Network, UnsolvedError, network_of
from binder.figures.demand import build_needs, builds_of
from binder.figures.least_base import furthest, least_grams, worth
from binder.figures.memory import PLANS, remembered_from
from binder.figures.missing import Missing
from binder.figures.money_words import money
from binder.figures.portion_text import number_style
from binder.figures.price import chosen_pack
from binder.kitchen.amount_text import grams_text
from binder.kitchen.edits.shoots import dish_name
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

    `dish` and `build` say where; `portions` is how many the dish keeps; `grams` is how much more base to have; `frees`
    is the grams of base that the change spares or adds.
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


@remembered_from(PLANS)
def bottleneck(binder: Binder, shoot_id: str) -> Bottleneck | None:
    """What runs out: the form whose demand asks most of the base, and how much of it cannot be made; None: nothing."""
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


@remembered_from(PLANS)
def base_repairs(binder: Binder, shoot_id: str) -> tuple[Repair, ...]:
    """The changes that each alone make the base go round, the smallest first, and last having more of the base.

    The others are cuts, a dozen at most: a build less, or portions less of a dish.
    """
    found = _short(binder, shoot_id)
    if found is None:
        return ()
    balance, network, there_is = found
    try:
        trial = _Trial(network, {form.form: form.used for form in balance.forms}, there_is)
    except UnsolvedError:
        return (_buy(binder, balance),)
    cuts = [cut for dish in binder.dishes.where("shoot", shoot_id) for cut in _cuts(binder, dish, trial)]
    tried = ((cut, _most_kept(cut, trial)) for cut in sorted(cuts, key=lambda cut: cut.worth))
    enough = itertools.islice(((cut, kept) for cut, kept in tried if kept is not None), _MOST_CUTS)
    needed = balance.needed or 0.0
    repairs = [cut.make(kept, needed - trial.base_without(cut.takes_off(kept))) for cut, kept in enough]
    return (*sorted(repairs, key=lambda repair: repair.frees), _buy(binder, balance))


@dataclass(frozen=True)
class _Cut:
    """A repair that may do, keeping from `least` to `most`: the more is kept, the less is taken off the demand.

    `takes_off` is grams by form for what is kept, `make` the repair for what is kept and the base it frees; `worth` is
    the most grams of base that keeping the most can free.
    """

    worth: float
    least: int
    most: int
    takes_off: Callable[[int], Mapping[str, float]]
    make: Callable[[int, float], Repair]


class _Trial:
    """The balance with some of the demand taken away."""

    def __init__(self, network: Network, wanted: Mapping[str, float], there_is: float) -> None:
        self._network, self._wanted = network, wanted
        self._room = there_is * (1 + _SLACK)
        self._worth = worth(network, wanted)
        self._short = least_grams(network, wanted, batches=False) - self._room

    def base_without(self, less: Mapping[str, float]) -> float:
        """Grams of base needed then; more than any where the solver cannot say."""
        left = {form: max(0.0, grams - less.get(form, 0.0)) for form, grams in self._wanted.items()}
        try:
            return least_grams(self._network, left)
        except UnsolvedError:
            return math.inf

    def goes_round(self, less: Mapping[str, float]) -> bool:
        return self.base_without(less) <= self._room

    def may_do(self, less: Mapping[str, float]) -> bool:
        """Whether taking so much away could be enough; nothing frees more base than it is worth."""
        return self.worth_of(less) * (1 + _SOLVED) >= self._short

    def worth_of(self, less: Mapping[str, float]) -> float:
        return sum(grams * self._worth.get(form, 0.0) for form, grams in less.items() if form in self._wanted)


def _most_kept(cut: _Cut, trial: _Trial) -> int | None:
    """The most that can be kept so that the base goes round; None where keeping the least is still too much."""
    if trial.goes_round(cut.takes_off(cut.most)):
        return cut.most
    if cut.least == cut.most or not trial.goes_round(cut.takes_off(cut.least)):
        return None
    return _last(lambda kept: trial.goes_round(cut.takes_off(kept)), cut.least, cut.most)


def _last(fits: Callable[[int], bool], fitting: int, too_much: int) -> int:
    """The last number that fits, by halving between one that does and one that does not."""
    while too_much - fitting > 1:
        middle = (fitting + too_much) // 2
        fitting, too_much = (middle, too_much) if fits(middle) else (fitting, middle)
    return fitting


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
            yield _Cut(
                trial.worth_of(less),
                least=0,
                most=0,
                takes_off=functools.partial(_same, less),
                make=functools.partial(_less_a_build, binder, dish, build),
            )


def _same(less: Mapping[str, float], _kept: int) -> Mapping[str, float]:
    return less


def _less_a_build(binder: Binder, dish: Dish, build: Build, _kept: int, frees: float) -> Repair:
    return Repair(RepairKind.BUILD, _build_text(binder, dish, build), frees, dish=dish.id, build=build.id)


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

    def takes_off(portions: int) -> dict[str, float]:
        return {food: grams * (1 - portions / dish.portions) for food, grams in whole.items()}

    def may_do(portions: int) -> bool:
        return trial.may_do(takes_off(portions))

    fewer = math.ceil(dish.portions) - 1
    if whole and fewer >= 1 and may_do(1):
        most = fewer if may_do(fewer) else _last(may_do, 1, fewer)
        make = functools.partial(_less_portions, binder, dish)
        yield _Cut(trial.worth_of(takes_off(most)), least=1, most=most, takes_off=takes_off, make=make)


def _less_portions(binder: Binder, dish: Dish, portions: int, frees: float) -> Repair:
    says = _portions_text(binder, dish, portions)
    return Repair(RepairKind.PORTIONS, says, frees, dish=dish.id, portions=float(portions))


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
        cost = money(binder, priced.per_gram * grams)
        says = _("Have {grams} more {base}, worth {cost}.").format(
            grams=grams_text(grams, number_style(binder)), base=balance.name, cost=cost
        )
    return Repair(RepairKind.BUY, says, grams, grams=grams)
