"""The page of the base: how it stands, the picture of its flow, and under it the editors of all that it shows."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt

from binder.desktop.base_page.base_costs import BaseCosts
from binder.desktop.base_page.base_figures import BaseFigures, base_figures, is_quick
from binder.desktop.base_page.conversions import ADD_CONVERSION, Conversions, conversions_of
from binder.desktop.base_page.flow_picture import FlowPicture
from binder.desktop.base_page.forms import ADD_FORM, Forms, base_of
from binder.desktop.base_page.repairing import change_of_repair
from binder.desktop.base_page.standing import standing_of
from binder.desktop.base_page.standing_line import StandingLine
from binder.desktop.base_page.trial_form import TrialForm
from binder.desktop.base_page.trials import Trials
from binder.desktop.heading_label import HeadingLabel
from binder.desktop.page import Page
from binder.desktop.paper_area import PaperArea
from binder.desktop.places import shown_record
from binder.desktop.sheet.cell import key_of
from binder.desktop.sheet.sheet_view import SheetView
from binder.desktop.spacing import space
from binder.desktop.worked_out import WorkedOut
from binder.figures.base_repairs import Repair
from binder.figures.flow import Flow
from binder.figures.missing import Place
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from binder.desktop.desk import Desk
    from binder.desktop.sheet.sheet import Sheet


class BasePage(Page):
    """Editors follow the binder at once; figures too, or where they take longer than a frame, a moment later."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self._figures: WorkedOut[BaseFigures] = WorkedOut(desk.tasks, "base", base_figures, is_quick, self)
        self._figures.changed.connect(self._show)
        self._area = PaperArea(self)
        self._headings: dict[SheetView, HeadingLabel] = {}
        self.standing = StandingLine(self._area.paper)
        self.standing.repair_asked.connect(self._repair)
        self.standing.place_asked.connect(desk.asked)
        self.picture = FlowPicture(self._area.paper)
        self.picture.place_asked.connect(self._follow_picture)
        self._area.column.addWidget(self.standing)
        self._area.column.addWidget(self.picture)
        self.forms = self._part(Forms(self._figures.latest))
        self.conversions = self._part(Conversions(self._figures.latest))
        self.conversions.place_current.connect(self._choose_conversion)
        self.trials = self._part(Trials())
        self.trial_form = TrialForm(desk.make, self._area.paper)
        self._area.column.addWidget(self.trial_form)
        self.costs = self._part(BaseCosts(self._figures.latest))
        self._area.column.addStretch(1)
        sentence = _(
            "The base is the one food all dishes are made from: its forms, how they are made, and how far it goes."
        )
        self._pages = self.fill(self._area, sentence, _("Choose the base ingredient"), self._choose_base)
        self._conversion: str | None = None

    def _part(self, sheet: Sheet) -> SheetView:
        """A table of its own under a heading."""
        view = SheetView(sheet, self.desk.make, self._area.paper)
        view.fit_rows()
        view.place_asked.connect(self.desk.asked)
        heading = HeadingLabel(sheet.name, 1, self._area.paper)
        heading.setContentsMargins(space(self, 2), space(self, 4), 0, 0)
        heading.setBuddy(view)
        self._headings[view] = heading
        self._area.column.addWidget(heading)
        self._area.column.addWidget(view)
        return view

    def refresh(self) -> None:
        sight = self.desk.sight()
        base = base_of(sight)
        self._pages.show_filled(filled=base is not None)
        self._figures.follow(sight.binder, sight.shoot if base is not None else None)

    def _show(self) -> None:
        """Show the binder as it is now with the latest figures."""
        sight, latest = self.desk.sight(), self._figures.latest
        if base_of(sight) is None:
            return
        self.standing.show_standing(standing_of(sight.binder, latest.value, stale=latest.stale))
        flow = latest.value.flow if latest.value else Flow((), ())
        balance = latest.value.balance if latest.value else None
        there_is = balance.there_is if balance else None
        self.picture.show_flow(sight.binder, flow, there_is=there_is, stale=latest.stale)
        self.forms.show_sight(sight)
        self.conversions.show_sight(sight)
        self.costs.show_sight(sight)
        filled = self.costs.sheet_model.rowCount() > 0
        self.costs.setVisible(filled)
        self._headings[self.costs].setVisible(filled)
        self._show_trials()

    def _show_trials(self) -> None:
        binder, base = self.desk.binder, base_of(self.desk.sight())
        known = conversions_of(binder, base.id) if base else []
        if self._conversion not in {one.id for one in known}:
            self._conversion = known[0].id if known else None
        conversion = binder.conversions[self._conversion] if self._conversion else None
        self.trials.show_sight(self.desk.sight(self._conversion))
        heading = self._headings[self.trials]
        heading.setText(_("Trials of {conversion}").format(conversion=conversion.name) if conversion else "")
        heading.setVisible(conversion is not None)
        self.trials.setVisible(self.trials.sheet_model.rowCount() > 0)
        self.trial_form.show_conversion(binder, conversion)

    def _choose_conversion(self, place: object) -> None:
        """The trials shown are those of the conversion whose row is the current one."""
        key = shown_record(self.desk.binder, place, "conversions") if isinstance(place, Place) else None
        if key is not None and key != self._conversion:
            self._conversion = key
            self._show_trials()

    def _repair(self, repair: object) -> None:
        shoot = self.desk.shoot
        if isinstance(repair, Repair) and shoot is not None:
            self.desk.make(change_of_repair(self.desk.binder, shoot.id, repair))

    def _follow_picture(self, place: object) -> None:
        """A form leads to its row below, a dish to its place in the running order."""
        if isinstance(place, Place) and not self.go_to(place):
            self.desk.go_to(place)

    def _choose_base(self) -> None:
        shoot = self.desk.shoot
        self.desk.go_to(Place("shoots", shoot.id if shoot else ""))

    def go_to(self, place: Place) -> bool:
        binder = self.desk.binder
        if place.table == "foods" and self.forms.select_key(key_of(place)):
            self.forms.setFocus()
            return True
        if place.table in {"trials", "trial_outcomes"}:
            return self._go_to_trial(place)
        conversion = shown_record(binder, place, "conversions")
        if conversion is None:
            return False
        if not self._looks_at(conversion):
            self.desk.go_to(Place("foods", binder.conversions[conversion].takes))
            return True
        self.conversions.setFocus()
        return self.conversions.select_key(key_of(place)) or self.conversions.select_key(f"conversions:{conversion}")

    def _looks_at(self, conversion: str) -> bool:
        """Look at a shoot whose base a conversion belongs to; False where none has it."""
        binder = self.desk.binder
        takes = binder.conversions[conversion].takes
        base = binder.foods[takes].form_of or takes
        shoot = self.desk.shoot
        if shoot is not None and shoot.base == base:
            return True
        others = binder.shoots.where("base", base)
        if others:
            self.desk.look_at_shoot(others[0].id)
        return bool(others)

    def _go_to_trial(self, place: Place) -> bool:
        trial = shown_record(self.desk.binder, place, "trials")
        if trial is None or not self._looks_at(self.desk.binder.trials[trial].conversion):
            return False
        self._choose_conversion(Place("conversions", self.desk.binder.trials[trial].conversion))
        self.trials.setFocus()
        return self.trials.select_key(key_of(Place("trials", trial)))

    def begin(self, kind: str) -> bool:
        if base_of(self.desk.sight()) is None:
            return False
        if kind == "form":
            return self.forms.edit_key(ADD_FORM)
        if kind == "conversion":
            return self.conversions.edit_key(ADD_CONVERSION)
        if kind == "trial" and self.trial_form.isVisibleTo(self):
            self._area.ensureWidgetVisible(self.trial_form)
            self.trial_form.taken.setFocus(Qt.FocusReason.OtherFocusReason)
            return True
        return False

    def focus_first(self) -> None:
        self.forms.setFocus()
