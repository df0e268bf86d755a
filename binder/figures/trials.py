"""What test days measured: the yields of a conversion's trials, their mean and spread."""

from __future__ import annotations

import statistics
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.memory import remembered_from

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder


@dataclass(frozen=True)
class MeasuredYield:
    """The yields of one form in the trials of a conversion, in grams for a gram taken: each, their mean and spread.

    `spread` is the sample standard deviation, None for fewer than two trials.
    """

    form: str
    ratios: tuple[float, ...]
    mean: float
    spread: float | None


@remembered_from(frozenset({"trials", "trial_outcomes"}))
def measured_yields(binder: Binder, conversion_id: str) -> tuple[MeasuredYield, ...]:
    """The measured yields of a conversion, a form each, in the order of the days they were measured on."""
    ratios: dict[str, list[float]] = {}
    for trial in sorted(binder.trials.where("conversion", conversion_id), key=lambda one: (one.on, one.id)):
        for outcome in binder.trial_outcomes.where("trial", trial.id):
            ratios.setdefault(outcome.form, []).append(outcome.grams / trial.taken)
    return tuple(
        MeasuredYield(form, tuple(each), statistics.fmean(each), statistics.stdev(each) if len(each) > 1 else None)
        for form, each in ratios.items()
    )
