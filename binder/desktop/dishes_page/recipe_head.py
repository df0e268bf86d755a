"""The head of a recipe: its name, what one batch yields, and its introduction."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Row, Size
from binder.desktop.sheet.sheet import PlainSheet
from binder.desktop.words.figure_text import number_text
from binder.desktop.words.typed import Reading, UnreadableError, typed_optional_number
from binder.figures.missing import Place
from binder.figures.portion_text import number_style
from binder.kitchen.amount import parse_amount
from binder.kitchen.amount_text import grams_text, millilitres_text
from binder.kitchen.edits.recipes import set_recipe
from binder.kitchen.money import uses_decimal_comma
from binder.kitchen.units import Dimension, unit
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.kitchen.recipe import Recipe


class RecipeHead(PlainSheet):
    """The subject is a recipe."""

    @property
    def name(self) -> str:
        return _("The recipe")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("name", "", characters=20, stretch=1),
            Column("portions", _("portions"), characters=7, align=Align.RIGHT),
            Column("grams", _("one batch weighs"), characters=9, align=Align.RIGHT),
            Column("millilitres", _("or measures"), characters=9, align=Align.RIGHT),
        )

    def rows(self, sight: Sight) -> list[Row]:
        recipe = sight.binder.recipes.get(sight.subject or "")
        return [] if recipe is None else [_head(sight.binder, recipe), _introduction(recipe)]

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder, recipe = sight.binder, sight.binder.recipes[sight.subject or ""]
        if row == "introduction":
            return set_recipe(recipe, introduction=text.strip())
        values: dict[str, Reading] = {
            "name": text.strip,
            "portions": lambda: typed_optional_number(binder, text),
            "grams": lambda: _typed_yield(binder, text, Dimension.WEIGHT),
            "millilitres": lambda: _typed_yield(binder, text, Dimension.VOLUME),
        }
        return set_recipe(recipe, **{column: values[column]()})


def _head(binder: Binder, recipe: Recipe) -> Row:
    style = number_style(binder)
    weight = grams_text(recipe.grams, style) if recipe.grams else ""
    volume = millilitres_text(recipe.millilitres, style) if recipe.millilitres else ""
    portions = number_text(binder, recipe.portions)
    cells = (
        Cell(recipe.name, edit=recipe.name, size=Size.TITLE),
        Cell(portions, edit=portions, placeholder=_("how many?")),
        Cell(weight, edit=weight, placeholder="–"),
        Cell(volume, edit=volume, placeholder="–"),
    )
    return Row("recipe", cells, place=Place("recipes", recipe.id), lines=2.2, rule=False)


def _introduction(recipe: Recipe) -> Row:
    text = Cell(recipe.introduction, edit=recipe.introduction, placeholder=_("Add an introduction"), paragraph=True)
    cells = (text, NOTHING, NOTHING, NOTHING)
    place = Place("recipes", recipe.id)
    return Row("introduction", cells, place=place, spans=((0, 4),), wraps=True, rule=False)


def _typed_yield(binder: Binder, text: str, dimension: Dimension) -> float | None:
    """Grams or millilitres of an amount such as `1.2 kg` or `3 cups`; None where the text is empty."""
    if not text.strip():
        return None
    settings = binder.settings
    amount = parse_amount(text, settings.measures, decimal_comma=uses_decimal_comma(settings.locale))
    given = unit(amount.unit, settings.measures)
    if given.dimension is not dimension:
        example = _("a weight, such as 1.2 kg.") if dimension is Dimension.WEIGHT else _("a volume, such as 3 cups.")
        raise UnreadableError(text, _("write {example}").format(example=example))
    return (amount.high or 0.0) * given.factor
