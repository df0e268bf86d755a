"""Amounts written as a cook would: `1½ cups`, `2–3 cloves`, `250 g`."""

from __future__ import annotations

import math
from dataclasses import dataclass

from binder.kitchen.amount import Amount
from binder.kitchen.number import in_decimals, in_fractions
from binder.kitchen.settings import Measures
from binder.kitchen.units import Dimension, Unit, unit

_WEIGHTS = {"g", "kg", "mg", "ml", "cl", "dl", "l"}
_SHORT = {"oz", "lb", "tbsp", "tsp", "fl oz", *_WEIGHTS}
"""Units written the same for one and for many."""

_IRREGULAR = {
    "loaf": "loaves",
    "leaf": "leaves",
    "pinch": "pinches",
    "dash": "dashes",
    "bunch": "bunches",
    "box": "boxes",
    "batch": "batches",
}
_UNCOUNTED = {"each", "small", "medium", "large"}


@dataclass(frozen=True)
class NumberStyle:
    """How the binder's locale writes numbers: the mark before the decimals."""

    decimal_mark: str = "."


def plural(unit_key: str, count: float) -> str:
    """The unit's name for a count: `cup` up to one, `cups` above."""
    if unit_key.startswith("("):
        size, _bracket, word = unit_key.partition(") ")
        return f"{size}) {plural(word, count)}"
    if count <= 1 or unit_key in _SHORT or unit_key in _UNCOUNTED:
        return unit_key
    return _IRREGULAR.get(unit_key, unit_key if unit_key.endswith("s") else f"{unit_key}s")


def amount_text(amount: Amount, style: NumberStyle | None = None) -> str:
    """An amount exactly as it stands, in the unit it was given in; empty for one to taste."""
    style = style or NumberStyle()
    if amount.low is None or amount.high is None:
        return ""
    name = "" if amount.unit in {"", "each"} else plural(amount.unit, amount.high)
    low, high = (_number(end, amount.unit, style) for end in (amount.low, amount.high))
    digits = low if low == high else f"{low}–{high}"
    return f"{digits} {name}".strip()


def _number(value: float, unit_key: str, style: NumberStyle) -> str:
    fractions = None if unit_key in _WEIGHTS else in_fractions(value)
    return fractions or in_decimals(value, digits=_digits(value), decimal_mark=style.decimal_mark)


def _digits(value: float) -> int:
    """As many decimals, up to six, as leave three figures that count."""
    if value <= 0 or value >= 1000:  # noqa: PLR2004
        return 0
    return max(0, min(6, 2 - math.floor(math.log10(value))))


def sensible_grams(grams: float) -> float:
    """Grams to a step that a kitchen scale and a cook can follow; never none where there was some.

    Steps of 0.1 g below 2 g, 0.5 g below 20 g, 1 g below 1 kg, 10 g below 10 kg, then 100 g: common practice, no
    source.
    """
    steps = ((2, 0.1), (20, 0.5), (1000, 1), (10_000, 10))
    step = next((step for limit, step in steps if grams < limit), 100)
    return max(math.floor(grams / step + 0.5 + 1e-9) * step, step if grams > 0 else 0)


def grams_text(grams: float, style: NumberStyle | None = None) -> str:
    """A weight as a cook weighs it: `250 g`, `1.25 kg`, `0.5 g`."""
    return _metric_text(grams, "g", "kg", style or NumberStyle())


def millilitres_text(millilitres: float, style: NumberStyle | None = None) -> str:
    """A volume in metric: `80 ml`, `1.25 l`."""
    return _metric_text(millilitres, "ml", "l", style or NumberStyle())


def _metric_text(value: float, small: str, large: str, style: NumberStyle) -> str:
    rounded = sensible_grams(value)
    if rounded >= 1000:  # noqa: PLR2004
        return f"{in_decimals(rounded / 1000, digits=2, decimal_mark=style.decimal_mark)} {large}"
    return f"{in_decimals(rounded, digits=1, decimal_mark=style.decimal_mark)} {small}"


_HALVES = (0, 1 / 2)
_COOKS = (0, 1 / 4, 1 / 3, 1 / 2, 2 / 3, 3 / 4)
_SPOONS = (0, 1 / 4, 1 / 2, 3 / 4)
_LADDERS = {
    Measures.US_CUSTOMARY: (
        ("gallon", 1.0, _HALVES),
        ("quart", 2.0, _HALVES),
        ("cup", 0.25, _COOKS),
        ("tbsp", 1.0, _HALVES),
        ("tsp", 0.125, _SPOONS),
    ),
    Measures.IMPERIAL: (
        ("pint", 0.5, _HALVES),
        ("fl oz", 2.0, _HALVES),
        ("tbsp", 1.0, _HALVES),
        ("tsp", 0.125, _SPOONS),
    ),
    Measures.METRIC: (("l", 1.0, ()), ("ml", 50.0, ()), ("tbsp", 1.0, _HALVES), ("tsp", 0.125, _SPOONS)),
}
"""For each system the units a cook reaches for, each from so many upward, and the parts of it there are in the drawer.

Common practice, no source.
"""

_CLOSE = 0.03
"""A measure this near to the volume stands for it: a spoon is not filled more exactly."""


def cooks_measure(millilitres: float, measures: Measures, style: NumberStyle | None = None) -> str:
    """A volume in the measures of a kitchen drawer: `2 cups + 3 tbsp`, `¾ tsp`, in two measures at most."""
    style = style or NumberStyle()
    for key, least, parts in _LADDERS[measures]:
        one = unit(key, measures)
        if millilitres >= least * one.factor * (1 - _CLOSE):
            return (
                millilitres_text(millilitres, style)
                if not parts
                else _measured(millilitres, one, parts, measures, style)
            )
    return "" if millilitres <= 0 else amount_text(Amount(1.0, 1.0, "pinch"), style)


def _measured(millilitres: float, one: Unit, parts: tuple[float, ...], measures: Measures, style: NumberStyle) -> str:
    """The nearest of a measure's parts, or the largest below and the rest in a smaller measure."""
    value = millilitres / one.factor
    count = _nearest_part(value, parts)
    if one.key == "tsp" or abs(count - value) <= _CLOSE * value:
        return amount_text(Amount(count, count, one.key), style)
    below = math.floor(value) + max(part for part in parts if part <= value - math.floor(value) + 1e-9)
    rest = _nearest_smaller(millilitres - below * one.factor, one, measures)
    if rest is None or below <= 0:
        return amount_text(rest or Amount(count, count, one.key), style)
    return f"{amount_text(Amount(below, below, one.key), style)} + {amount_text(rest, style)}"


def _nearest_smaller(millilitres: float, above: Unit, measures: Measures) -> Amount | None:
    """A rest in the largest smaller measure it fills at least once; None where it fills none."""
    for key, least, parts in _LADDERS[measures]:
        one = unit(key, measures)
        count = _nearest_part(millilitres / one.factor, parts or _HALVES)
        if one.factor < above.factor and count >= max(least, 1 / 4):
            return Amount(count, count, key)
    return None


def _nearest_part(value: float, parts: tuple[float, ...]) -> float:
    """The nearest whole number with one of `parts`; below one also an eighth."""
    whole = math.floor(value)
    allowed = (*parts, 1.0) if whole else (*parts, 1 / 8, 1.0)
    return whole + min(allowed, key=lambda part: abs(value - whole - part))


def sensible_count(count: float) -> float:
    """A count of pieces to the nearest cook's fraction, from ten up to the nearest whole; never none of some."""
    nearest = math.floor(count + 0.5) if count >= 10 else _nearest_part(count, _COOKS)  # noqa: PLR2004
    return float(nearest or (1 / 8 if count > 0 else 0.0))


def is_weight_or_volume(key: str, measures: Measures) -> bool:
    """Whether a known unit can be weighed or poured."""
    return unit(key, measures).dimension is not Dimension.PIECE
