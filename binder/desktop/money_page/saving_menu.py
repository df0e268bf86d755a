"""What of the money is kept on paper or in a spreadsheet: the budget, the claims, the wrap report."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QMenu, QPushButton, QWidget

from binder.desktop.file_doings import file_stem
from binder.desktop.saver import PDF, WORKBOOK, Saver
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtGui import QAction

    from binder.desktop.desk import Desk
    from binder.kitchen.binder import Binder

BUDGET, CLAIMS, WRAP = "budget", "claims", "wrap"
"""The sheets, by the words of the print set."""


class SavingMenu(QObject):
    """A button with a word for each sheet; those that would say nothing yet cannot be chosen."""

    def __init__(self, desk: Desk, parent: QWidget) -> None:
        super().__init__(parent)
        self._desk = desk
        self._savers = {sheet: Saver(desk, f"the {sheet}", parent) for sheet in (BUDGET, CLAIMS, WRAP)}
        self.button = QPushButton(_("Save as a file"), parent)
        menu = QMenu(self.button)
        self.actions: dict[str, QAction] = {
            BUDGET: menu.addAction(_("The &budget..."), self.save_budget),
            CLAIMS: menu.addAction(_("The &claims with their sums..."), self.save_claims),
            WRAP: menu.addAction(_("The &wrap report..."), self.save_wrap),
        }
        self.button.setMenu(menu)

    def follow(self) -> None:
        """Offer what the shoot has."""
        binder, shoot = self._desk.binder, self._desk.shoot
        has = {
            BUDGET: shoot is not None,
            CLAIMS: shoot is not None and bool(binder.claims.where("shoot", shoot.id)),
            WRAP: shoot is not None and bool(binder.purchases.where("shoot", shoot.id)),
        }
        for sheet, action in self.actions.items():
            action.setEnabled(has[sheet])

    def save_budget(self) -> None:
        """Ask where to write the budget, and write it."""
        self._save(BUDGET, _("budget"), _("Where to write the budget"))

    def save_claims(self) -> None:
        """Ask where to write the claims, each on a page with its sum, and write them."""
        self._save(CLAIMS, _("claims"), _("Where to write the claims"))

    def save_wrap(self) -> None:
        """Ask where to write the wrap report, and write it."""
        self._save(WRAP, _("wrap report"), _("Where to write the wrap report"))

    def _save(self, sheet: str, word: str, title: str) -> None:
        shoot = self._desk.shoot
        if shoot is not None:
            stem = file_stem(f"{shoot.name} {word}")
            self._savers[sheet].save(title, stem, _makers(self._desk.binder, shoot.id, sheet))


def _makers(binder: Binder, shoot: str, sheet: str) -> dict[str, Callable[[], bytes]]:
    """What makes the bytes of each kind of file, of the binder as it is now."""

    def pdf() -> bytes:
        from binder.paper.print_set import sheet_bytes

        return sheet_bytes(binder, shoot, sheet)

    def workbook() -> bytes:
        from binder.exchange.wrap_workbook import wrap_workbook

        return wrap_workbook(binder, shoot)

    return {PDF: pdf, WORKBOOK: workbook} if sheet == WRAP else {PDF: pdf}
