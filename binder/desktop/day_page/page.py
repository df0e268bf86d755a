"""The page of the day: how the plan stands, the plan itself, the days before, and the crew and kitchen it is for."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QStackedWidget, QVBoxLayout, QWidget

from binder.desktop.day_page.calendar_export import export_calendar
from binder.desktop.day_page.choices import Choices
from binder.desktop.day_page.crew import ADD_PERSON, CrewSheet
from binder.desktop.day_page.day_hours import DayHours
from binder.desktop.day_page.days_before import Calendar, DaysBefore, calendar_of
from binder.desktop.day_page.fixed_events import ADD_EVENT, FixedEvents
from binder.desktop.day_page.kitchen_table import ADD_APPLIANCE, KitchenSheet
from binder.desktop.day_page.plan_line import PlanLine
from binder.desktop.day_page.plan_view import PlanView
from binder.desktop.day_page.planning import Planning, planning_of
from binder.desktop.day_page.safety_part import SafetyPart
from binder.desktop.day_page.standing import PlanSoFar, standing_of
from binder.desktop.heading_label import HeadingLabel
from binder.desktop.latest import Latest
from binder.desktop.page import Page
from binder.desktop.paper_area import PaperArea
from binder.desktop.sheet.cell import key_of
from binder.desktop.sheet.sheet_view import SheetView
from binder.desktop.spacing import space
from binder.desktop.wrapping_row import WrappingRow
from binder.figures.missing import Place
from binder.kitchen.change import Change
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from PySide6.QtGui import QHideEvent, QShowEvent

    from binder.desktop.desk import Desk
    from binder.desktop.sheet.sheet import Sheet

PLAN, BEFORE, SAFETY, CREW = "plan", "before", "safety", "crew"
"""The parts of the page."""

_SECONDS_OF_NOW = 15
"""How often the line of now is moved on."""


class DayPage(Page):
    """Follows the planning of the desk, and attends to it while it is seen."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self.planning: Planning = planning_of(desk)
        self.line = PlanLine(self)
        self.parts = Choices(
            _("Parts of the page"),
            [(PLAN, _("Plan")), (BEFORE, _("Days before")), (SAFETY, _("Safety")), (CREW, _("Crew and kitchen"))],
            self,
        )
        self.on_set = QPushButton(_("On the set"), self)
        self.on_set.setToolTip(_("The day as large as the screen, to be read from three metres"))
        self.plan = PlanView(desk, self)
        self.calendar: Latest[Calendar] = Latest()
        self._tables: dict[str, SheetView] = {}
        self._stack = QStackedWidget(self)
        self._lay_out()
        self._now = QTimer(self)
        self._now.setObjectName("now on the day page")
        self._now.setInterval(_SECONDS_OF_NOW * 1000)
        self._listen()

    def _lay_out(self) -> None:
        self._crew_area = PaperArea(self)
        for key, sheet in (
            ("shoots", DayHours()),
            ("people", CrewSheet()),
            ("appliances", KitchenSheet()),
            ("fixed_events", FixedEvents()),
        ):
            self._tables[key] = self._table(sheet, self._crew_area)
        self._crew_area.column.addStretch(1)
        self.safety = SafetyPart(self.desk, self)
        for part in (self.plan, self._before_area(), self.safety, self._crew_area):
            self._stack.addWidget(part)
        top = QHBoxLayout()
        top.setContentsMargins(0, 0, space(self, 2), 0)
        top.addWidget(self.line, 1)
        top.addWidget(self.on_set, 0, Qt.AlignmentFlag.AlignTop)
        head = WrappingRow(space(self, 2))
        for control in (self.parts, self.plan.rows, self.plan.zooms):
            head.addWidget(control)
        content = QWidget(self)
        column = QVBoxLayout(content)
        column.setContentsMargins(0, space(self, 1), 0, 0)
        column.setSpacing(space(self, 1))
        column.addLayout(top)
        column.addLayout(head)
        head.setContentsMargins(space(self, 1), 0, space(self, 2), 0)
        column.addWidget(self._stack, 1)
        self._pages = self.fill_of_a_shoot(
            content,
            _("The plan of the day says when everything starts, so that all is ready when the camera turns to it."),
        )

    def _before_area(self) -> PaperArea:
        """The days before as a list, and the way to take them along."""
        area = PaperArea(self)
        self.before = SheetView(DaysBefore(self.calendar), self.desk.make, area.paper)
        self.before.fit_rows()
        self.before.place_asked.connect(self.desk.asked)
        self.export = QPushButton(_("Export the calendar..."), area.paper)
        self.export.setToolTip(_("As a file that other calendars open; a second export moves what has moved"))
        self.export.clicked.connect(self.export_calendar)
        beside = QHBoxLayout()
        beside.setContentsMargins(space(self, 2), space(self, 2), 0, 0)
        beside.addWidget(self.export)
        beside.addStretch(1)
        area.column.addWidget(self.before)
        area.column.addLayout(beside)
        area.column.addStretch(1)
        return area

    def _table(self, sheet: Sheet, area: PaperArea) -> SheetView:
        """A table of its own under a heading."""
        view = SheetView(sheet, self.desk.make, area.paper)
        view.fit_rows()
        view.place_asked.connect(self.desk.asked)
        heading = HeadingLabel(sheet.name, 1, area.paper)
        heading.setContentsMargins(space(self, 2), space(self, 3), 0, 0)
        heading.setBuddy(view)
        area.column.addWidget(heading)
        area.column.addWidget(view)
        return view

    def _listen(self) -> None:
        self.planning.changed.connect(self._show_plan)
        self.planning.progressed.connect(self._show_share)
        self.parts.chosen.connect(self._show_part)
        self.line.change_asked.connect(self._make)
        self.line.place_asked.connect(self._follow_place)
        self.line.stop_asked.connect(self.planning.stop)
        self._now.timeout.connect(self._show_plan)
        self.on_set.clicked.connect(self._open_set)

    # Following the binder and the plan

    def refresh(self) -> None:
        sight = self.desk.sight()
        self._pages.show_filled(filled=sight.shoot is not None)
        for table in self._tables.values():
            table.show_sight(sight)
        self._show_plan()

    def _show_plan(self) -> None:
        shoot = self.desk.shoot
        if shoot is None or not self.isVisible():
            return
        planning = self.planning
        so_far = PlanSoFar(planning.answer, planning.trouble, planning.stale, planning.busy, planning.searching)
        self.line.show_standing(standing_of(self.desk.binder, shoot.id, so_far))
        self.line.progress.show_share(planning.share)
        stale = planning.stale or planning.trouble is not None
        self.plan.show_plan(self.desk.binder, planning.plan, now=planning.clock(shoot.zone), stale=stale)
        if self.parts.current == BEFORE:
            self._show_before()
        elif self.parts.current == SAFETY:
            self.safety.show_plan(planning.plan, busy=planning.busy)

    def _show_before(self) -> None:
        shoot = self.desk.shoot
        if shoot is not None:
            self.calendar.value = calendar_of(self.desk.binder, shoot.id, self.planning.plan)
            self.before.show_sight(self.desk.sight())

    def _show_share(self) -> None:
        self.line.progress.show_share(self.planning.share)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.planning.attend(self, present=True)
        self._now.start()
        self._show_plan()

    def hideEvent(self, event: QHideEvent) -> None:
        self.planning.attend(self, present=False)
        self._now.stop()
        super().hideEvent(event)

    # What is asked for

    def _make(self, change: object) -> None:
        if isinstance(change, Change):
            self.desk.make(change)

    def _follow_place(self, place: object) -> None:
        if isinstance(place, Place) and not (place.table in {"people", "appliances"} and self.go_to(place)):
            self.desk.go_to(place)

    def show_part(self, key: str) -> None:
        """Show the plan, the days before, or the crew and kitchen."""
        self.parts.choose(key)
        self._show_part(key)

    def _show_part(self, key: str) -> None:
        self._stack.setCurrentIndex([PLAN, BEFORE, SAFETY, CREW].index(key))
        for control in (self.plan.rows, self.plan.zooms):
            control.setVisible(key == PLAN)
        if key == BEFORE:
            self._show_before()
        elif key == SAFETY:
            self.safety.show_plan(self.planning.plan, busy=self.planning.busy)

    def export_calendar(self) -> bool:
        """Write the calendar of the days before to a file, once there is a plan for them."""
        self._show_before()
        if self.planning.plan is None and self.planning.busy:
            self.desk.said.emit(_("The day is still being planned: export the calendar once the plan is there."))
            return False
        return self.calendar.value is not None and export_calendar(self.desk, self.calendar.value, self)

    def _open_set(self) -> None:
        from binder.desktop.set_view.opening import open_on_set

        open_on_set(self.desk, self.window())

    def go_to(self, place: Place) -> bool:
        if place.table == "pins":
            return self._go_to_pin(place)
        if place.table == "shoots" and self.parts.current != CREW:
            return False
        table = self._tables.get(place.table)
        if table is None or self.desk.shoot is None:
            return False
        self._look_at_shoot_of(place)
        self.show_part(CREW)
        self._crew_area.ensureWidgetVisible(table)
        table.setFocus()
        first = {"people": ADD_PERSON, "appliances": ADD_APPLIANCE}.get(place.table, "")
        return table.select_key(key_of(place)) or (not place.id and table.select_key(first))

    def _look_at_shoot_of(self, place: Place) -> None:
        record = self.desk.binder.find(place.table, place.id)
        if record is not None:
            self.desk.look_at_shoot(getattr(record, "shoot", ""))

    def _go_to_pin(self, place: Place) -> bool:
        pin = self.desk.binder.pins.get(place.id)
        if pin is None:
            return False
        self.desk.look_at_shoot(pin.shoot)
        self.show_part(PLAN)
        self.plan.choose(pin.target)
        return True

    def begin(self, kind: str) -> bool:
        if kind == "calendar" and self.desk.shoot is not None:
            self.show_part(BEFORE)
            return self.export_calendar()
        begins = {"person": ("people", ADD_PERSON), "appliance": ("appliances", ADD_APPLIANCE)}
        begins["event"] = ("fixed_events", ADD_EVENT)
        if self.desk.shoot is None or kind not in begins:
            return False
        table, row = begins[kind]
        self.show_part(CREW)
        return self._tables[table].edit_key(row)

    def table(self, key: str) -> SheetView:
        """The table that edits records of `people`, `appliances`, `fixed_events` or the hours of `shoots`."""
        return self._tables[key]

    def focus_first(self) -> None:
        if self.parts.current == CREW:
            self._tables["people"].setFocus()
        elif self.parts.current == BEFORE:
            self.before.setFocus()
        elif self.parts.current == SAFETY:
            self.safety.clocks.setFocus()
        else:
            self.plan.focus_first()
