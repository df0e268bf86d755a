"""What is done from close by: say how late the day runs and plan on, take a tick back, leave the full screen."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLabel, QPushButton, QVBoxLayout, QWidget

from binder.desktop.spacing import space
from binder.desktop.wrapping_row import WrappingRow
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtGui import QFont

_STEP = 5
_MOST = 180
"""Minutes: a day that runs later than this is another day."""


class LateControl(QWidget):
    """Minutes in fives; nothing is planned until it is asked for."""

    plan_asked = Signal(float)
    """Plan on, so many minutes late."""
    on_time_asked = Signal()
    """Go back to the plan before."""
    undo_asked = Signal()
    full_screen_asked = Signal()
    close_asked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.minutes = 0
        self.says, self.near = QLabel(self), QLabel(self)
        self.earlier = self._button(_("−5 min"), self.less, _("Less late (-)"))
        self.later = self._button(_("+5 min"), self.more, _("Later (+)"))
        self.plan = self._button("", self.ask, _("What has not begun is shifted and planned anew (L)"))
        self.on_time = self._button(_("Back to the plan before"), self.on_time_asked.emit, "")
        self.take_back = self._button(_("Undo"), self.undo_asked.emit, _("Take the last tick back (Ctrl+Z)"))
        self.whole = self._button(_("Full screen"), self.full_screen_asked.emit, "F11")
        self.leave = self._button(_("Close"), self.close_asked.emit, "Esc")
        for label in (self.says, self.near):
            label.setMinimumHeight(space(self, 10))
        row = WrappingRow(space(self, 2))
        for one in (
            self.says,
            self.earlier,
            self.later,
            self.plan,
            self.on_time,
            self.take_back,
            self.whole,
            self.leave,
            self.near,
        ):
            row.addWidget(one)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addLayout(row)
        self._show()
        self.show_state(busy=False, is_late=False)

    def _button(self, title: str, pressed: Callable[[], object], tip: str) -> QPushButton:
        button = QPushButton(title, self)
        button.setToolTip(tip)
        button.setMinimumHeight(space(self, 10))
        button.clicked.connect(pressed)
        return button

    def say_metres(self, metres: float | None) -> None:
        """Say from where the screen is read, where that is nearer than it should be."""
        says = "" if metres is None else _("read from {metres} m on this screen").format(metres=f"{metres:.1f}")
        self.near.setText(says)
        self.near.setVisible(bool(says))

    def wear(self, font: QFont) -> None:
        """Take a font."""
        for one in (self.says, self.near, *self.findChildren(QPushButton)):
            one.setFont(font)

    def show_state(self, *, busy: bool, is_late: bool) -> None:
        """Say whether a plan is being looked for, and whether there is one from before the day ran late."""
        self.on_time.setVisible(is_late)
        self.says.setText(_("being planned") if busy else "")
        self.says.setVisible(busy)

    def more(self) -> None:
        """Five minutes later."""
        self.minutes = min(_MOST, self.minutes + _STEP)
        self._show()

    def less(self) -> None:
        """Five minutes less late."""
        self.minutes = max(0, self.minutes - _STEP)
        self._show()

    def ask(self) -> None:
        """Plan on with what was said."""
        if self.minutes:
            self.plan_asked.emit(float(self.minutes))
            self.minutes = 0
            self._show()

    def _show(self) -> None:
        self.plan.setText(_("Running {minutes} min late: plan on").format(minutes=self.minutes))
        self.plan.setEnabled(self.minutes > 0)
        self.earlier.setEnabled(self.minutes > 0)
