"""The page of money: the budget, what dishes cost beside their caps, claims, and the books after the shoot."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QWidget

from binder.desktop.money_page.books import CapsAsBought, DishBooks, FoodBooks, closing_words
from binder.desktop.money_page.budget_sheet import ADD_BUDGET_LINE, BudgetSheet
from binder.desktop.money_page.cap_part import CapPart
from binder.desktop.money_page.claim_rows import SUM
from binder.desktop.money_page.claims_sheet import ADD_CLAIM, ClaimsSheet
from binder.desktop.money_page.money_figures import (
    BudgetFigures,
    Judged,
    budget_figures,
    budget_is_quick,
    judged,
    judged_is_quick,
)
from binder.desktop.money_page.money_head import MoneyHead
from binder.desktop.money_page.parts import JumpRow, Parts
from binder.desktop.money_page.saving_menu import SavingMenu
from binder.desktop.money_page.side_part import SidePart
from binder.desktop.money_page.spend_chart import SpendChart
from binder.desktop.money_page.tax_sheet import TaxSheet
from binder.desktop.money_page.what_if_part import WhatIfPart
from binder.desktop.page import Page
from binder.desktop.paper_area import PaperArea
from binder.desktop.places import shown_record
from binder.desktop.sheet.cell import key_of
from binder.desktop.spacing import space
from binder.desktop.worked_out import WorkedOut
from binder.figures.missing import Place
from binder.figures.receipt_prices import prices_from_receipts
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.desk import Desk
    from binder.desktop.sheet.sheet_view import SheetView


class MoneyPage(Page):
    """What is typed follows the binder at once; figures too, or where they take longer than a frame, a moment later."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self._budget: WorkedOut[BudgetFigures] = WorkedOut(desk.tasks, "budget", budget_figures, budget_is_quick, self)
        self._budget.changed.connect(self._show_budget)
        self._judged: WorkedOut[Judged] = WorkedOut(desk.tasks, "judged", judged, judged_is_quick, self)
        self._judged.changed.connect(self._show_judged)
        self._area = PaperArea(self)
        self.parts = Parts(self._area, desk.make, self._follow_link)
        self.jumps = JumpRow(self._area, self._area.paper)
        self._area.column.addWidget(self.jumps)
        self.saving = SavingMenu(desk, self)
        self._make_budget()
        self.caps = CapPart(desk, self.parts, self._area.paper)
        self._claims_sheet = ClaimsSheet(self._judged.latest)
        self.claims = self.parts.table(self._claims_sheet)
        self.claims.allow_dragging()
        self.what_if = WhatIfPart(desk, self.parts, self._area.paper)
        self._make_books()
        self.beside = SidePart(desk, self.parts, self._area.paper)
        self.tax = self.parts.table(TaxSheet())
        self._area.column.addStretch(1)
        self._add_jumps()
        self._lay_out()

    def _make_budget(self) -> None:
        latest = self._budget.latest
        self.head = self.parts.table(MoneyHead(latest), title="")
        self.budget = self.parts.table(BudgetSheet(latest))
        self.budget.allow_dragging()
        self.chart = self.parts.table(SpendChart(latest))

    def _make_books(self) -> None:
        latest = self._budget.latest
        self._closing = QLabel(self._area.paper)
        self._closing.setWordWrap(True)
        self._closing.setTextFormat(Qt.TextFormat.PlainText)
        self.take_prices = QPushButton(_("Put these prices in the book"), self._area.paper)
        self.take_prices.clicked.connect(self._take_prices)
        self.to_buying = QPushButton(_("Go to buying"), self._area.paper)
        self.to_buying.clicked.connect(self._go_to_buying)
        foot = QWidget(self._area.paper)
        layout = QHBoxLayout(foot)
        layout.setContentsMargins(space(self, 2), space(self, 1.5), space(self, 2), space(self, 1))
        layout.setSpacing(space(self, 3))
        layout.addWidget(self._closing, 1)
        layout.addWidget(self.take_prices)
        layout.addWidget(self.to_buying)
        self.parts.add(foot, _("Receipts and wrap"))
        self._books_foot = foot
        self.books = [self.parts.table(kind(latest)) for kind in (DishBooks, FoodBooks, CapsAsBought)]

    def _add_jumps(self) -> None:
        words: tuple[tuple[str, QWidget, QWidget], ...] = (
            (_("Budget"), self.parts.heading(self.budget), self.budget),
            (_("Caps"), self.parts.heading(self.caps.table), self.caps.table),
            (_("Claims"), self.parts.heading(self.claims), self.claims),
            (_("What if"), self.parts.heading(self.what_if.line), self.what_if.line.field),
            (_("Receipts and wrap"), self.parts.heading(self._books_foot), self._books_foot),
            (_("Tax"), self.parts.heading(self.tax), self.tax),
        )
        for title, heading, target in words:
            self.jumps.add(title, heading, target.setFocus)
        self.jumps.put(self.saving.button)

    def _lay_out(self) -> None:
        sentence = _("Money begins with a shoot: what its food costs, what else is bought, and what may be said of it.")
        self._pages = self.fill_of_a_shoot(self._area, sentence)

    def refresh(self) -> None:
        sight = self.desk.sight()
        self._pages.show_filled(filled=sight.shoot is not None)
        self.tax.show_sight(sight)
        self._budget.follow(sight.binder, sight.shoot)
        self._judged.follow(sight.binder, sight.shoot)
        self.saving.follow()
        self.beside.refresh()
        self.what_if.refresh()

    def _show_budget(self) -> None:
        sight = self.desk.sight()
        for view in (self.head, self.budget):
            view.show_sight(sight)
        for view in (self.chart, *self.books):
            view.show_sight(sight)
            self.parts.show_filled(view)
        self._show_books()

    def _show_books(self) -> None:
        """Receipts are shown once there is one."""
        binder, shoot, figures = self.desk.binder, self.desk.shoot, self._budget.latest.value
        bought = bool(shoot is not None and binder.purchases.where("shoot", shoot.id))
        for view in self.books:
            self.parts.show(view, shown=bought and view.sheet_model.rowCount() > 0)
        self.to_buying.setVisible(not bought)
        self.take_prices.setVisible(bought)
        if not bought or shoot is None or figures is None:
            self._closing.setText(_("Tick what is bought on the page of buying, and write what was paid."))
            return
        self._closing.setText(closing_words(binder, figures.wrap))
        usable = not prices_from_receipts(binder, shoot.id).empty
        self.take_prices.setEnabled(usable)
        tip = _("One change: undo takes it back") if usable else _("The book has these prices already.")
        self.take_prices.setToolTip(tip)

    def _show_judged(self) -> None:
        self.claims.show_sight(self.desk.sight())
        self.caps.show_caps(self._judged.latest)

    # What is pressed

    def _follow_link(self, place: Place) -> None:
        if place.table == SUM:
            self._claims_sheet.turn(place.id)
            self.claims.show_sight(self.desk.sight())
        elif not self.go_to(place):
            self.desk.go_to(place)

    def _take_prices(self) -> None:
        shoot = self.desk.shoot
        if shoot is not None:
            self.desk.make(prices_from_receipts(self.desk.binder, shoot.id))

    def _go_to_buying(self) -> None:
        self.desk.go_to(Place("purchases", ""))

    # Places

    def go_to(self, place: Place) -> bool:
        views: dict[str, SheetView] = {"budget_lines": self.budget, "tax_rates": self.tax, "claims": self.claims}
        view, record = views.get(place.table), self.desk.binder.find(place.table, place.id)
        if view is None:
            return False
        shoot = shown_record(self.desk.binder, place, "shoots")
        if shoot is not None:
            self.desk.look_at_shoot(shoot)
        view.setFocus()
        return record is None or view.select_key(key_of(place))

    def begin(self, kind: str) -> bool:
        if self.desk.shoot is None:
            return False
        if kind == "claim":
            return self.claims.edit_key(ADD_CLAIM)
        return kind == "budget line" and self.budget.edit_key(ADD_BUDGET_LINE)

    def focus_first(self) -> None:
        self.budget.setFocus()

    def current_dish(self) -> str | None:
        return self.caps.dish
