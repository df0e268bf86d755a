"""The forms of a base ingredient as a network of processes, in plain numbers."""

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
    from collections.abc import Iterable, Mapping, Sequence

    from binder.kitchen.binder import Binder
    from binder.kitchen.conversion import Conversion, Outcome

NETWORK = frozenset({"foods", "conversions", "outcomes", "additions"})
"""The tables that a network depends on."""

_SLACK = 1e-9


class UnsolvedError(ArithmeticError):
    """The solver found no answer where there always is one: yields and amounts are too many powers of ten apart."""


@dataclass(frozen=True)
class Process:
    """A conversion in numbers: what it gives, and what it adds of other forms, in grams for a gram of what it takes.

    `least` is the smallest run and `batch` the whole one, in grams of what it takes.
    """

    key: str
    takes: str
    gives: tuple[tuple[str, float], ...]
    least: float | None = None
    batch: float | None = None
    adds: tuple[tuple[str, float], ...] = ()

    @functools.cached_property
    def inputs(self) -> tuple[tuple[str, float], ...]:
        """The forms that go in, with grams of each for a gram of the form it is named for taking."""
        return _summed([(self.takes, 1.0), *self.adds])

    def allowed(self, grams: float) -> float:
        """The smallest run that takes at least `grams`: none, or at least the least, in whole batches."""
        if grams <= 0:
            return 0.0
        run = max(grams, self.least or 0.0)
        return run if self.batch is None else math.ceil(run / self.batch - _SLACK) * self.batch


@dataclass(frozen=True)
class Network:
    """Forms, the base first, and processes from the dishes back: each stands before those whose outcome it takes."""

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


@remembered_from(NETWORK)
def network_of(binder: Binder, base: str) -> Network | Missing:
    """The network of what can be made of a base; Missing where its conversions go in a loop, which is named."""
    forms = base_forms(binder, base)
    found = [_process(binder, one, forms) for form in forms for one in binder.conversions.where("takes", form)]
    processes = {process.key: process for process in found if process.gives}
    order = _from_dishes_back(processes)
    if isinstance(order, CycleError):
        return _loop(binder, order.args[1])
    return Network(base, forms, _within_reach(base, [processes[key] for key in order]))


@remembered_from(NETWORK)
def base_forms(binder: Binder, base: str) -> tuple[str, ...]:
    """The base itself, every form of it, and whatever else conversions of these give; in the binder's order."""
    forms = {base: None}
    waiting = [base]
    for form in waiting:
        made = [one.form for way in binder.conversions.where("takes", form) for one in _outcomes(binder, way)]
        new = [key for key in (*(food.id for food in binder.foods.where("form_of", form)), *made) if key not in forms]
        forms |= dict.fromkeys(new)
        waiting += dict.fromkeys(new)
    return tuple(forms)


def _outcomes(binder: Binder, conversion: Conversion) -> tuple[Outcome, ...]:
    return binder.outcomes.where("conversion", conversion.id)


def _process(binder: Binder, conversion: Conversion, forms: Sequence[str]) -> Process:
    added = binder.additions.where("conversion", conversion.id)
    return Process(
        conversion.id,
        conversion.takes,
        _summed([(outcome.form, outcome.ratio) for outcome in _outcomes(binder, conversion)]),
        conversion.least_grams,
        conversion.batch_grams,
        _summed([(addition.food, addition.ratio) for addition in added if addition.food in forms]),
    )


def _summed(parts: Iterable[tuple[str, float]]) -> tuple[tuple[str, float], ...]:
    """Each form once, with all its grams."""
    grams: dict[str, float] = {}
    for form, ratio in parts:
        grams[form] = grams.get(form, 0.0) + ratio
    return tuple(grams.items())


def _within_reach(base: str, processes: Sequence[Process]) -> tuple[Process, ...]:
    """The processes, given from the dishes back, whose every input can be made from the base."""
    reached, usable = {base}, []
    for process in reversed(processes):
        if all(form in reached for form, _ratio in process.inputs):
            reached.update(form for form, _ratio in process.gives)
            usable.append(process)
    return tuple(reversed(usable))


def _from_dishes_back(processes: Mapping[str, Process]) -> list[str] | CycleError:
    onward: dict[str, list[str]] = {}
    for process in processes.values():
        for form, _ratio in process.inputs:
            onward.setdefault(form, []).append(process.key)
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
