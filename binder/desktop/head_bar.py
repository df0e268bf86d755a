"""The head of the window: which shoot, when, and the field that finds anything."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QComboBox, QHBoxLayout, QLabel, QSizePolicy, QWidget

from binder.desktop.finder_field import FinderField
from binder.desktop.heading_label import HeadingLabel
from binder.desktop.spacing import space
from binder.desktop.words.figure_text import clock_text, date_text
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.desk import Desk
    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Shoot


def when_text(binder: Binder, shoot: Shoot) -> str:
    """The date and the call time of a shoot, as far as they are set."""
    call = _("call {time}").format(time=clock_text(binder, shoot.call)) if shoot.call else ""
    return "  ·  ".join(part for part in (date_text(binder, shoot.on), call) if part) or _("no date yet")


class HeadBar(QWidget):
    """Shows the shoot looked at; where the binder has several, its name is a list to choose from."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._name = HeadingLabel("", 2, self)
        self.chooser = QComboBox(self)
        self.chooser.setAccessibleName(_("Shoot"))
        self.chooser.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToContents)
        self.chooser.activated.connect(self._choose)
        self._when = QLabel(self)
        self._when.setProperty("quiet", True)
        self.finder = FinderField(desk, self)
        self._name.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Preferred)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(space(self, 4), space(self, 2), space(self, 2), space(self, 2))
        layout.setSpacing(space(self, 4))
        layout.addWidget(self._name)
        layout.addWidget(self.chooser)
        layout.addWidget(self._when)
        layout.addStretch(1)
        layout.addWidget(self.finder, 0)
        desk.changed.connect(self.refresh)

    @property
    def says(self) -> str:
        """What stands in the head."""
        name = self._name.text() if self._name.isVisibleTo(self) else self.chooser.currentText()
        return f"{name}, {self._when.text()}"

    def say(self, text: str) -> None:
        """Show a text until there is a binder to show."""
        self._name.setText(text)
        self._when.setText("")

    def refresh(self) -> None:
        """Show the shoot as it is now."""
        binder, shoot = self._desk.binder, self._desk.shoot
        several = len(binder.shoots) > 1
        self._name.setText(shoot.name if shoot else binder.settings.name)
        self._name.setVisible(not several)
        self.chooser.setVisible(several)
        self._fill(shoot)
        self._when.setText(when_text(binder, shoot) if shoot else _("no shoot yet"))

    def _fill(self, shoot: Shoot | None) -> None:
        shoots = sorted(self._desk.binder.shoots.values(), key=lambda one: (str(one.on or "9999"), one.name))
        wanted = [(one.name, one.id) for one in shoots]
        if wanted != [(self.chooser.itemText(at), self.chooser.itemData(at)) for at in range(self.chooser.count())]:
            self.chooser.clear()
            for name, key in wanted:
                self.chooser.addItem(name, key)
        self.chooser.setCurrentIndex(self.chooser.findData(shoot.id) if shoot else -1)

    def _choose(self) -> None:
        self._desk.look_at_shoot(str(self.chooser.currentData()))
