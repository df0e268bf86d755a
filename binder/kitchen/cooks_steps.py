"""The amounts a cook has a measure for: the parts of a cup and a spoon in the drawer, the steps of a kitchen scale."""

from __future__ import annotations

import itertools
import math
from typing import TYPE_CHECKING

from binder.kitchen.units import canonical_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

_WHOLE = (0.0,)
_HALVES = (0.0, 1 / 2)
_QUARTERS = (0.0, 1 / 4, 1 / 2, 3 / 4)
_EIGHTHS = tuple(part / 8 for part in range(8))
_CUP = (0.0, 1 / 4, 1 / 3, 1 / 2, 2 / 3, 3 / 4)

_PARTS = {
    "cup": _CUP,
    "pint": _QUARTERS,
    "quart": _QUARTERS,
    "gallon": _QUARTERS,
    "tbsp": _HALVES,
    "fl oz": _HALVES,
    "tsp": _QUARTERS,
    "oz": _QUARTERS,
    "lb": _EIGHTHS,
    "pinch": _WHOLE,
    "dash": _WHOLE,
    "can": _WHOLE,
    "tin": _WHOLE,
    "jar": _WHOLE,
    "bottle": _WHOLE,
    "packet": _WHOLE,
    "package": _WHOLE,
    "bag": _WHOLE,
    "box": _WHOLE,
    "tub": _WHOLE,
    "carton": _WHOLE,
}
"""The parts of one that each unit is measured in. Common practice, no source."""

_EIGHTH_TOO = {"cup", "tsp"}
"""Below one there is an eighth of these as well. Common practice, no source."""

_SYSTEMS = ("us ", "imperial ", "metric ")

_FEW = 4.0
"""Pieces; from so many on they are counted whole. Common practice, no source."""

_METRIC_STEPS = ((2, 0.1), (20, 0.5), (1000, 1.0), (10_000, 10.0), (math.inf, 100.0))
"""Up to so many grams or millilitres, the step of a scale: as amounts are written. Common practice, no source."""

_METRIC = {"mg": 0.001, "g": 1.0, "kg": 1000.0, "ml": 1.0, "cl": 10.0, "dl": 100.0, "l": 1000.0}

_SAME = 1e-9


def measures_below(count: float, unit_text: str, *, least: float) -> Iterator[float]:
    """The amounts below `count` of a unit that a cook has a measure for, the largest first, down to `least`."""
    downward = _metric_below(count, unit_text) if unit_text in _METRIC else _parts_below(count, unit_text)
    return itertools.takewhile(lambda amount: amount >= least - _SAME, downward)


def _metric_below(count: float, unit_key: str) -> Iterator[float]:
    """Whole steps of a scale, worked out in grams or millilitres."""
    size, value = _METRIC[unit_key], count * _METRIC[unit_key]
    while value > 0:
        step = next(step for limit, step in _METRIC_STEPS if value * (1 - _SAME) <= limit)
        whole = math.ceil(value / step * (1 - _SAME)) - 1
        value = whole * step
        if whole > 0:
            yield round(value, 6) / size


def _parts_below(count: float, unit_text: str) -> Iterator[float]:
    parts = _parts_of(unit_text, count)
    for whole in range(math.floor(count), -1, -1):
        small = (1 / 8,) if not whole and _bare(unit_text) in _EIGHTH_TOO else ()
        for part in sorted((*parts, *small), reverse=True):
            if 0 < whole + part < count - _SAME:
                yield whole + part


def _parts_of(unit_text: str, count: float) -> tuple[float, ...]:
    bare = _bare(unit_text)
    return _PARTS.get(bare, _WHOLE if count >= _FEW else _HALVES)


def _bare(unit_text: str) -> str:
    """The unit without its system, and of a container with its size only what it is: `(14 oz) can` is a can."""
    key = canonical_unit(unit_text) or unit_text
    if key.startswith("("):
        return key.partition(") ")[2]
    return next((key.removeprefix(system) for system in _SYSTEMS if key.startswith(system)), key)
