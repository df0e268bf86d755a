"""The page of the shoot."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from binder.desktop.fold import Fold
from binder.desktop.heading_label import HeadingLabel
from binder.desktop.page import Page
from binder.desktop.paper_area import PaperArea
from binder.desktop.places import changed_fields, shown_record
from binder.desktop.sheet.cell import key_of
from binder.desktop.sheet.sheet_view import SheetView
from binder.desktop.shoot_page.builds import ADD_BUILD, Builds
from binder.desktop.shoot_page.dish_figures import DishFigures, add_proposed, dish_figures, dish_is_quick
from binder.desktop.shoot_page.dish_head import DishHead
from binder.desktop.shoot_page.more_takes import MoreTakes
from binder.desktop.shoot_page.proposed import ProposedBuilds
from binder.desktop.shoot_page.running_order import ADD_DISH, RunningOrder, dish_title
from binder.desktop.shoot_page.shoot_head import ShootHead
from binder.desktop.shoot_page.shoot_terms import TERMS, ShootTerms, terms_in_short
from binder.desktop.spacing import space
from binder.desktop.worked_out import WorkedOut
from binder.figures.missing import Place
from binder.kitchen.edits.shoots import add_shoot
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.desk import Desk
    from binder.kitchen.change import Change


class ShootPage(Page):
    """The head of the shoot, its running order, and under it the builds of the dish chosen."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        area = PaperArea(self)
        content = area.paper
        self.head = SheetView(ShootHead(), desk.make, content)
        self.head.fit_rows()
        self.terms = SheetView(ShootTerms(), desk.make, content)
        self.terms.fit_rows()
        self.fold = Fold(self.terms.sheet_model.sheet.name, self.terms, content)
        self.fold.opened.connect(self._say_terms)
        self.order = SheetView(RunningOrder(), desk.make, content)
        self.order.fit_rows()
        self.order.allow_dragging()
        self.order.place_asked.connect(desk.asked)
        self.order.place_current.connect(self._choose_dish)
        self._of_dish = _heading("", content)
        self.dish_head = SheetView(DishHead(), desk.make, content)
        self.dish_head.fit_rows()
        self.builds = SheetView(Builds(), desk.make, content)
        self.builds.fit_rows()
        self.builds.allow_dragging()
        self._dish_figures: WorkedOut[DishFigures] = WorkedOut(desk.tasks, "dish", dish_figures, dish_is_quick, self)
        self._dish_figures.changed.connect(self._show_dish_figures)
        self._proposed_heading = _heading(_("Proposed builds"), content)
        self.proposed = SheetView(ProposedBuilds(self._dish_figures.latest), desk.make, content)
        self.proposed.fit_rows()
        self.add_proposed = QPushButton(_("Add the proposed builds"), content)
        self.add_proposed.clicked.connect(self._add_proposed)
        self._takes_heading = _heading(_("One more take"), content)
        self.takes = SheetView(MoreTakes(self._dish_figures.latest), desk.make, content)
        self.takes.fit_rows()
        self.takes.place_asked.connect(desk.asked)
        for part in (self.head, self.fold, self.terms, self.order, self._of_dish, self.dish_head, self.builds):
            area.column.addWidget(part)
        for part in (self._proposed_heading, self.proposed):
            area.column.addWidget(part)
        beside = QHBoxLayout()
        beside.setContentsMargins(space(self, 2), space(self, 1), 0, 0)
        beside.addWidget(self.add_proposed)
        beside.addStretch(1)
        area.column.addLayout(beside)
        area.column.addWidget(self._takes_heading)
        area.column.addWidget(self.takes)
        area.column.insertSpacing(3, space(self, 3))
        area.column.addStretch(1)
        sentence = _(
            "A shoot is one day before the camera: a base ingredient, dishes in running order, and a cap for each."
        )
        self._pages = self.fill(area, sentence, _("Add the first shoot"), self._begin_shoot)
        self._dish: str | None = None

    def refresh(self) -> None:
        sight = self.desk.sight()
        self._pages.show_filled(filled=sight.shoot is not None)
        self.head.show_sight(sight)
        self.terms.show_sight(sight)
        self._say_terms()
        self.order.show_sight(sight)
        self._show_dish()

    def _say_terms(self) -> None:
        """What stands beside the folded terms."""
        shoot = self.desk.shoot
        self.fold.say(terms_in_short(self.desk.binder, shoot) if shoot is not None else "")

    def _show_dish(self) -> None:
        dishes = self.desk.binder.dishes
        shown = dishes.get(self._dish or "")
        if shown is None or shown.shoot != self.desk.sight().shoot:
            group = dishes.where("shoot", self.desk.sight().shoot)
            self._dish = group[0].id if group else None
        dish = dishes[self._dish] if self._dish else None
        self._of_dish.setText(dish_title(self.desk.binder, dish) if dish else "")
        self.dish_head.setVisible(dish is not None)
        self.dish_head.show_sight(self.desk.sight(self._dish))
        self.builds.setVisible(dish is not None)
        self.builds.show_sight(self.desk.sight(self._dish))
        self._dish_figures.follow(self.desk.binder, self._dish)

    def _show_dish_figures(self) -> None:
        sight = self.desk.sight(self._dish)
        for heading, view in ((self._proposed_heading, self.proposed), (self._takes_heading, self.takes)):
            view.show_sight(sight)
            filled = view.sheet_model.rowCount() > 0
            heading.setVisible(filled)
            view.setVisible(filled)
        latest = self._dish_figures.latest
        offered = latest.value.offered if latest.value else ()
        self.add_proposed.setVisible(bool(offered))
        self.add_proposed.setEnabled(any(not one.refused for one in offered))
        self.add_proposed.setToolTip("" if self.add_proposed.isEnabled() else _("The base does not suffice for any."))

    def _add_proposed(self) -> None:
        self.begin("proposed builds")

    def _choose_dish(self, place: object) -> None:
        if isinstance(place, Place) and place.table == "dishes" and place.id != self._dish:
            self._dish = place.id
            self._show_dish()

    def _begin_shoot(self) -> None:
        self.begin("shoot")

    def current_dish(self) -> str | None:
        return self._dish

    def go_to(self, place: Place) -> bool:
        binder = self.desk.binder
        shoot = shown_record(binder, place, "shoots")
        if shoot is None:
            return False
        self.desk.look_at_shoot(shoot)
        dish = shown_record(binder, place, "dishes")
        if dish is None:
            self.head.setFocus()
            return self.head.select_key(key_of(Place("shoots", shoot)))
        self.order.select_key(key_of(Place("dishes", dish)))
        if place.table == "builds":
            self.builds.setFocus()
            return self.builds.select_key(key_of(place))
        self.order.setFocus()
        return True

    def look_at(self, change: Change, place: Place) -> bool:
        """A term, or what a dish is made by, is looked at where it is typed."""
        if not self.go_to(place):
            return False
        fields = changed_fields(change, place)
        if place.table == "shoots" and set(fields) & set(TERMS):
            self.fold.open()
            self.terms.setFocus()
            return self.terms.select_key(next(field for field in TERMS if field in fields), 1)
        if place.table == "dishes" and {"recipe", "notes"} & set(fields):
            self.dish_head.setFocus()
            return self.dish_head.select_key(key_of(place), 0 if "recipe" in fields else 1)
        return True

    def begin(self, kind: str) -> bool:
        if kind == "shoot":
            change, shoot = add_shoot(self.desk.binder, _("New shoot"))
            if self.desk.make(change):
                self.desk.look_at_shoot(shoot.id)
                self.head.edit_key(key_of(Place("shoots", shoot.id)), 0)
            return True
        if kind == "dish" and self.desk.shoot is not None:
            return self.order.edit_key(ADD_DISH)
        if kind == "proposed builds" and self._dish is not None:
            return self._take_proposed(self._dish)
        if kind == "build" and self._dish is not None:
            return self.builds.edit_key(ADD_BUILD)
        return False

    def _take_proposed(self, dish: str) -> bool:
        change = add_proposed(self.desk.binder, dish)
        if change is None:
            self.desk.said.emit(_("This dish has all the builds that its steps ask for and the base suffices for."))
        return change is not None and self.desk.make(change)

    def focus_first(self) -> None:
        self.order.setFocus()


def _heading(text: str, content: QWidget) -> HeadingLabel:
    """The heading of a part of the page."""
    heading = HeadingLabel(text, 1, content)
    heading.setContentsMargins(space(content, 2), space(content, 3), 0, 0)
    return heading
