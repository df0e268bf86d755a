"""The page of the dishes: recipes at the left, the one chosen at the right."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from binder.desktop.dishes_page.portion_bar import portion_bar
from binder.desktop.dishes_page.portion_bar_widget import PortionBarWidget
from binder.desktop.dishes_page.recipe_body import ADD_LINE, ADD_STEP, NOTES, RecipeBody, cell_of_step
from binder.desktop.dishes_page.recipe_head import RecipeHead
from binder.desktop.dishes_page.recipe_list import ADD_RECIPE, RecipeList, dish_of_recipe, recipes_in_order
from binder.desktop.page import Page
from binder.desktop.places import changed_fields, shown_record
from binder.desktop.sheet.cell import key_of
from binder.desktop.sheet.sheet_view import SheetView
from binder.desktop.spacing import characters, space
from binder.figures.missing import Place
from binder.kitchen.edits.recipes import add_recipe
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.desk import Desk
    from binder.kitchen.change import Change


class DishesPage(Page):
    """Choosing a recipe in the list shows it whole."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        content = QWidget(self)
        self.list = SheetView(RecipeList(), desk.make, content)
        self.list.setMinimumWidth(characters(self.font(), 29))
        self.list.setMaximumWidth(characters(self.font(), 42))
        self.list.place_current.connect(self._choose)
        self.head = SheetView(RecipeHead(), desk.make, content)
        self.head.fit_rows()
        self.body = SheetView(RecipeBody(), desk.make, content)
        self.body.allow_dragging()
        self.body.place_asked.connect(desk.asked)
        self.bar = PortionBarWidget(content)
        self._lay_out(content)
        sentence = _(
            "A recipe is written in steps, each with the lines it uses, typed whole: 1 1/2 cups chopped onion."
        )
        self._pages = self.fill(content, sentence, _("Write the first recipe"), self._begin_recipe)
        self._recipe: str | None = None

    def _lay_out(self, content: QWidget) -> None:
        margin = space(self, 2)
        written = QVBoxLayout()
        written.setSpacing(0)
        written.addWidget(self.head)
        written.addWidget(self.body, 1)
        written.addWidget(self.bar)
        layout = QHBoxLayout(content)
        layout.setContentsMargins(margin, margin, margin, 0)
        layout.setSpacing(space(self, 3))
        layout.addWidget(self.list, 2)
        layout.addLayout(written, 7)

    def refresh(self) -> None:
        sight = self.desk.sight()
        self._pages.show_filled(filled=bool(sight.binder.recipes))
        self.list.show_sight(sight)
        if self._recipe not in sight.binder.recipes:
            ordered = recipes_in_order(sight)
            self._recipe = ordered[0].id if ordered else None
        self._show_recipe()

    def _show_recipe(self) -> None:
        sight = self.desk.sight(self._recipe)
        self.head.show_sight(sight)
        self.body.show_sight(sight)
        if self._recipe is not None:
            self.bar.show_bar(portion_bar(sight, self._recipe))

    def _choose(self, place: object) -> None:
        if isinstance(place, Place) and place.table == "recipes" and place.id != self._recipe:
            self._recipe = place.id
            self._show_recipe()

    def _begin_recipe(self) -> None:
        self.begin("recipe")

    def current_dish(self) -> str | None:
        dish = dish_of_recipe(self.desk.sight(), self._recipe) if self._recipe else None
        return dish.id if dish else None

    def go_to(self, place: Place) -> bool:
        recipe = shown_record(self.desk.binder, place, "recipes")
        if recipe is None:
            return False
        self.list.select_key(key_of(Place("recipes", recipe)))
        self._choose(Place("recipes", recipe))
        if place.table == "recipes":
            self.list.setFocus()
            return True
        self.body.setFocus()
        return self.body.select_key(key_of(place), 1)

    def look_at(self, change: Change, place: Place) -> bool:
        """What of a step or of the recipe itself was changed is looked at where it is typed."""
        if not self.go_to(place):
            return False
        fields = changed_fields(change, place)
        if place.table == "steps" and fields:
            cell = cell_of_step(place.id, fields[0])
            return self.body.select_key(cell.row, _at(self.body, cell.column))
        if place.table == "recipes" and fields:
            view, row = (self.body, NOTES) if fields[0] == "notes" else (self.head, fields[0])
            view.setFocus()
            if row in {NOTES, "introduction"}:
                return view.select_key(row)
            return view.select_key("recipe", _at(view, row))
        return True

    def begin(self, kind: str) -> bool:
        if kind == "recipe":
            return self._new_recipe()
        if kind == "step":
            return self.body.edit_key(ADD_STEP, 1)
        if kind == "line":
            return self.body.edit_key(f"{ADD_LINE}:{self._current_step()}", 1)
        return False

    def _new_recipe(self) -> bool:
        """In the empty binder the first recipe is made at once, to be named; later it is begun in the list."""
        if self.desk.binder.recipes:
            return self.list.edit_key(ADD_RECIPE)
        change, recipe = add_recipe(self.desk.binder, _("New recipe"))
        if not self.desk.make(change):
            return False
        self.go_to(Place("recipes", recipe.id))
        return self.head.edit_key("recipe")

    def _current_step(self) -> str:
        """The step of the current row, or else the last of the recipe."""
        row = self.body.current_row()
        step = shown_record(self.desk.binder, row.place, "steps") if row is not None and row.place is not None else None
        steps = self.desk.binder.steps.where("recipe", self._recipe)
        return step or (steps[-1].id if steps else "")

    def focus_first(self) -> None:
        if self.list.current_row() is None and self._recipe is not None:
            self.list.select_key(key_of(Place("recipes", self._recipe)))
        self.body.setFocus()


def _at(view: SheetView, column: str) -> int | None:
    """The place of a column by its id; None for a fact without one, as a step's place among the others."""
    ids = [one.id for one in view.sheet_model.columns]
    return ids.index(column) if column in ids else None
