"""Scaling a recipe, and volumes broken into the units of a big kitchen."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from binder.figures.recipe_use import batches_for
from binder.kitchen.units import unit

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.figures.missing import Missing
    from binder.kitchen.binder import Binder
    from binder.kitchen.settings import Measures

_QUARTER = 4
"""Parts of the smallest unit that amounts come to."""


def scale_factor(binder: Binder, recipe_id: str, *, count: float, unit: str = "portion") -> float | Missing:
    """What to multiply a recipe by to get `count` portions, or a target weight or volume of it."""
    return batches_for(binder, binder.recipes[recipe_id], count, unit)


def in_units_of(millilitres: float, units: Sequence[str], measures: Measures) -> tuple[tuple[str, float], ...]:
    """Millilitres in the units given, the largest first: whole ones, and of the last to the nearest quarter.

    Rounded once, at the end, as in the US Navy's recipe conversion (NAVEDTRA 14163) and the Armed Forces Recipe
    Service.
    """
    smallest = unit(units[-1], measures).factor
    left = math.floor(millilitres / smallest * _QUARTER + 0.5)
    broken: list[tuple[str, float]] = []
    for key in units:
        size = round(unit(key, measures).factor / smallest * _QUARTER)
        count, rest = divmod(left, size)
        last = key == units[-1]
        if count or (last and rest):
            broken.append((key, left / _QUARTER if last else count))
        left = rest
    return tuple(broken)


def rounded_ounces(ounces: float) -> float:
    """Ounces to the nearest quarter: .12 and less are dropped, .13 to .37 are a quarter, and so on.

    Source: Armed Forces Recipe Service, TM 10-412, A. General Information No. 1(2).
    """
    return math.floor(ounces * _QUARTER + 0.5) / _QUARTER
