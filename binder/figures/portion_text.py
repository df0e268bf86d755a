"""An amount as it is set out: weight first, then the cook's measure, both to a sensible step."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.memory import WEIGHTS, remembered_from
from binder.figures.missing import Missing
from binder.figures.weight import grams_of, grams_per_millilitre, unit_of
from binder.kitchen.amount import Amount
from binder.kitchen.amount_text import (
    NumberStyle,
    amount_text,
    cooks_measure,
    grams_text,
    millilitres_text,
    plural,
    sensible_count,
)
from binder.kitchen.money import uses_decimal_comma
from binder.kitchen.settings import Measures
from binder.kitchen.units import Dimension, Unit, UnknownUnitError, unit
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.food import Food
    from binder.kitchen.recipe import Line


_FEW_SPOONS = 50.0
"""Millilitres; common practice, no source."""


@dataclass(frozen=True, slots=True)
class SetOut:
    """One amount as it is set out: its weight and its cook's measure as text, of which either may be empty.

    `grams` is None for what cannot be weighed.
    """

    grams: float | None
    weight: str
    measure: str

    @property
    def both(self) -> str:
        """`180 g · 1½ cups`, or whichever there is."""
        return " · ".join(text for text in (self.weight, self.measure) if text)


@remembered_from(frozenset({"settings"}))
def number_style(binder: Binder) -> NumberStyle:
    """How the binder's locale writes numbers."""
    return NumberStyle("," if uses_decimal_comma(binder.settings.locale) else ".")


def set_out(binder: Binder, line: Line, factor: float) -> SetOut:
    """A line's amount times `factor`, as it is weighed or measured out."""
    if line.low is None or line.high is None:
        return SetOut(None, "", _("to taste"))
    low, high = line.low * factor, line.high * factor
    if line.food is None:
        return _made(binder, Amount(low, high, line.unit))
    return _food_set_out(binder, line.food, low, high, line.unit, line.preparation)


@remembered_from(WEIGHTS)
def _food_set_out(binder: Binder, food_id: str, low: float, high: float, unit_text: str, preparation: str) -> SetOut:
    food, amount = binder.foods[food_id], Amount(low, high, unit_text)
    grams = grams_of(binder, food, high, unit_text, preparation)
    style = number_style(binder)
    weight = "" if isinstance(grams, Missing) else _weight_range(amount, grams, style)
    try:
        asked = unit_of(binder, food, unit_text)
    except UnknownUnitError:
        return SetOut(None, "", amount_text(amount, style))
    known = None if isinstance(grams, Missing) else grams
    return SetOut(known, weight, _measure(binder, food, asked, amount, preparation, known))


def _weight_range(amount: Amount, grams: float, style: NumberStyle) -> str:
    if amount.low is None or not amount.high or amount.low == amount.high:
        return grams_text(grams, style)
    return f"{grams_text(grams * amount.low / amount.high, style)} – {grams_text(grams, style)}"


def _made(binder: Binder, amount: Amount) -> SetOut:
    """An amount of another recipe."""
    style, high = number_style(binder), amount.high or 0.0
    try:
        asked = unit(amount.unit, binder.settings.measures)
    except UnknownUnitError:
        return SetOut(None, "", amount_text(amount, style))
    if asked.dimension is Dimension.WEIGHT:
        return SetOut(high * asked.factor, grams_text(high * asked.factor, style), "")
    if asked.dimension is Dimension.VOLUME:
        return SetOut(None, "", cooks_measure(high * asked.factor, binder.settings.measures, style))
    key = "portion" if asked.key == "each" else asked.key
    return SetOut(None, "", pieces_text(Amount(amount.low, amount.high, key), style))


def _measure(binder: Binder, food: Food, asked: Unit, amount: Amount, preparation: str, grams: float | None) -> str:
    style, measures = number_style(binder), binder.settings.measures
    if asked.dimension is Dimension.PIECE or amount.unit.startswith("("):
        return pieces_text(amount, style)
    if asked.dimension is Dimension.VOLUME:
        ends = dict.fromkeys(_volume_text(binder, (end or 0.0) * asked.factor) for end in (amount.low, amount.high))
        return " – ".join(ends)
    density = grams_per_millilitre(binder, food, None, preparation)
    if not density or not grams or not _is_spooned_or_poured(food, measures, grams / density):
        return ""
    return cooks_measure(grams / density, measures, style)


def _is_spooned_or_poured(food: Food, measures: Measures, millilitres: float) -> bool:
    """Whether a cook measures so much of a food: a metric kitchen weighs what is solid and more than a few spoons."""
    return measures is not Measures.METRIC or food.density is not None or millilitres <= _FEW_SPOONS


def _volume_text(binder: Binder, millilitres: float) -> str:
    style = number_style(binder)
    return cooks_measure(millilitres, binder.settings.measures, style) or millilitres_text(millilitres, style)


def pieces_text(amount: Amount, style: NumberStyle) -> str:
    """A count of pieces to the nearest quarter or third: `2½`, `3 cloves`, `(14 oz) can`."""
    low, high = (sensible_count(end or 0.0) for end in (amount.low, amount.high))
    counted = amount_text(Amount(min(low, high), high, ""), style)
    name = "" if amount.unit in {"", "each"} else plural(amount.unit, high)
    return f"{counted} {name}".strip()
