"""The forms of a base ingredient as a network of processes, in plain numbers, and the least base that meets a demand.

Where every form comes of one process, the runs follow one from another and need no program: each process runs as much
as the outcome most wanted of it asks, from the dishes back to the base, and no less would do. Where a form can be
reached by two ways, `base_program` chooses between them.
"""

from __future__ import annotations

import functools
import math
from dataclasses import dataclass
from graphlib import CycleError, TopologicalSorter
from typing import TYPE_CHECKING

from binder.figures.memory import remembered_from
from binder.figures.missing import Missing, MissingKind, Place
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Mapping

    from binder.kitchen.binder import Binder

_SLACK = 1e-9
_HALVINGS = 50


@dataclass(frozen=True)
class Process:
    """A conversion in numbers.

    Grams of each form it gives for a gram it takes; the least and the whole batch it takes, in grams.
    """

    key: str
    takes: str
    gives: tuple[tuple[str, float], ...]
    least: float | None = None
    batch: float | None = None

    def allowed(self, grams: float) -> float:
        """The smallest run that takes at least `grams`: none, or at least the least, in whole batches."""
        if grams <= 0:
            return 0.0
        run = max(grams, self.least or 0.0)
        return run if self.batch is None else math.ceil(run / self.batch - _SLACK) * self.batch


@dataclass(frozen=True)
class Network:
    """Forms, the base first, and processes, each before those whose outcome it takes.

    From the dishes back to the base.
    """

    base: str
    forms: tuple[str, ...]
    processes: tuple[Process, ...]

    @functools.cached_property
    def one_way(self) -> bool:
        """Whether every form comes of one process, and the base of none."""
        given = [form for process in self.processes for form, _ratio in process.gives]
        return len(given) == len(set(given)) and self.base not in given

    @functools.cached_property
    def in_batches(self) -> bool:
        """Whether a process has a least amount or can only be run whole."""
        return any(process.least is not None or process.batch is not None for process in self.processes)


@dataclass(frozen=True)
class Runs:
    """Grams that each process takes, and grams of base that takes in all."""

    grams: Mapping[str, float]
    base: float


@remembered_from(frozenset({"foods", "conversions", "outcomes"}))
def network_of(binder: Binder, base: str) -> Network | Missing:
    """The network of a base ingredient; Missing where its conversions go in a loop, which is named."""
    forms = base_forms(binder, base)
    found = [conversion for form in forms for conversion in binder.conversions.where("takes", form)]
    processes = {
        one.id: Process(
            one.id,
            one.takes,
            tuple((outcome.form, outcome.ratio) for outcome in binder.outcomes.where("conversion", one.id)),
            one.least_grams,
            one.batch_grams,
        )
        for one in found
    }
    order = _from_dishes_back(processes)
    if isinstance(order, CycleError):
        return _loop(binder, order.args[1])
    return Network(base, forms, tuple(processes[key] for key in order))


def base_forms(binder: Binder, base: str) -> tuple[str, ...]:
    """The base itself and every form of it, in the binder's order."""
    return (base, *(food.id for food in binder.foods.where("form_of", base)))


def _from_dishes_back(processes: Mapping[str, Process]) -> list[str] | CycleError:
    onward: dict[str, list[str]] = {}
    for process in processes.values():
        onward.setdefault(process.takes, []).append(process.key)
    sorter: TopologicalSorter[str] = TopologicalSorter(
        {
            key: [after for form, _ratio in process.gives for after in onward.get(form, ())]
            for key, process in processes.items()
        }
    )
    try:
        return list(sorter.static_order())
    except CycleError as cycle:
        return cycle


def _loop(binder: Binder, keys: list[str]) -> Missing:
    names = " → ".join(binder.conversions[key].name for key in keys)
    says = _("These conversions go in a loop: {loop}. Take one of them out.").format(loop=names)
    return Missing(MissingKind.FORM, says, Place("conversions", keys[0]))


def least_base(network: Network, wanted: Mapping[str, float]) -> Runs:
    """The runs that meet `wanted` (grams by form) with the least base. Forms nothing gives are left out of account."""
    if network.one_way:
        return _followed_back(network, wanted)
    from binder.figures.base_program import program_of

    return program_of(network).runs(wanted)


def least_grams(network: Network, wanted: Mapping[str, float], *, batches: bool = True) -> float:
    """The least grams of base that meet `wanted`, sooner than by `least_base`.

    Without `batches` as if any amount could be run: never more, and sooner still.
    """
    if network.one_way:
        return _followed_back(network, wanted, batches=batches).base
    from binder.figures.base_program import program_of

    return program_of(network, whole=batches).least(wanted)


def furthest(
    network: Network, wanted: Mapping[str, float], more: Mapping[str, float], *, base: float, most: float
) -> float:
    """How many times `more` (grams by form), up to `most`, can be met beside `wanted` from `base` grams of base.

    0 where not even `wanted` can be met.
    """
    if not network.one_way:
        from binder.figures.base_program import program_of

        return program_of(network).furthest(wanted, more, base=base, most=most)

    def fits(times: float) -> bool:
        asked = {**wanted, **{form: wanted.get(form, 0.0) + grams * times for form, grams in more.items()}}
        return _followed_back(network, asked).base <= base

    low, high = 0.0, most
    if fits(most):
        return most
    for _halving in range(_HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if fits(middle) else (low, middle)
    return low


def worth(network: Network, wanted: Mapping[str, float]) -> dict[str, float]:
    """Grams of base that the last gram wanted of each form takes, batches aside.

    So much less wanted frees no more base than its worth: the least base grows ever faster with what is wanted.
    """
    if not network.one_way:
        from binder.figures.base_program import program_of

        return program_of(network, whole=False).worth(wanted)
    needed, most_wanted = dict(wanted), {}
    for process in network.processes:
        run, form, ratio = max((needed.get(form, 0.0) / ratio, form, ratio) for form, ratio in process.gives)
        most_wanted[process.key] = (form, ratio)
        needed[process.takes] = needed.get(process.takes, 0.0) + run
    found = {network.base: 1.0}
    for process in reversed(network.processes):
        form, ratio = most_wanted[process.key]
        found[form] = found.get(process.takes, 0.0) / ratio
    return found


def _followed_back(network: Network, wanted: Mapping[str, float], *, batches: bool = True) -> Runs:
    needed = dict(wanted)
    grams: dict[str, float] = {}
    for process in network.processes:
        most = max((needed.get(form, 0.0) / ratio for form, ratio in process.gives), default=0.0)
        run = process.allowed(most) if batches else most
        if run > 0:
            grams[process.key] = run
            needed[process.takes] = needed.get(process.takes, 0.0) + run
    return Runs(grams, needed.get(network.base, 0.0))


def made_forms(network: Network, runs: Runs) -> dict[str, float]:
    """Grams of each form that the runs give, the base itself aside."""
    made: dict[str, float] = {}
    for process in network.processes:
        for form, ratio in process.gives:
            made[form] = made.get(form, 0.0) + ratio * runs.grams.get(process.key, 0.0)
    return made


def taken_forms(network: Network, runs: Runs) -> dict[str, float]:
    """Grams of each form that the runs take on into others."""
    taken: dict[str, float] = {}
    for process in network.processes:
        grams = runs.grams.get(process.key, 0.0)
        if grams > 0:
            taken[process.takes] = taken.get(process.takes, 0.0) + grams
    return taken
