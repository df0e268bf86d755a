"""The recipes of the binder, those of the shoot first, each with its cost a portion."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Row, Tone, key_of
from binder.desktop.sheet.sheet import PlainSheet, record_of
from binder.desktop.words.figure_text import mark_of, not_known
from binder.figures.cap_basis import basis_text
from binder.figures.cost import Verdict, dish_cost, recipe_lines_cost
from binder.figures.missing import Missing, Place
from binder.figures.money_words import money
from binder.kitchen.edits.recipes import add_recipe, remove_recipe, set_recipe
from binder.kitchen.edits.records import remove
from binder.kitchen.shoot import CapBasis
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.kitchen.recipe import Recipe
    from binder.kitchen.shoot import Dish

ADD_RECIPE = "add:recipe"


def dish_of_recipe(sight: Sight, recipe: str) -> Dish | None:
    """The first dish of the shoot looked at that a recipe is made for."""
    dishes = sight.binder.dishes.where("shoot", sight.shoot) if sight.shoot else ()
    return next((dish for dish in dishes if dish.recipe == recipe), None)


class RecipeList(PlainSheet):
    """A row a recipe."""

    @property
    def name(self) -> str:
        return _("Recipes")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("name", _("recipe"), characters=13, stretch=3),
            Column("cost", _("a portion"), characters=9, stretch=1, align=Align.RIGHT),
        )

    def rows(self, sight: Sight) -> list[Row]:
        return [*(_row(sight, recipe) for recipe in recipes_in_order(sight)), _adding()]

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        if row == ADD_RECIPE:
            return add_recipe(sight.binder, text.strip())[0]
        return set_recipe(sight.binder.recipes[record_of(row).id], name=text.strip())

    def remove(self, sight: Sight, rows: Sequence[str]) -> Change | None:
        recipes = [sight.binder.recipes[record_of(row).id] for row in rows if row != ADD_RECIPE]
        if len(recipes) < 2:  # noqa: PLR2004 - one recipe goes by its name
            return remove_recipe(sight.binder, recipes[0]) if recipes else None
        label = ngettext("Remove {count} recipe", "Remove {count} recipes", len(recipes)).format(count=len(recipes))
        return remove(label, sight.binder, *recipes)


def recipes_in_order(sight: Sight) -> list[Recipe]:
    """The shoot's recipes in running order, then the others by name."""
    places = {dish.recipe: dish.position for dish in sight.binder.dishes.where("shoot", sight.shoot)}
    return sorted(sight.binder.recipes.values(), key=lambda one: (places.get(one.id, 10**6), one.name.casefold()))


def _row(sight: Sight, recipe: Recipe) -> Row:
    dish = dish_of_recipe(sight, recipe.id)
    under = _("dish {number}").format(number=dish.position + 1) if dish else _used_in(sight.binder, recipe)
    name = Cell(recipe.name, edit=recipe.name, under=under, folds=True, tip=recipe.name)
    place = Place("recipes", recipe.id)
    return Row(key_of(place), (name, _cost(sight, recipe, dish)), place=place, lines=2.5)


def _used_in(binder: Binder, recipe: Recipe) -> str:
    users = {binder.steps[line.step].recipe for line in binder.lines.where("made", recipe.id)}
    if not users:
        return _("not in this shoot")
    return ngettext("in {count} recipe", "in {count} recipes", len(users)).format(count=len(users))


def _cost(sight: Sight, recipe: Recipe, dish: Dish | None) -> Cell:
    """What a portion costs: of a dish of the shoot on the basis that its cap is held on, else the used cost."""
    if dish is not None:
        cost = dish_cost(sight.binder, dish.id)
        return _costs(sight, cost.per_portion, cost.missing, cost.verdict, basis_text(cost.basis))
    lines = recipe_lines_cost(sight.binder, recipe.id)
    if isinstance(lines, Missing):
        return Cell("–", tone=Tone.QUIET, tip=lines.says, spoken=lines.says)
    missing = tuple(dict.fromkeys(lack for line in lines for lack in line.missing))
    used = None if missing else sum(line.cost or 0.0 for line in lines)
    return _costs(sight, used, missing, Verdict.NO_CAP, basis_text(CapBasis.USED))


def _costs(sight: Sight, cost: float | None, missing: tuple[Missing, ...], verdict: Verdict, basis: str) -> Cell:
    if cost is None:
        return Cell("?", mark=mark_of(Verdict.UNKNOWN), tip=not_known(missing), spoken=not_known(missing))
    return Cell(money(sight.binder, cost), under=basis, mark=mark_of(verdict), tip=basis)


def _adding() -> Row:
    return Row(ADD_RECIPE, (Cell(edit="", placeholder=_("Add a recipe")), NOTHING), lines=2.0, rule=False, adds=True)
