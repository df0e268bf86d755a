"""Weight of an amount of a food: by the food's own measures first, then by its density, never by a guess."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from binder.figures.memory import WEIGHTS, remembered_from
from binder.figures.missing import Missing, MissingKind, Place, is_known
from binder.kitchen.name_book import singular_words
from binder.kitchen.units import Dimension, Unit, UnknownUnitError, canonical_unit, unit
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from collections.abc import Iterable

    from binder.kitchen.binder import Binder
    from binder.kitchen.food import Food, Measure

COUNTED = "each"
"""The unit of a plain count: two onions."""


def unit_of(binder: Binder, food: Food, text: str) -> Unit:
    """The unit `text` means for a food; raises UnknownUnitError."""
    return unit(text, binder.settings.measures, pieces=_piece_words(binder, food.id))


@remembered_from(WEIGHTS)
def _piece_words(binder: Binder, food_id: str) -> frozenset[str]:
    return frozenset(_key_of(measure) for measure in binder.measures.where("food", food_id))


def _key_of(measure: Measure) -> str:
    """A measure's unit as amounts name it: `Cloves` is `clove`; a word of the food's own stays itself."""
    return canonical_unit(measure.unit) or measure.unit.casefold()


def grams_of(binder: Binder, food: Food, count: float, unit_text: str, preparation: str = "") -> float | Missing:
    """Grams, as a recipe means them (trimmed), of `count` units of a food in a preparation."""
    each = grams_in_one(binder, food.id, unit_text, preparation)
    return each if isinstance(each, Missing) else count * each


def grams_as_bought(binder: Binder, food: Food, count: float, unit_text: str) -> float | Missing:
    """Grams as purchased of `count` units of a food: pieces weigh what they weigh before they are trimmed."""
    each, left_by_trimming = _one_as_bought(binder, food.id, unit_text)
    return each if isinstance(each, Missing) else count * each / left_by_trimming


@remembered_from(WEIGHTS)
def _one_as_bought(binder: Binder, food_id: str, unit_text: str) -> tuple[float | Missing, float]:
    """Grams in one unit as a recipe means them, and the part of what is bought that these are."""
    each, food = grams_in_one(binder, food_id, unit_text, ""), binder.foods[food_id]
    is_piece = is_known(each) and unit_of(binder, food, unit_text).dimension is Dimension.PIECE
    return each, food.trim_yield if is_piece else 1.0


@remembered_from(WEIGHTS)
def grams_in_one(binder: Binder, food_id: str, unit_text: str, preparation: str) -> float | Missing:
    """Grams, as a recipe means them (trimmed), of one unit of a food in a preparation."""
    food = binder.foods[food_id]
    try:
        asked = unit_of(binder, food, unit_text)
    except UnknownUnitError as unknown:
        return Missing(MissingKind.CONVERSION, str(unknown), Place("foods", food.id))
    if asked.dimension is Dimension.WEIGHT:
        return asked.factor
    if asked.dimension is Dimension.VOLUME:
        density = grams_per_millilitre(binder, food, asked, preparation)
        return asked.factor * density if density is not None else _cannot_convert(binder, food, asked, preparation)
    each = _piece_grams(binder, food, asked.key, preparation)
    return each if each is not None else _cannot_convert(binder, food, asked, preparation)


def grams_per_millilitre(binder: Binder, food: Food, asked: Unit | None = None, preparation: str = "") -> float | None:
    """Grams per millilitre of a food: by its measure nearest in size to the unit asked for, else by its density.

    Grams as a recipe means them; None where neither is known.
    """
    volumes = [
        (measure, each) for measure in _fitting(binder, food, preparation) if (each := _millilitres(binder, measure))
    ]
    if volumes:
        wanted = asked.factor if asked is not None else 240.0
        measure, millilitres = min(volumes, key=lambda pair: abs(math.log(pair[1] / wanted)))
        return measure.grams / millilitres
    return food.density


def _millilitres(binder: Binder, measure: Measure) -> float | None:
    """Millilitres of one of a measure's unit, None where it is a piece."""
    try:
        measured = unit(measure.unit, binder.settings.measures)
    except UnknownUnitError:
        return None
    return measured.factor if measured.dimension is Dimension.VOLUME else None


def _fitting(binder: Binder, food: Food, preparation: str) -> Iterable[Measure]:
    """The measures that fit a preparation best: those that say it in most of its words, else those that say none."""
    said = set(singular_words(preparation))
    fitting: dict[int, list[Measure]] = {}
    for measure in binder.measures.where("food", food.id):
        words = set(singular_words(measure.preparation))
        if words <= said:
            fitting.setdefault(len(words), []).append(measure)
    for count in sorted(fitting, reverse=True):
        yield from fitting[count]
        if any(_millilitres(binder, measure) for measure in fitting[count]):
            return


def _piece_grams(binder: Binder, food: Food, key: str, preparation: str) -> float | None:
    wanted = (key, "medium") if key == COUNTED else (key,)
    fitting = list(_fitting(binder, food, preparation)) + list(binder.measures.where("food", food.id))
    for name in wanted:
        for measure in fitting:
            if _key_of(measure) == name:
                return measure.grams
    return None


def _cannot_convert(binder: Binder, food: Food, asked: Unit, preparation: str) -> Missing:
    one = _("1 {unit} of {food}") if asked.key != COUNTED else _("1 {food}")
    what = one.format(unit=asked.key, food=food.name) + (f", {preparation}" if preparation else "")
    prepared = sorted(
        {
            measure.preparation
            for measure in binder.measures.where("food", food.id)
            if measure.preparation and _millilitres(binder, measure)
        }
    )
    says = _("Cannot convert {what}: add its weight.").format(what=what)
    if prepared and asked.dimension is Dimension.VOLUME:
        says = _("Cannot convert {what}: say whether it is {ways}, or add its weight.").format(
            what=what, ways=listed(prepared, joined_by=_("or"))
        )
    return Missing(MissingKind.CONVERSION, says, Place("foods", food.id))
