"""How far the base ingredient goes: its forms, how much of each is made and used, and what runs out."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.figures.base_network import Network, Runs, UnsolvedError, base_forms, network_of
from binder.figures.demand import shoot_demand
from binder.figures.least_base import least_base, least_grams, made_forms, taken_forms
from binder.figures.memory import PLANS, remembered_from
from binder.figures.missing import Missing, MissingKind, Place
from binder.figures.weight import grams_as_bought
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Mapping

    from binder.kitchen.binder import Binder
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

    `added` are grams of the foods, not forms, that conversions add; `by_dish` grams of each form a dish takes. `driver`
    is the form whose demand decides how much base is needed, None where nothing needs the base. `missing` is what is
    not known of the base and its forms.
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


@remembered_from(PLANS)
def base_balance(binder: Binder, shoot_id: str) -> BaseBalance | None:
    """The balance of a shoot's base ingredient; None where it has none."""
    shoot = binder.shoots[shoot_id]
    if shoot.base is None:
        return None
    demand, forms = shoot_demand(binder, shoot_id), base_forms(binder, shoot.base)
    wanted = {form: demand.grams.get(form, 0.0) for form in forms}
    there_is = grams_as_bought(binder, binder.foods[shoot.base], shoot.base_amount, shoot.base_unit)
    network = network_of(binder, shoot.base)
    lacking = dict.fromkeys(lack for form in forms for lack in demand.missing_of.get(form, ()))
    lacking |= dict.fromkeys(one for one in (there_is, network) if isinstance(one, Missing))
    known = None if isinstance(there_is, Missing) else there_is
    if isinstance(network, Missing):
        return _without_runs(binder, shoot.base, known, wanted, tuple(lacking))
    lacking |= dict.fromkeys(_nothing_makes(binder, form) for form in _unreachable(network, wanted))
    return _balance(binder, shoot, network, wanted, known, tuple(lacking))


def _unreachable(network: Network, wanted: Mapping[str, float]) -> list[str]:
    """The forms that are wanted and cannot be made from the base."""
    made = {network.base, *(form for process in network.processes for form, _ratio in process.gives)}
    return [form for form, grams in wanted.items() if grams > 0 and form not in made]


def _nothing_makes(binder: Binder, form: str) -> Missing:
    says = _("Nothing makes {form}: add a conversion that gives it.").format(form=binder.foods[form].name)
    return Missing(MissingKind.FORM, says, Place("foods", form))


def not_solved(binder: Binder, base: str) -> Missing:
    """What is said of a base whose balance the solver cannot find."""
    says = _("How far {base} goes could not be worked out: check the yields of its conversions and the amounts wanted.")
    return Missing(MissingKind.FORM, says.format(base=binder.foods[base].name), Place("foods", base))


def _balance(
    binder: Binder,
    shoot: Shoot,
    network: Network,
    wanted: Mapping[str, float],
    there_is: float | None,
    missing: tuple[Missing, ...],
) -> BaseBalance:
    try:
        runs, driver = least_base(network, wanted), _driver(network, wanted)
    except UnsolvedError:
        lacking = (*missing, not_solved(binder, network.base))
        return _without_runs(binder, network.base, there_is, wanted, lacking)
    made = {**made_forms(network, runs), network.base: runs.base}
    taken = taken_forms(network, runs)
    return BaseBalance(
        base=network.base,
        name=binder.foods[network.base].name,
        there_is=there_is,
        needed=runs.base,
        forms=tuple(
            FormBalance(form, binder.foods[form].name, made.get(form, 0.0), wanted[form], taken.get(form, 0.0))
            for form in _as_they_are_made(network, wanted)
        ),
        runs=tuple(
            Run(process.key, binder.conversions[process.key].name, runs.grams[process.key])
            for process in reversed(network.processes)
            if process.key in runs.grams
        ),
        added=added_foods(binder, network, runs),
        by_dish=_by_dish(binder, shoot, wanted),
        driver=driver,
        missing=missing,
    )


def _as_they_are_made(network: Network, wanted: Mapping[str, float]) -> list[str]:
    """The base first, then the forms from it in the order their conversions follow, then what nothing makes."""
    made = [form for process in reversed(network.processes) for form, _ratio in process.gives]
    return [form for form in dict.fromkeys((network.base, *made, *wanted)) if form in wanted]


def added_foods(binder: Binder, network: Network, runs: Runs) -> dict[str, float]:
    """Grams of the foods, not forms, that the runs of a network add."""
    added: dict[str, float] = {}
    for key, grams in runs.grams.items():
        for addition in binder.additions.where("conversion", key):
            if addition.food not in network.forms:
                added[addition.food] = added.get(addition.food, 0.0) + addition.ratio * grams
    return added


def _driver(network: Network, wanted: Mapping[str, float]) -> str | None:
    """The form whose demand asks most of the base, batches aside: without it the base would go furthest."""
    base = least_grams(network, wanted, batches=False)
    freed = {
        form: base - least_grams(network, {**wanted, form: 0.0}, batches=False)
        for form, grams in wanted.items()
        if grams > 0
    }
    form = max(freed, key=lambda one: freed[one], default=None)
    return form if form is not None and freed[form] > _SLACK * max(1.0, base) else None


def _by_dish(binder: Binder, shoot: Shoot, forms: Mapping[str, float]) -> dict[str, dict[str, float]]:
    demand = shoot_demand(binder, shoot.id)
    return {
        dish: {form: grams for form, grams in needs.items() if form in forms and grams > 0}
        for dish, needs in demand.by_dish.items()
    }


def _without_runs(
    binder: Binder, base: str, there_is: float | None, wanted: Mapping[str, float], missing: tuple[Missing, ...]
) -> BaseBalance:
    forms = tuple(FormBalance(form, binder.foods[form].name, 0.0, grams, 0.0) for form, grams in wanted.items())
    return BaseBalance(base, binder.foods[base].name, there_is, None, forms, (), {}, {}, None, missing)
