"""A page that is one list worked out from the shoot, or a sentence where there is nothing on it yet."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QVBoxLayout, QWidget

from binder.desktop.empty_page import EmptyPage, FilledOrEmpty
from binder.desktop.page import Page
from binder.desktop.sheet.sheet_view import SheetView
from binder.desktop.spacing import space
from binder.figures.missing import Place
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.desk import Desk
    from binder.desktop.sheet.sheet import Sheet


class ListPage(Page):
    """Shows one table. Links lead to where its figures come from."""

    def __init__(self, desk: Desk, sheet: Sheet, sentence: str, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        content = QWidget(self)
        self.sheet = SheetView(sheet, desk.make, content)
        self.sheet.place_asked.connect(desk.asked)
        margin = space(self, 2)
        layout = QVBoxLayout(content)
        layout.setContentsMargins(margin, margin, margin, 0)
        layout.addWidget(self.sheet)
        empty = EmptyPage(sentence, _("Go to the shoot"), self)
        empty.begun.connect(self._go_to_shoot)
        self._pages = FilledOrEmpty(content, empty, self)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(self._pages)

    def refresh(self) -> None:
        self.sheet.show_sight(self.desk.sight())
        self._pages.show_filled(filled=self.sheet.sheet_model.rowCount() > 0)

    def _go_to_shoot(self) -> None:
        shoot = self.desk.shoot
        self.desk.go_to(Place("shoots", shoot.id if shoot else ""))
