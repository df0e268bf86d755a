"""The page of the mise en place: by station, or by the hours of the day's plan."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from binder.desktop.base_page.base_figures import is_quick
from binder.desktop.day_page.choices import Choices
from binder.desktop.day_page.planning import Planning, planning_of
from binder.desktop.mise_page.mise_list import HOUR, STATION, DayTimes, MiseList, day_times
from binder.desktop.page import Page
from binder.desktop.sheet.sheet_view import SheetView
from binder.desktop.spacing import space
from binder.desktop.worked_out import WorkedOut
from binder.figures.leads import Lead, shoot_leads
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from PySide6.QtGui import QHideEvent, QShowEvent

    from binder.desktop.desk import Desk
    from binder.figures.missing import Place


class MisePage(Page):
    """By hour it follows the planning of the desk, and attends to it while it is seen so."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self.planning: Planning = planning_of(desk)
        self._times = DayTimes()
        self._leads: WorkedOut[tuple[Lead, ...]] = WorkedOut(desk.tasks, "mise leads", shoot_leads, is_quick, self)
        content = QWidget(self)
        self.order = Choices(_("Order of the list"), [(STATION, _("By station")), (HOUR, _("By hour"))], content)
        self.standing = QLabel(content)
        self.standing.setProperty("quiet", True)
        self.standing.setTextFormat(Qt.TextFormat.PlainText)
        self.standing.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.sheet = SheetView(MiseList(self._leads.latest, self._times), desk.make, content)
        self.sheet.place_asked.connect(desk.asked)
        self.order.chosen.connect(self._choose)
        self.planning.changed.connect(self._show)
        self._leads.changed.connect(self._show)
        self._lay_out(content)

    def _lay_out(self, content: QWidget) -> None:
        head = QHBoxLayout()
        head.setSpacing(space(self, 3))
        head.addWidget(self.order)
        head.addWidget(self.standing, 1)
        margin = space(self, 2)
        layout = QVBoxLayout(content)
        layout.setContentsMargins(margin, space(self, 1), margin, 0)
        layout.setSpacing(space(self, 1))
        layout.addLayout(head)
        layout.addWidget(self.sheet, 1)
        sentence = _(
            "The mise list follows from the builds of the shoot: what is washed, cut, weighed and set out, by station."
        )
        self._pages = self.fill_of_a_shoot(content, sentence)

    def refresh(self) -> None:
        shoot = self.desk.shoot
        self._leads.follow(self.desk.binder, shoot.id if shoot is not None and shoot.base is not None else None)

    def _show(self) -> None:
        """Show the binder as it is now, with the latest leads and, by hour, the latest plan."""
        plan = self.planning.plan if self.order.current == HOUR else None
        times = day_times(plan)
        self._times.starts, self._times.conversions = times.starts, times.conversions
        self.sheet.show_sight(self.desk.sight(self.order.current))
        self._pages.show_filled(filled=self.sheet.sheet_model.rowCount() > 0)
        self.standing.setText(self._standing() if self.order.current == HOUR else "")

    def _standing(self) -> str:
        """How the plan stands that the hours are taken from."""
        planning = self.planning
        if planning.plan is None:
            return _("The day is being planned.") if planning.busy else _("There is no plan: see the page of the day.")
        says = planning.plan.says()
        return _("{says} It is being worked out again.").format(says=says) if planning.stale else says

    def _choose(self, key: str) -> None:
        self.planning.attend(self, present=key == HOUR and self.isVisible())
        self._show()

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self._choose(self.order.current)

    def hideEvent(self, event: QHideEvent) -> None:
        self.planning.attend(self, present=False)
        super().hideEvent(event)

    def go_to(self, place: Place) -> bool:
        """A line stands here too, while this is the page looked at."""
        model = self.sheet.sheet_model
        rows = (model.row_at(at) for at in range(model.rowCount()))
        row = next((row for row in rows if row.place == place and place.table == "lines"), None)
        if row is None:
            return False
        self.sheet.setFocus()
        return self.sheet.select_key(row.key)

    def focus_first(self) -> None:
        self.sheet.setFocus()
