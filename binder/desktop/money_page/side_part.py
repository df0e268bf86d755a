"""Two shoots side by side: which other one, and the table; only where the binder has more than one."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QSignalBlocker
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QLabel, QWidget

from binder.desktop.money_page.side_by_side import SideBySide, Sides, others_of, sides
from binder.desktop.quick_shopping import shopping_is_quick
from binder.desktop.spacing import space
from binder.desktop.worked_out import WorkedOut
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.desk import Desk
    from binder.desktop.money_page.parts import Parts
    from binder.kitchen.binder import Binder

_BETWEEN = "\n"
"""Parts the ids of two shoots; no id holds it."""


class SidePart(QObject):
    """Hidden until there are two shoots."""

    def __init__(self, desk: Desk, parts: Parts, paper: QWidget) -> None:
        super().__init__(paper)
        self._desk, self._parts = desk, parts
        self._sides: WorkedOut[Sides] = WorkedOut(desk.tasks, "sides", _sides, _is_quick, self)
        self._sides.changed.connect(self._show)
        self.line = QWidget(paper)
        self.other = QComboBox(self.line)
        self.other.currentIndexChanged.connect(self.refresh)
        beside = QLabel(_("This shoot &beside"), self.line)
        beside.setBuddy(self.other)
        layout = QHBoxLayout(self.line)
        layout.setContentsMargins(space(paper, 2), space(paper, 1.5), space(paper, 2), space(paper, 1))
        layout.setSpacing(space(paper, 2))
        layout.addWidget(beside)
        layout.addWidget(self.other)
        layout.addStretch(1)
        sheet = SideBySide(self._sides.latest)
        parts.add(self.line, sheet.name)
        self.table = parts.table(sheet, title="")

    def refresh(self) -> None:
        """Follow the binder, and which other shoot is chosen."""
        binder, shoot = self._desk.binder, self._desk.sight().shoot
        self._offer(binder, shoot)
        other = self.other.currentData()
        shown = shoot is not None and other is not None
        self._parts.show(self.line, shown=shown)
        self.table.setVisible(shown)
        self._sides.follow(binder, f"{shoot}{_BETWEEN}{other}" if shown else None)

    def _offer(self, binder: Binder, shoot: str | None) -> None:
        """Offer the other shoots; the one chosen stays chosen."""
        others = list(others_of(binder, shoot))
        if others == [(self.other.itemData(at), self.other.itemText(at)) for at in range(self.other.count())]:
            return
        with QSignalBlocker(self.other):
            chosen = self.other.currentData()
            self.other.clear()
            for key, name in others:
                self.other.addItem(name, key)
            self.other.setCurrentIndex(max(0, self.other.findData(chosen)) if others else -1)

    def _show(self) -> None:
        self.table.show_sight(self._desk.sight())


def _sides(binder: Binder, both: str) -> Sides:
    left, _line, right = both.partition(_BETWEEN)
    return sides(binder, left, right)


def _is_quick(binder: Binder, both: str) -> bool:
    return all(shopping_is_quick(binder, shoot) for shoot in both.split(_BETWEEN))
