"""The page of buying: the list with its ticks; what is at home already; the days to go and the stores."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication, QEvent, QPoint, Qt
from PySide6.QtWidgets import QLabel, QPushButton, QStackedWidget, QVBoxLayout, QWidget

from binder.desktop.buying_page.at_home import ADD_HOME, AtHome
from binder.desktop.buying_page.buying_figures import BuyingFigures, buying_figures, buying_is_quick
from binder.desktop.buying_page.buying_list import BuyingList
from binder.desktop.buying_page.kept_lines import KeptLines
from binder.desktop.buying_page.list_files import ListFiles
from binder.desktop.buying_page.list_rows import BOUGHT, TICKS
from binder.desktop.buying_page.shopping_days import ShoppingDays
from binder.desktop.buying_page.stores import Stores
from binder.desktop.buying_page.to_order import ToOrder
from binder.desktop.buying_page.walking_order import WalkingOrder
from binder.desktop.buying_page.why import as_bought_text, why_text
from binder.desktop.day_page.choices import Choices
from binder.desktop.heading_label import HeadingLabel
from binder.desktop.page import Page
from binder.desktop.paper_area import PaperArea
from binder.desktop.places import changed_fields
from binder.desktop.sheet.cell import key_of
from binder.desktop.sheet.sheet_view import SheetView
from binder.desktop.spacing import characters, space
from binder.desktop.wait_line import WaitLine
from binder.desktop.worked_out import WorkedOut
from binder.desktop.wrapping_row import WrappingRow
from binder.figures.missing import Place
from binder.kitchen.buying import Purchase
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.desk import Desk
    from binder.desktop.sheet.sheet import Sheet
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change

LIST, HOME, STORES = "list", "home", "stores"
"""The parts of the page."""

SEARCH = "buying"
"""The subject of the search for packs, in the task runner."""


def _work_out(lines: KeptLines, binder: Binder, shoot: str) -> BuyingFigures:
    """The figures, and the rows of the list that shows them."""
    figures = buying_figures(binder, shoot)
    lines.have_ready(binder, shoot, figures)
    return figures


class BuyingPage(Page):
    """Figures that take longer than a frame come a moment later; ticks and prices show at once."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self._lines = KeptLines()
        work_out = partial(_work_out, self._lines)
        self._figures: WorkedOut[BuyingFigures] = WorkedOut(desk.tasks, SEARCH, work_out, buying_is_quick, self)
        self._figures.changed.connect(self._show_figures)
        content = QWidget(self)
        parts = [(LIST, _("The list")), (HOME, _("At home already")), (STORES, _("Days and stores"))]
        self.parts = Choices(_("Parts of the page"), parts, content)
        self.parts.chosen.connect(self._show_part)
        self._stack = QStackedWidget(content)
        self._areas = {key: PaperArea(content) for key, _title in parts}
        self._headings: dict[SheetView, HeadingLabel] = {}
        self._buying = BuyingList(self._figures.latest, self._lines)
        self.orders = self._part(ToOrder(self._figures.latest), LIST)
        self.list = self._part(self._buying, LIST)
        self.home = self._part(AtHome(), HOME)
        self.days = self._part(ShoppingDays(self._figures.latest), STORES)
        self.stores = self._part(Stores(), STORES)
        self.walk = self._part(WalkingOrder(), STORES)
        self.files = ListFiles(desk, content)
        self.wait = WaitLine(desk.tasks, SEARCH, content)
        self.wait.stopped.connect(self._stop)
        self.again = QPushButton(_("Look for the cheapest packs again"), content)
        self.again.clicked.connect(self.refresh)
        self.again.hide()
        self.why = _sentence(content)
        self.as_bought = _sentence(content)
        self._listen()
        self._lay_out(content)
        self._store: str | None = None

    def _part(self, sheet: Sheet, part: str) -> SheetView:
        """A table of its own under a heading."""
        area = self._areas[part]
        view = SheetView(sheet, self.desk.make, area.paper)
        view.fit_rows()
        view.place_asked.connect(self._follow_place)
        heading = HeadingLabel(sheet.name, 1, area.paper)
        heading.setContentsMargins(space(self, 2), space(self, 3), 0, 0)
        heading.setBuddy(view)
        self._headings[view] = heading
        area.column.addWidget(heading)
        area.column.addWidget(view)
        return view

    def _listen(self) -> None:
        self._headings[self.list].setVisible(False)
        self.list.place_current.connect(self._say_why)
        self.stores.place_current.connect(self._choose_store)
        self.walk.allow_dragging()
        self.walk.setMaximumWidth(characters(self.font(), 60))

    def _lay_out(self, content: QWidget) -> None:
        for area in self._areas.values():
            area.column.addStretch(1)
            self._stack.addWidget(area)
        column = QVBoxLayout(content)
        column.setContentsMargins(space(self, 1), space(self, 1), 0, space(self, 1))
        column.setSpacing(0)
        head = WrappingRow(space(self, 2))
        head.addWidget(self.parts)
        head.addWidget(self.files)
        column.addLayout(head)
        column.addWidget(self._stack, 1)
        column.addWidget(self.wait)
        column.addWidget(self.again, 0, Qt.AlignmentFlag.AlignLeft)
        column.addWidget(self.why)
        column.addWidget(self.as_bought)
        sentence = _(
            "The shopping list follows from the dishes of the shoot: whole packs, the cheapest that cover the need."
        )
        self._pages = self.fill_of_a_shoot(content, sentence)

    # Following the binder

    def refresh(self) -> None:
        sight = self.desk.sight()
        self._pages.show_filled(filled=sight.shoot is not None)
        self.home.show_sight(sight)
        self.stores.show_sight(sight)
        if self._store not in sight.binder.stores:
            names = sorted(sight.binder.stores.values(), key=lambda store: store.name.casefold())
            self._store = names[0].id if names else None
        self._show_walk()
        self.files.follow()
        self._figures.follow(sight.binder, sight.shoot)

    def _show_figures(self) -> None:
        sight = self.desk.sight()
        self._show_waiting()
        for view in (self.list, self.orders, self.days):
            view.show_sight(sight)
        filled = self.orders.sheet_model.rowCount() > 0
        self.orders.setVisible(filled)
        self._headings[self.orders].setVisible(filled)
        self._headings[self.list].setVisible(filled)
        self._say_why()
        if self._figures.latest.stale:
            return
        bought = as_bought_text(sight.binder, sight.shoot) if sight.shoot and sight.binder.purchases else ""
        self.as_bought.setText(bought)
        self.as_bought.setVisible(bool(bought) and self.parts.current == LIST)

    def _show_waiting(self) -> None:
        """What takes longer than a moment shows how far it is."""
        self.again.hide()
        if self._figures.latest.stale:
            self.wait.begin_soon(_("Looking for the cheapest packs"))
        else:
            self.wait.end()

    def _stop(self) -> None:
        """The list stays as it was, quiet, until it is looked for again."""
        self._figures.stop()
        self.wait.end()
        self.again.show()

    def _say_why(self) -> None:
        """While the list is looked for what was said stands: the answer would be as long in coming as the list."""
        if self._figures.latest.stale:
            return
        sight, row = self.desk.sight(), self.list.current_row()
        line = self._buying.line(row.key) if row is not None else None
        says = why_text(sight.binder, sight.shoot, line) if sight.shoot is not None else ""
        self.why.setText(says)
        self.why.setVisible(bool(says) and self.parts.current == LIST)

    def _show_walk(self) -> None:
        store = self.desk.binder.stores.get(self._store or "")
        self.walk.show_sight(self.desk.sight(self._store))
        heading = self._headings[self.walk]
        heading.setText(_("Walking order of {store}").format(store=store.name) if store else "")
        heading.setVisible(store is not None)
        self.walk.setVisible(store is not None)

    # What is asked for

    def _follow_place(self, place: object) -> None:
        if isinstance(place, Place) and place.table == TICKS:
            self._tick(place.id)
        elif isinstance(place, Place):
            self.desk.go_to(place)

    def _tick(self, row: str) -> None:
        change = self._buying.toggle(self.desk.sight(), row)
        below = self._next_line(row)
        before = self._top_of(below)
        if change is not None and self.desk.make(change):
            self.list.select_key(row, 0)
            self._keep_in_place(below, before, ticked=row)

    def _next_line(self, row: str) -> str:
        """The key of what stands below a row and its day and note; of the row itself where that is nothing."""
        model = self.list.sheet_model
        at = model.row_numbered(row) or 0
        keys = (model.row_at(place).key for place in range(at + 1, model.rowCount()))
        return next((key for key in keys if not key.startswith(f"{BOUGHT}:")), row)

    def _top_of(self, row: str) -> int:
        """Where a row of the list stands in what is in sight of the page, in pixels from its top."""
        at = self.list.sheet_model.row_numbered(row)
        area = self._areas[LIST]
        corner = self.list.viewport().mapTo(area.viewport(), QPoint(0, 0))
        return corner.y() + (self.list.rowViewportPosition(at) if at is not None else 0)

    def _keep_in_place(self, row: str, before: int, *, ticked: str) -> None:
        """A tick makes room for day and note: scroll by as much, so that what is ticked next stays under the hand.

        Not so far that what has been ticked goes out of sight.
        """
        area = self._areas[LIST]
        QCoreApplication.sendPostedEvents(area.paper, QEvent.Type.LayoutRequest)
        bar = area.verticalScrollBar()
        bar.setValue(bar.value() + min(self._top_of(row) - before, max(0, self._top_of(ticked))))

    def _choose_store(self, place: object) -> None:
        if isinstance(place, Place) and place.table == "stores" and place.id != self._store:
            self._store = place.id
            self._show_walk()

    def show_part(self, key: str) -> None:
        """Show the list, what is at home, or the days and stores."""
        self.parts.choose(key)
        self._show_part(key)

    def _show_part(self, key: str) -> None:
        self._stack.setCurrentWidget(self._areas[key])
        self._say_why()
        self.as_bought.setVisible(bool(self.as_bought.text()) and key == LIST)

    def go_to(self, place: Place) -> bool:
        record = self.desk.binder.find(place.table, place.id)
        if record is None:
            return False
        if place.table in {"pantry_items", "trips", "purchases"}:
            self.desk.look_at_shoot(getattr(record, "shoot", ""))
        if place.table in {"packs", "quotes"}:
            pack = getattr(record, "pack", place.id)
            return self.parts.current == LIST and self._select(LIST, self.list, self._row_of(Place("packs", pack)))
        if place.table == "trips":
            row = self._row_of(place) if self.parts.current == LIST else ""
            return self._select(LIST, self.list, row) or self._select(STORES, self.days, key_of(place))
        if place.table == "purchases":
            return self._select(LIST, self.list, f"{BOUGHT}:{place.id}")
        view, part = {"pantry_items": (self.home, HOME), "stores": (self.stores, STORES)}.get(place.table, (None, ""))
        return view is not None and self._select(part, view, key_of(place))

    def _row_of(self, place: Place) -> str:
        """The key of the row of the list that shows a record; empty where none does."""
        model = self.list.sheet_model
        rows = (model.row_at(at) for at in range(model.rowCount()))
        return next((row.key for row in rows if row.place == place), "")

    def _select(self, part: str, view: SheetView, row: str) -> bool:
        if view.sheet_model.row_numbered(row) is None:
            return False
        self.show_part(part)
        view.setFocus()
        return view.select_key(row)

    def look_at(self, change: Change, place: Place) -> bool:
        """A tick that is gone is looked at where its food stands on the list; a walk, in its own table."""
        if place.table == "purchases" and not self.desk.binder.purchases.get(place.id):
            return self._look_at_food(change)
        if not self.go_to(place):
            return False
        if place.table == "stores" and "sections" in changed_fields(change, place):
            self.walk.setFocus()
        return True

    def _look_at_food(self, change: Change) -> bool:
        foods = [edit.before.food for edit in change.edits if isinstance(edit.before, Purchase)]
        model = self.list.sheet_model
        keys = [model.row_at(at).key for at in range(model.rowCount())]
        row = next((key for key in keys for food in foods if key.startswith(f"buy:{food}/")), "")
        return self._select(LIST, self.list, row)

    def begin(self, kind: str) -> bool:
        if kind == "list file":
            return self.files.save()
        if kind != "home":
            return False
        self.show_part(HOME)
        return self.home.edit_key(ADD_HOME)

    def focus_first(self) -> None:
        {LIST: self.list, HOME: self.home, STORES: self.stores}[self.parts.current].setFocus()


def _sentence(parent: QWidget) -> QLabel:
    """A quiet sentence at the foot of the page."""
    label = QLabel(parent)
    label.setProperty("quiet", True)
    label.setWordWrap(True)
    label.setTextFormat(Qt.TextFormat.PlainText)
    label.setContentsMargins(space(parent, 3), space(parent, 1), space(parent, 3), 0)
    return label
