"""The part of the day's page that is about safety: clocks, what else is to be seen to, allergens dish by dish."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QWidget

from binder.desktop.day_page.safety_rows import (
    AllergenRows,
    DaySafety,
    SafetyClocks,
    SafetyFindings,
    day_safety,
)
from binder.desktop.heading_label import HeadingLabel
from binder.desktop.latest import Latest
from binder.desktop.paper_area import PaperArea
from binder.desktop.sheet.sheet_view import SheetView
from binder.desktop.spacing import space
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.desk import Desk
    from binder.desktop.sheet.sheet import Sheet
    from binder.figures.day_plan import DayPlan


class SafetyPart(PaperArea):
    """Follows the plan while it is shown; allergens need none."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._plan: DayPlan | None = None
        self.safety: Latest[DaySafety] = Latest()
        self.without = QLabel(self.paper)
        self.without.setProperty("quiet", True)
        self.without.setWordWrap(True)
        self.without.setTextFormat(Qt.TextFormat.PlainText)
        self.without.setContentsMargins(space(self, 2), space(self, 2), space(self, 2), 0)
        self.column.addWidget(self.without)
        self._of_plan: list[QWidget] = []
        self.clocks = self._table(SafetyClocks(self.safety), of_plan=True)
        self.findings = self._table(SafetyFindings(self.safety), of_plan=True)
        self.allergens = self._table(AllergenRows())
        self.column.addStretch(1)

    def _table(self, sheet: Sheet, *, of_plan: bool = False) -> SheetView:
        view = SheetView(sheet, self._desk.make, self.paper)
        view.fit_rows()
        view.place_asked.connect(self._desk.asked)
        view.row_entered.connect(self._go)
        heading = HeadingLabel(sheet.name, 1, self.paper)
        heading.setContentsMargins(space(self, 2), space(self, 3), 0, 0)
        heading.setBuddy(view)
        self.column.addWidget(heading)
        self.column.addWidget(view)
        if of_plan:
            self._of_plan += [heading, view]
        return view

    def show_plan(self, plan: DayPlan | None, *, busy: bool) -> None:
        """Show what a plan says of safety; without one say so, and show the allergens."""
        shoot, sight = self._desk.shoot, self._desk.sight()
        if shoot is None:
            return
        if plan is not self._plan:
            self._plan = plan
            self.safety.value = day_safety(plan, shoot.id) if plan is not None else None
        for widget in self._of_plan:
            widget.setVisible(plan is not None)
        self.without.setVisible(plan is None)
        self.without.setText(_without_plan(busy=busy))
        for view in (self.clocks, self.findings, self.allergens):
            view.show_sight(sight)

    def _go(self, place: object) -> None:
        if place is not None:
            self._desk.asked.emit(place)


def _without_plan(*, busy: bool) -> str:
    if busy:
        return _("The day is being planned: its clocks follow from the plan.")
    return _("How long food is out of the cold follows from a plan, and there is none: see the plan of this page.")
