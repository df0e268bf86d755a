"""The plan on the page: its timeline or its list, how closely it is looked at, and the activity chosen."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QHBoxLayout, QPushButton, QStackedWidget, QVBoxLayout, QWidget

from binder.desktop.day_page.activity_line import ActivityLine
from binder.desktop.day_page.choices import Choices
from binder.desktop.day_page.day_picture import DayPicture, day_picture
from binder.desktop.day_page.pinning import pinned_to, unpinned
from binder.desktop.day_page.rows import Rows
from binder.desktop.day_page.timeline import ZOOM_STEP, Timeline
from binder.desktop.day_page.whole_list import WholeList
from binder.desktop.latest import Latest
from binder.desktop.sheet.sheet_view import SheetView
from binder.desktop.spacing import space
from binder.figures.missing import Place
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from datetime import datetime

    from binder.desktop.desk import Desk
    from binder.figures.day_plan import DayPlan
    from binder.kitchen.binder import Binder
    from binder.kitchen.day import PinTarget

LIST = "list"


class PlanView(QWidget):
    """Shows a plan that is given to it; pins are changes of the desk's binder.

    `rows` and `zooms` are controls that the page puts where it has room for them.
    """

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.latest: Latest[DayPicture] = Latest()
        self.rows = Choices(
            _("Rows of the plan"),
            [(Rows.RESOURCES.value, _("Who and what")), (Rows.DISHES.value, _("By dish")), (LIST, _("As a list"))],
            self,
        )
        self.timeline = Timeline(self)
        self.list = SheetView(WholeList(self.latest), desk.make, self)
        self.activity = ActivityLine(self)
        self.zooms = QWidget(self)
        self.farther = self._zoom_button("−", _("Look from farther away (−)"), self._look_farther)
        self.closer = self._zoom_button("+", _("Look closer (+)"), self._look_closer)
        self.whole = self._zoom_button(_("Whole"), _("Show the whole plan (0)"), self.timeline.fit)
        self._pictures = QStackedWidget(self)
        self._lay_out()
        self.rows.chosen.connect(self._show_rows)
        self.timeline.current_changed.connect(self._show_activity)
        self.timeline.pin_asked.connect(self._pin)
        self.timeline.step_asked.connect(self._open_step)
        self.activity.pin_asked.connect(self.timeline.toggle_pin)
        self.activity.shift_asked.connect(self.timeline.shift)
        self.activity.step_asked.connect(self._open_current_step)

    def _zoom_button(self, text: str, name: str, pressed: object) -> QPushButton:
        button = QPushButton(text, self.zooms)
        button.setAccessibleName(name)
        button.setToolTip(name)
        button.clicked.connect(pressed)
        return button

    def _lay_out(self) -> None:
        side = QHBoxLayout(self.zooms)
        side.setContentsMargins(0, 0, 0, 0)
        side.setSpacing(space(self, 1))
        for button in (self.farther, self.closer, self.whole):
            side.addWidget(button)
        drawn = QWidget(self)
        column = QVBoxLayout(drawn)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.timeline, 1)
        column.addWidget(self.activity)
        self._pictures.addWidget(drawn)
        self._pictures.addWidget(self.list)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self._pictures, 1)

    # What is shown

    def show_plan(self, binder: Binder, plan: DayPlan | None, *, now: datetime | None, stale: bool) -> None:
        """Show a plan for a binder that may have gone on since; no plan is an empty picture."""
        rows = Rows.RESOURCES if self.rows.current == LIST else Rows(self.rows.current)
        picture = None if plan is None else day_picture(binder, plan, rows, now=now, stale=stale)
        if picture == self.latest.value and stale == self.latest.stale:
            return
        self.latest.value, self.latest.stale = picture, stale
        self.timeline.show_picture(picture)
        if self.rows.current == LIST:
            self.list.show_sight(self._desk.sight())
        self._show_activity()

    def _show_rows(self, key: str) -> None:
        self._pictures.setCurrentIndex(1 if key == LIST else 0)
        self.zooms.setEnabled(key != LIST)
        picture = self.latest.value
        if key == LIST:
            self.list.show_sight(self._desk.sight())
        elif picture is not None:
            self._draw_again(picture, Rows(key))

    def _draw_again(self, picture: DayPicture, rows: Rows) -> None:
        now = None if picture.now is None else picture.wall(picture.now)
        self.latest.value = day_picture(picture.binder, picture.plan, rows, now=now, stale=picture.stale)
        self.timeline.show_picture(self.latest.value)
        self._show_activity()

    def _show_activity(self) -> None:
        self.activity.show_activity(self.latest.value, self.timeline.current)

    def choose(self, target: PinTarget) -> None:
        """Make the activity that a pin is on the current one."""
        picture = self.latest.value
        bar = next((bar for bar in picture.bars.values() if bar.target == target), None) if picture else None
        if bar is not None:
            self.timeline.choose(bar.key)
            self.focus_first()

    def focus_first(self) -> None:
        """Take the keyboard to the plan."""
        (self.list if self.rows.current == LIST else self.timeline).setFocus()

    # What is asked for

    def _pin(self, key: str, minute: object) -> None:
        picture = self.latest.value
        bar = picture.bars.get(key) if picture is not None else None
        if picture is None or bar is None:
            return
        binder = self._desk.binder
        if isinstance(minute, int):
            self._desk.make(pinned_to(binder, picture, bar, minute))
        else:
            self._desk.make(unpinned(binder, picture, bar))

    def _open_current_step(self) -> None:
        bar = self.timeline.current
        if bar is not None:
            self._open_step(bar.key)

    def _open_step(self, key: str) -> None:
        picture = self.latest.value
        bar = picture.bars.get(key) if picture is not None else None
        if bar is not None and bar.activity.step is not None:
            self._desk.go_to(Place("steps", bar.activity.step))
        elif bar is not None and bar.activity.conversion is not None:
            self._desk.go_to(Place("conversions", bar.activity.conversion))

    def _look_closer(self) -> None:
        self.timeline.zoom(ZOOM_STEP)

    def _look_farther(self) -> None:
        self.timeline.zoom(1 / ZOOM_STEP)
