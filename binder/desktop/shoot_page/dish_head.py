"""What a dish is made from, and notes on it for this shoot."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import Cell, Column, Row, key_of
from binder.desktop.sheet.sheet import PlainSheet
from binder.desktop.words.typed import UnreadableError
from binder.figures.missing import Place
from binder.kitchen.edits.shoots import set_dish
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.kitchen.recipe import Recipe


class DishHead(PlainSheet):
    """The subject is a dish."""

    @property
    def name(self) -> str:
        return _("The dish")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("recipe", _("made by the recipe"), characters=26, stretch=2),
            Column("notes", _("notes on this dish"), characters=24, stretch=5),
        )

    def rows(self, sight: Sight) -> list[Row]:
        dish = sight.binder.dishes.get(sight.subject or "")
        if dish is None:
            return []
        recipe = sight.binder.recipes[dish.recipe].name
        cells = (
            Cell(recipe, edit=recipe, choices=_names(sight.binder), tip=_("Ctrl+Enter opens the recipe")),
            Cell(dish.notes, edit=dish.notes, placeholder="–", paragraph=True),
        )
        place = Place("dishes", dish.id)
        return [Row(key_of(place), cells, place=place, wraps=True, rule=False)]

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder, dish = sight.binder, sight.binder.dishes[sight.subject or ""]
        if column == "notes":
            return set_dish(binder, dish, notes=text.strip())
        return set_dish(binder, dish, recipe=recipe_called(binder, text).id)


def _names(binder: Binder) -> tuple[str, ...]:
    return tuple(sorted(recipe.name for recipe in binder.recipes.values()))


def recipe_called(binder: Binder, text: str) -> Recipe:
    """The recipe of a name. Raises UnreadableError where none is called so."""
    wanted = text.strip().casefold()
    recipe = next((one for one in binder.recipes.values() if one.name.casefold() == wanted), None)
    if recipe is None:
        raise UnreadableError(text, _("no recipe is called so. Choose one, or begin a new one."))
    return recipe
