"""How far the base ingredient goes: its forms, how much of each is made and used, and what runs out."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from graphlib import CycleError, TopologicalSorter
from typing import TYPE_CHECKING

from binder.figures.demand import shoot_demand
from binder.figures.memory import remembered
from binder.figures.missing import Missing, MissingKind, Place
from binder.figures.weight import grams_of
from binder.kitchen.amount_text import grams_text
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Mapping

    from binder.kitchen.binder import Binder
    from binder.kitchen.conversion import Conversion
    from binder.kitchen.shoot import Shoot

_SLACK = 1e-9


class BaseVerdict(StrEnum):
    """Whether the base ingredient goes round."""

    ENOUGH = "enough"
    SHORT = "short"
    UNKNOWN = "unknown"


@dataclass(frozen=True)
class FormBalance:
    """Grams of one form: made, used by dishes, taken on into other forms, and left over."""

    form: str
    name: str
    made: float
    used: float
    taken: float

    @property
    def left(self) -> float:
        """Grams made that nothing uses."""
        return max(0.0, self.made - self.used - self.taken)


@dataclass(frozen=True)
class Run:
    """How many grams of a form one conversion takes."""

    conversion: str
    name: str
    grams: float


@dataclass(frozen=True)
class BaseBalance:
    """The base ingredient of a shoot in grams as purchased: there is, needed, and what becomes of it.

    `driver` is the form whose demand decides how much base is needed; None where nothing needs the base.
    """

    base: str
    name: str
    there_is: float | None
    needed: float | None
    forms: tuple[FormBalance, ...]
    runs: tuple[Run, ...]
    added: Mapping[str, float]
    by_dish: Mapping[str, Mapping[str, float]]
    driver: str | None
    missing: tuple[Missing, ...]

    @property
    def left(self) -> float | None:
        """Grams of base there are beyond what is needed; below zero where it is short."""
        return None if self.there_is is None or self.needed is None else self.there_is - self.needed

    @property
    def verdict(self) -> BaseVerdict:
        """Enough, short, or unknown where something is missing."""
        if self.left is None or self.missing:
            return BaseVerdict.UNKNOWN
        return BaseVerdict.SHORT if self.left < -_SLACK * max(1.0, self.there_is or 0.0) else BaseVerdict.ENOUGH


@remembered
def base_balance(binder: Binder, shoot_id: str) -> BaseBalance | None:
    """The balance of a shoot's base ingredient; None where it has none."""
    shoot = binder.shoots[shoot_id]
    if shoot.base is None:
        return None
    demand = shoot_demand(binder, shoot_id)
    forms = base_forms(binder, shoot.base)
    wanted = {form: demand.grams.get(form, 0.0) for form in forms}
    there_is, missing = _there_is(binder, shoot, shoot.base), list(demand.missing)
    if isinstance(there_is, Missing):
        missing.append(there_is)
    order = _conversions_in_order(binder, forms)
    if isinstance(order, Missing):
        return _without_runs(binder, shoot.base, there_is, wanted, [*missing, order])
    missing += [_nothing_makes(binder, form) for form in _unreachable(binder, shoot.base, wanted)]
    return _balance(binder, shoot, wanted, order, there_is, tuple(missing))


def base_forms(binder: Binder, base: str) -> tuple[str, ...]:
    """The base itself and every form of it, in the binder's order."""
    return (base, *(food.id for food in binder.foods.where("form_of", base)))


def _there_is(binder: Binder, shoot: Shoot, base: str) -> float | Missing:
    return grams_of(binder, binder.foods[base], shoot.base_amount, shoot.base_unit)


def _unreachable(binder: Binder, base: str, wanted: Mapping[str, float]) -> list[str]:
    return [
        form for form, grams in wanted.items() if grams > 0 and form != base and not binder.outcomes.where("form", form)
    ]


def _nothing_makes(binder: Binder, form: str) -> Missing:
    says = _("Nothing makes {form}: add a conversion that gives it, or give it a price.").format(
        form=binder.foods[form].name
    )
    return Missing(MissingKind.FORM, says, Place("foods", form))


def _conversions_in_order(binder: Binder, forms: tuple[str, ...]) -> list[Conversion] | Missing:
    """Conversions of these forms, each before those whose outcome it takes: from the dishes back to the base."""
    relevant = {c.id: c for form in forms for c in binder.conversions.where("takes", form)}
    sorter: TopologicalSorter[str] = TopologicalSorter({key: set() for key in relevant})
    for key in relevant:
        for outcome in binder.outcomes.where("conversion", key):
            for onward in binder.conversions.where("takes", outcome.form):
                sorter.add(key, onward.id)
    try:
        return [relevant[key] for key in sorter.static_order() if key in relevant]
    except CycleError as cycle:
        names = " → ".join(binder.conversions[key].name for key in cycle.args[1])
        says = _("These conversions go in a loop: {loop}. Take one of them out.").format(loop=names)
        return Missing(MissingKind.FORM, says, Place("conversions", cycle.args[1][0]))


def _balance(
    binder: Binder,
    shoot: Shoot,
    wanted: Mapping[str, float],
    order: list[Conversion],
    there_is: float | Missing,
    missing: tuple[Missing, ...],
) -> BaseBalance:
    """Each conversion runs as much as the outcome most wanted of it asks: exact where every form comes of one conversion."""
    base = shoot.base or ""
    needed = dict(wanted)
    taken: dict[str, float] = {}
    runs, drivers, added, made = [], {}, {}, {}  # type: ignore[var-annotated]
    for conversion in order:
        outcomes = binder.outcomes.where("conversion", conversion.id)
        grams, drives = max(((needed.get(o.form, 0.0) / o.ratio, o.form) for o in outcomes), default=(0.0, ""))
        if grams <= 0:
            continue
        runs.append(Run(conversion.id, conversion.name, grams))
        drivers[conversion.takes] = max(drivers.get(conversion.takes, (0.0, "")), (grams, drives))
        needed[conversion.takes] = needed.get(conversion.takes, 0.0) + grams
        taken[conversion.takes] = taken.get(conversion.takes, 0.0) + grams
        for outcome in outcomes:
            made[outcome.form] = made.get(outcome.form, 0.0) + outcome.ratio * grams
        for addition in binder.additions.where("conversion", conversion.id):
            added[addition.food] = added.get(addition.food, 0.0) + addition.ratio * grams
    made[base] = needed.get(base, 0.0)
    known = None if isinstance(there_is, Missing) else there_is
    return BaseBalance(
        base=base,
        name=binder.foods[base].name,
        there_is=known,
        needed=needed.get(base, 0.0),
        forms=tuple(
            FormBalance(form, binder.foods[form].name, made.get(form, 0.0), wanted[form], taken.get(form, 0.0))
            for form in wanted
        ),
        runs=tuple(reversed(runs)),
        added=added,
        by_dish=_by_dish(binder, shoot, wanted),
        driver=_driver(base, drivers, wanted),
        missing=missing,
    )


def _driver(base: str, drivers: Mapping[str, tuple[float, str]], wanted: Mapping[str, float]) -> str | None:
    """Follow, from the base on, the outcome that each conversion is run for."""
    form, seen = base, set[str]()
    while form in drivers and form not in seen and drivers[form][0] > wanted.get(form, 0.0):
        seen.add(form)
        form = drivers[form][1]
    return form if wanted.get(form, 0.0) > 0 or form != base else None


def _by_dish(binder: Binder, shoot: Shoot, forms: Mapping[str, float]) -> dict[str, dict[str, float]]:
    demand = shoot_demand(binder, shoot.id)
    return {
        dish: {form: grams for form, grams in needs.items() if form in forms and grams > 0}
        for dish, needs in demand.by_dish.items()
    }


def _without_runs(
    binder: Binder, base: str, there_is: float | Missing, wanted: Mapping[str, float], missing: list[Missing]
) -> BaseBalance:
    forms = tuple(FormBalance(form, binder.foods[form].name, 0.0, grams, 0.0) for form, grams in wanted.items())
    known = None if isinstance(there_is, Missing) else there_is
    return BaseBalance(base, binder.foods[base].name, known, None, forms, (), {}, {}, None, tuple(missing))


def shortage_text(binder: Binder, balance: BaseBalance) -> str:
    """What runs out and how much more of the base would do, in a sentence; empty where nothing does."""
    if balance.verdict is not BaseVerdict.SHORT or balance.left is None:
        return ""
    short = grams_text(-balance.left)
    if balance.driver and balance.driver != balance.base:
        says = _(
            "{form} is what runs out: {grams} more of {base} is needed, or a build less of the dishes that use it."
        )
        return says.format(form=binder.foods[balance.driver].name, grams=short, base=balance.name)
    return _("{base} runs out: {grams} more is needed.").format(base=balance.name, grams=short)
