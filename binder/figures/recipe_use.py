"""What one batch of a recipe uses, line by line, down through the recipes it is made from."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from binder.figures.memory import remembered
from binder.figures.missing import Missing, MissingKind, Place
from binder.figures.weight import grams_of
from binder.kitchen.units import Dimension, UnknownUnitError, unit
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.recipe import Line, Recipe

_PORTIONS = {"each", "portion"}


@dataclass(frozen=True, slots=True)
class Use:
    """One food that a line of a recipe uses.

    `edible` and `purchased` are grams for one batch, the upper end of a range.

    `line` and `step` are those of the recipe asked about, also where the food comes from a recipe within it; `inner`
    is the
    line that names the food. `counted` is false for a line to taste without an amount.
    """

    line: str
    step: str
    inner: str
    food: str
    edible: float | Missing
    purchased: float | Missing
    counted: bool = True

    def times(self, factor: float) -> Use:
        """The use of so many batches."""
        return self.on(self.line, self.step, factor)

    def on(self, line: str, step: str, factor: float) -> Use:
        """The use of so many batches, as a line of an outer recipe has it."""
        edible, purchased = scaled(self.edible, factor), scaled(self.purchased, factor)
        return Use(line, step, self.inner, self.food, edible, purchased, self.counted)


def scaled(value: float | Missing, factor: float) -> float | Missing:
    """A known figure times a factor; what is missing stays missing."""
    return value if isinstance(value, Missing) else value * factor


@remembered
def recipe_uses(binder: Binder, recipe_id: str) -> tuple[Use, ...]:
    """What one batch of a recipe uses, in the order of its steps and lines."""
    return tuple(
        use
        for step in binder.steps.where("recipe", recipe_id)
        for line in binder.lines.where("step", step.id)
        for use in _line_uses(binder, line)
    )


def _line_uses(binder: Binder, line: Line) -> tuple[Use, ...]:
    if line.food is not None:
        return (_food_use(binder, line, line.food),)
    made = binder.recipes[line.made or ""]
    factor = batches(binder, made, line)
    inside = recipe_uses(binder, made.id)
    if isinstance(factor, Missing):
        inside = tuple(replace(use, edible=factor, purchased=factor) for use in inside)
        factor = 1.0
    return tuple(use.on(line.id, line.step, factor) for use in inside)


def _food_use(binder: Binder, line: Line, food_id: str) -> Use:
    food = binder.foods[food_id]
    if line.high is None:
        says = _("{food} has no amount: add one to count it.").format(food=food.name)
        lacking = Missing(MissingKind.AMOUNT, says, Place("lines", line.id))
        return Use(line.id, line.step, line.id, food_id, lacking, lacking, counted=False)
    edible = grams_of(binder, food, line.high, line.unit, line.preparation)
    purchased = edible if isinstance(edible, Missing) else edible / food.trim_yield
    return Use(line.id, line.step, line.id, food_id, edible, purchased)


def batches(binder: Binder, made: Recipe, line: Line) -> float | Missing:
    """How many batches of a recipe the amount of a line is."""
    if line.high is None:
        says = _("{recipe} has no amount here: add one to count it.").format(recipe=made.name)
        return Missing(MissingKind.AMOUNT, says, Place("lines", line.id))
    return batches_for(binder, made, line.high, line.unit)


def batches_for(binder: Binder, made: Recipe, count: float, unit_text: str) -> float | Missing:
    """How many batches of a recipe give `count` of a unit.

    Portions, a weight or a volume that its yield is stated in.
    """
    try:
        asked = unit(unit_text, binder.settings.measures)
    except UnknownUnitError as unknown:
        return Missing(MissingKind.CONVERSION, str(unknown), Place("recipes", made.id))
    if asked.key == "batch":
        return count
    by_dimension = {Dimension.WEIGHT: made.grams, Dimension.VOLUME: made.millilitres}
    batch = by_dimension.get(asked.dimension, made.portions if asked.key in _PORTIONS else None)
    if batch:
        return count * asked.factor / batch
    what = {Dimension.WEIGHT: _("weight"), Dimension.VOLUME: _("volume")}.get(asked.dimension, _("number of portions"))
    says = _("{recipe} does not say what {yield_kind} it yields: add it.").format(recipe=made.name, yield_kind=what)
    return Missing(MissingKind.YIELD, says, Place("recipes", made.id))
