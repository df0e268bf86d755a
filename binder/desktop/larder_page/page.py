"""The page of the larder: the foods at the left, everything about the one chosen at the right."""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QPushButton, QVBoxLayout, QWidget

from binder.desktop.heading_label import HeadingLabel
from binder.desktop.larder_page.food_conversions import FoodConversions
from binder.desktop.larder_page.food_facts import FoodFacts, cell_of_fact, food_shown
from binder.desktop.larder_page.food_list import ADD_FOOD, SHIPPED, FoodList
from binder.desktop.larder_page.food_measures import FoodMeasures
from binder.desktop.larder_page.food_packs import FoodPacks, cell_of_pack, cell_of_quote
from binder.desktop.page import Page
from binder.desktop.paper_area import PaperArea
from binder.desktop.places import changed_fields, shown_record
from binder.desktop.sheet.cell import key_of
from binder.desktop.sheet.sheet_view import SheetView
from binder.desktop.spacing import characters, space
from binder.figures.missing import Place
from binder.kitchen.edits.foods import adopt_food
from binder.kitchen.whole_file import read_whole
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from pathlib import Path

    from binder.desktop.desk import Desk
    from binder.desktop.price_import.price_window import PriceWindow
    from binder.desktop.sheet.sheet import CellName, Sheet
    from binder.kitchen.change import Change


class LarderPage(Page):
    """Typing in the field above the list also looks through the shipped larder."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        content = QWidget(self)
        self.filter = QLineEdit(content)
        self.filter.setPlaceholderText(_("Look for a food, also in the shipped larder"))
        self.filter.setAccessibleName(_("Look for a food"))
        self.filter.setClearButtonEnabled(True)
        self.filter.textChanged.connect(self._look)
        self.bring_in = QPushButton(_("Import prices..."), content)
        self.bring_in.setToolTip(_("Bring in a price list as CSV or XLSX; each row's fate is shown first"))
        self.bring_in.clicked.connect(self.import_prices)
        self.list = SheetView(FoodList(), desk.make, content)
        self.list.place_current.connect(self._choose)
        self.list.place_asked.connect(self._adopt)
        self._area = PaperArea(content)
        self.title = HeadingLabel("", 2, self._area.paper)
        self.title.setContentsMargins(space(self, 2), 0, 0, space(self, 1))
        self._area.column.addWidget(self.title)
        self._headings: dict[SheetView, HeadingLabel] = {}
        self.packs = self._part(FoodPacks())
        self.measures = self._part(FoodMeasures())
        self.conversions = self._part(FoodConversions())
        self.facts = self._part(FoodFacts())
        self._area.column.addStretch(1)
        self._lay_out(content)
        sentence = _("The larder holds the foods of this binder: what they weigh, what they cost, and how they keep.")
        self._pages = self.fill(content, sentence, _("Add the first food"), self._begin_food)
        self._food = ""
        self._beginning = False

    def _part(self, sheet: Sheet) -> SheetView:
        """A table of its own under a heading, in the column of the food chosen."""
        view = SheetView(sheet, self.desk.make, self._area.paper)
        view.fit_rows()
        heading = HeadingLabel(sheet.name, 1, self._area.paper)
        heading.setContentsMargins(space(self, 2), space(self, 3), 0, 0)
        heading.setBuddy(view)
        self._headings[view] = heading
        self._area.column.addWidget(heading)
        self._area.column.addWidget(view)
        return view

    def _lay_out(self, content: QWidget) -> None:
        margin = space(self, 2)
        left = QVBoxLayout()
        left.setSpacing(margin)
        left.addWidget(self.filter)
        left.addWidget(self.list, 1)
        left.addWidget(self.bring_in, 0, Qt.AlignmentFlag.AlignLeft)
        layout = QHBoxLayout(content)
        layout.setContentsMargins(margin, margin, 0, margin)
        layout.setSpacing(space(self, 2))
        layout.addLayout(left, 1)
        layout.addWidget(self._area, 2)
        self.list.setMinimumWidth(characters(self.font(), 43))

    def refresh(self) -> None:
        sight = self.desk.sight(self.filter.text())
        self._pages.show_filled(filled=bool(sight.binder.foods) or bool(self.filter.text()) or self._beginning)
        self.list.show_sight(sight)
        if food_shown(self.desk.sight(self._food)) is None:
            foods = sorted(sight.binder.foods.values(), key=lambda food: food.name.casefold())
            self._food = key_of(Place("foods", foods[0].id)) if foods else ""
        self._show_food()

    def _show_food(self) -> None:
        sight = self.desk.sight(self._food)
        food = food_shown(sight)
        self.title.setText(food.name if food else "")
        for part in (self.facts, self.packs, self.measures, self.conversions):
            part.show_sight(sight)
            filled = part.sheet_model.rowCount() > 0
            part.setVisible(filled)
            self._headings[part].setVisible(filled)

    def _look(self) -> None:
        self.refresh()

    def _choose(self, place: object) -> None:
        if isinstance(place, Place) and key_of(place) != self._food and place.table in {"foods", SHIPPED}:
            self._food = key_of(place)
            self._show_food()

    def _adopt(self, place: object) -> None:
        """Take a food of the shipped larder into the binder."""
        if isinstance(place, Place) and place.table == SHIPPED:
            self.desk.make(adopt_food(self.desk.binder, place.id))
            self.go_to(Place("foods", place.id))

    def _begin_food(self) -> None:
        self.begin("food")

    def go_to(self, place: Place) -> bool:
        binder = self.desk.binder
        food = shown_record(binder, place, "foods") or _food_of_conversion(self.desk, place)
        if food is None:
            return False
        key = key_of(Place("foods", food))
        if not self.list.select_key(key):
            self.filter.clear()
            self.list.select_key(key)
        self._choose(Place("foods", food))
        for part in (self.packs, self.measures, self.conversions):
            if part.select_key(key_of(place)):
                part.setFocus()
                return True
        if place.table == "quotes" and self.packs.select_key(f"packs:{binder.quotes[place.id].pack}"):
            self.packs.setFocus()
            return True
        self.list.setFocus()
        return True

    def look_at(self, change: Change, place: Place) -> bool:
        """A fact of a food, a term of a pack, an offer: each is looked at where it is typed."""
        if not self.go_to(place):
            return False
        fields = changed_fields(change, place)
        if fields:
            view, cell = self._cell_of(place, fields[0])
            at = [column.id for column in view.sheet_model.columns].index(cell.column) if cell is not None else 0
            if cell is not None and view.select_key(cell.row, at):
                view.setFocus()
        return True

    def _cell_of(self, place: Place, field: str) -> tuple[SheetView, CellName | None]:
        """Where a field of a record is typed; no cell where going to the record is enough."""
        if place.table == "foods" and field != "name":
            return self.facts, cell_of_fact(field)
        if place.table == "packs":
            return self.packs, cell_of_pack(place.id, field)
        if place.table == "quotes":
            shown = self.packs.sheet_model.row_numbered(key_of(place)) is not None
            pack = self.desk.binder.quotes[place.id].pack
            return self.packs, cell_of_quote(place.id, field) if shown else cell_of_pack(pack, field)
        return self.list, None

    def import_prices(self) -> PriceWindow | None:
        """Ask for a price list and show what would become of its rows."""
        file = self.desk.dialogs.price_list_to_read(self)
        return None if file is None else self.import_from(file)

    def import_from(self, file: Path) -> PriceWindow | None:
        """Show what would become of the rows of a price list; None where it cannot be read, which is said."""
        content: list[bytes] = []
        if not self.desk.attempt(lambda: content.append(read_whole(file))):
            return None
        from binder.desktop.price_import.price_window import PriceWindow

        today = date.today()  # noqa: DTZ011 - prices are of the person's own day
        window = PriceWindow(self.desk, file, content[0], today, self)
        window.open()
        return window

    def begin(self, kind: str) -> bool:
        if kind == "prices":
            return self.import_prices() is not None
        if kind != "food":
            return False
        self._beginning = True
        self.refresh()
        return self.list.edit_key(ADD_FOOD)

    def focus_first(self) -> None:
        if self.list.current_row() is None and self._food:
            self.list.select_key(self._food)
        self.list.setFocus()


def _food_of_conversion(desk: Desk, place: Place) -> str | None:
    """The form that a conversion, or a part of one, starts from."""
    key = shown_record(desk.binder, place, "conversions")
    return desk.binder.conversions[key].takes if key else None
