"""What one batch of a recipe uses, line by line, down through the recipes it is made from."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from binder.figures.memory import RECIPES, WEIGHTS, remembered_from, remembered_of
from binder.figures.missing import Missing, MissingKind, Place
from binder.figures.weight import grams_of
from binder.kitchen.units import Dimension, UnknownUnitError, unit
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.recipe import Line, Recipe

_PORTIONS = {"each", "portion"}

LARGEST_WEIGHT = 1e9
"""Grams; a line or a dish that takes more than a thousand tonnes is a slip of the keyboard."""


@dataclass(frozen=True, slots=True)
class Use:
    """One food that a line of a recipe uses: `edible` and `purchased` grams for one batch, by a range's upper end.

    `line` and `step` are those of the recipe asked about, also where the food comes from a recipe within it; `inner` is
    the line that names the food. `counted` is false for a line to taste without an amount, and for all that is in it.
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

    def with_more(self, other: Use) -> Use:
        """Both uses of one food as one; what is to taste adds nothing to what is counted."""
        if not (self.counted and other.counted):
            return self if self.counted else other
        edible, purchased = summed(self.edible, other.edible), summed(self.purchased, other.purchased)
        return replace(self, edible=edible, purchased=purchased)


def summed(one: float | Missing, other: float | Missing) -> float | Missing:
    """The sum of two figures; what is missing of either is missing of both."""
    if isinstance(one, Missing) or isinstance(other, Missing):
        return one if isinstance(one, Missing) else other
    return one + other


def scaled(value: float | Missing, factor: float) -> float | Missing:
    """A known figure times a factor; what is missing stays missing."""
    return value if isinstance(value, Missing) else value * factor


def recipe_uses(binder: Binder, recipe_id: str) -> tuple[Use, ...]:
    """What one batch of a recipe uses, in the order of its steps and lines."""
    for inner in recipes_within(binder, recipe_id):
        _uses(binder, inner)  # the innermost first, so that recipes may be nested deeper than Python's calls
    return _uses(binder, recipe_id)


@remembered_from(RECIPES)
def recipe_parts(binder: Binder, recipe_id: str) -> tuple[object, ...]:
    """The records of a recipe and of all that are in it: itself, its steps and their lines."""
    parts: list[object] = []
    for key in (*recipes_within(binder, recipe_id), recipe_id):
        parts.append(binder.recipes[key])
        for step in binder.steps.where("recipe", key):
            parts += (step, *binder.lines.where("step", step.id))
    return tuple(parts)


@remembered_from(RECIPES)
def recipes_within(binder: Binder, recipe_id: str) -> tuple[str, ...]:
    """The recipes that a recipe is made from, down through all levels: each once, and before those it goes into."""
    found: dict[str, None] = {}
    trail = [(recipe_id, iter(_made_in(binder, recipe_id)))]
    while trail:
        recipe, parts = trail[-1]
        part = next((one for one in parts if one not in found), None)
        if part is not None:
            trail.append((part, iter(_made_in(binder, part))))
        else:
            trail.pop()
            found[recipe] = None
    return tuple(found)[:-1]


def _made_in(binder: Binder, recipe_id: str) -> list[str]:
    """The recipes that lines of a recipe name."""
    steps = binder.steps.where("recipe", recipe_id)
    return [line.made for step in steps for line in binder.lines.where("step", step.id) if line.made is not None]


@remembered_of(recipe_parts, WEIGHTS)
def _uses(binder: Binder, recipe_id: str) -> tuple[Use, ...]:
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
    inside, factor = _uses(binder, made.id), batches(binder, made, line)
    if isinstance(factor, Missing):
        counted, place = line.high is not None, {"line": line.id, "step": line.step}
        return tuple(
            replace(use, **place, edible=factor, purchased=factor, counted=use.counted and counted) for use in inside
        )
    return _gathered(tuple(_bounded(binder, line, use.on(line.id, line.step, factor)) for use in inside))


def _gathered(uses: tuple[Use, ...]) -> tuple[Use, ...]:
    """Uses of one line, those of one inner line as one: recipes that share a part would else double at each level."""
    by_inner: dict[str, Use] = {}
    for use in uses:
        other = by_inner.get(use.inner)
        by_inner[use.inner] = use if other is None else other.with_more(use)
    return tuple(by_inner.values()) if len(by_inner) < len(uses) else uses


def _bounded(binder: Binder, line: Line, use: Use) -> Use:
    """A use, or what is missing of it where it takes more than any kitchen holds."""
    if isinstance(use.purchased, Missing) or use.purchased <= LARGEST_WEIGHT:
        return use
    lacking = too_much(binder, use.food, Place("lines", line.id))
    return replace(use, edible=lacking, purchased=lacking)


def too_much(binder: Binder, food_id: str, place: Place) -> Missing:
    """What is said of a weight beyond LARGEST_WEIGHT."""
    says = _("More than a thousand tonnes of {food} would be needed: write smaller amounts or portions.")
    return Missing(MissingKind.AMOUNT, says.format(food=binder.foods[food_id].name), place)


def _food_use(binder: Binder, line: Line, food_id: str) -> Use:
    food = binder.foods[food_id]
    if line.high is None:
        says = _("{food} has no amount: add one to count it.").format(food=food.name)
        lacking = Missing(MissingKind.AMOUNT, says, Place("lines", line.id))
        return Use(line.id, line.step, line.id, food_id, lacking, lacking, counted=False)
    edible = grams_of(binder, food, line.high, line.unit, line.preparation)
    purchased = edible if isinstance(edible, Missing) else edible / food.trim_yield
    return _bounded(binder, line, Use(line.id, line.step, line.id, food_id, edible, purchased))


def batches(binder: Binder, made: Recipe, line: Line) -> float | Missing:
    """How many batches of a recipe the amount of a line is."""
    if line.high is None:
        says = _("{recipe} has no amount here: add one to count it.").format(recipe=made.name)
        return Missing(MissingKind.AMOUNT, says, Place("lines", line.id))
    return batches_for(binder, made, line.high, line.unit)


def batches_for(binder: Binder, made: Recipe, count: float, unit_text: str) -> float | Missing:
    """How many batches of a recipe give `count` of a unit: of batches, portions, or a weight or volume it yields."""
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
