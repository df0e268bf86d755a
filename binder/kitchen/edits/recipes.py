"""Edits of recipes, their steps and lines."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.kitchen.change import Change, joined
from binder.kitchen.edits.foods import adopt_food
from binder.kitchen.edits.identity import new_id, readable_id
from binder.kitchen.edits.records import insert, move, remove, set_fields
from binder.kitchen.line_text import Understood, understand_line
from binder.kitchen.money import uses_decimal_comma
from binder.kitchen.name_book import name_book
from binder.kitchen.recipe import Line, Recipe, Step
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder


def add_recipe(binder: Binder, name: str, *, portions: float | None = 4.0) -> tuple[Change, Recipe]:
    """A recipe with one empty step. Returns the change and the recipe it makes."""
    recipe = Recipe(id=readable_id(name, binder.recipes), name=name, portions=portions)
    label = _("Add {recipe}").format(recipe=name)
    step = Step(id=new_id("step"), recipe=recipe.id)
    return joined(label, [insert(label, binder, recipe), insert(label, binder, step)]), recipe


def set_recipe(recipe: Recipe, **fields: object) -> Change:
    """Change a recipe's own facts."""
    return set_fields(_("Edit {recipe}").format(recipe=recipe.name), recipe, **fields)


def remove_recipe(binder: Binder, recipe: Recipe) -> Change:
    """Take a recipe out with its steps and lines; StillUsedError on applying where a dish or a line uses it."""
    return remove(_("Remove {recipe}").format(recipe=recipe.name), binder, recipe)


def add_step(binder: Binder, recipe: Recipe, *, at: int | None = None, **fields: object) -> tuple[Change, Step]:
    """A step of a recipe. Returns the change and the step it makes."""
    step = Step(id=new_id("step"), recipe=recipe.id, **fields)  # type: ignore[arg-type]
    return insert(_("Add a step to {recipe}").format(recipe=recipe.name), binder, step, at=at), step


def set_step(binder: Binder, step: Step, **fields: object) -> Change:
    """Change a step."""
    label = _("Edit step {number} of {recipe}")
    return set_fields(label.format(number=step.position + 1, recipe=binder.recipes[step.recipe].name), step, **fields)


def move_step(binder: Binder, step: Step, *, to: int) -> Change:
    """Put a step at another place in its recipe."""
    return move(_("Move a step of {recipe}").format(recipe=binder.recipes[step.recipe].name), binder, step, to=to)


def remove_step(binder: Binder, step: Step) -> Change:
    """Take a step out with its lines; builds that went up to it go up to the step before, or to the new first one."""
    label = _("Remove step {number} of {recipe}").format(
        number=step.position + 1, recipe=binder.recipes[step.recipe].name
    )
    left = [other for other in binder.steps.where("recipe", step.recipe) if other.id != step.id]
    earlier = [other for other in left if other.position < step.position]
    instead = next((other.id for other in (*earlier[-1:], *left)), None)
    builds = [set_fields(label, build, up_to=instead) for build in binder.builds.where("up_to", step.id)]
    return joined(label, [remove(label, binder, step), *builds])


def understood(binder: Binder, text: str) -> Understood:
    """What a typed line means in this binder. Raises the errors of `line_text`."""
    pieces = frozenset(measure.unit.casefold() for measure in binder.measures.values() if " " not in measure.unit)
    comma = uses_decimal_comma(binder.settings.locale)
    return understand_line(text, name_book(binder), pieces=pieces, decimal_comma=comma)


def add_line(binder: Binder, step: Step, text: str, *, at: int | None = None) -> Change:
    """A typed line on a step, its food brought from the larder if the binder lacks it. Raises errors of `line_text`."""
    meant = understood(binder, text)
    line = Line(id=new_id("line"), step=step.id, **_fields(meant))  # type: ignore[arg-type]
    label = _("Add {food} to {recipe}").format(food=meant.source.name, recipe=binder.recipes[step.recipe].name)
    return joined(label, [*_brought(binder, meant), insert(label, binder, line, at=at)])


def set_line(binder: Binder, line: Line, text: str) -> Change:
    """Type a line anew. Raises the errors of `line_text`."""
    meant = understood(binder, text)
    recipe = binder.recipes[binder.steps[line.step].recipe]
    label = _("Edit {food} in {recipe}").format(food=meant.source.name, recipe=recipe.name)
    return joined(label, [*_brought(binder, meant), set_fields(label, line, **_fields(meant))])


def remove_line(binder: Binder, line: Line) -> Change:
    """Take a line out of its step."""
    recipe = binder.recipes[binder.steps[line.step].recipe]
    return remove(
        _("Remove {food} from {recipe}").format(food=line_name(binder, line), recipe=recipe.name), binder, line
    )


def line_name(binder: Binder, line: Line) -> str:
    """The name of the food or the recipe that a line is of."""
    return binder.foods[line.food].name if line.food else binder.recipes[line.made or ""].name


def _brought(binder: Binder, meant: Understood) -> list[Change]:
    needed = not meant.source.in_binder and not meant.source.is_recipe
    return [adopt_food(binder, meant.source.key)] if needed else []


def _fields(meant: Understood) -> dict[str, object]:
    return {
        "food": None if meant.source.is_recipe else meant.source.key,
        "made": meant.source.key if meant.source.is_recipe else None,
        "low": meant.amount.low,
        "high": meant.amount.high,
        "unit": meant.amount.unit,
        "preparation": meant.preparation,
        "to_taste": meant.to_taste,
        "garnish": meant.garnish,
        "note": meant.note,
    }
