"""What must start soon, as many rows as there is room for."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtGui import QFontMetricsF, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from binder.desktop.set_view.due_row import DueRow
from binder.desktop.set_view.set_line import SetLine
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from PySide6.QtGui import QFont

    from binder.desktop.set_view.set_sight import Due

_KEYS = "123456789"


class DueList(QWidget):
    """Rows by the keys 1 to 9. What does not fit is counted at the foot; type is never made smaller for it."""

    ticked = Signal(str)
    """The key of an activity that has begun."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.rows = [DueRow(key, self) for key in _KEYS]
        for row in self.rows:
            row.clicked.connect(self._clicked)
        self.rest = SetLine(self, tone="quiet")
        self._due: tuple[Due, ...] = ()
        self._later: Due | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def show_due(self, due: tuple[Due, ...], later: Due | None) -> None:
        """Show what must start, and where nothing must, what is next."""
        self._due, self._later = due, later
        self._arrange()

    def wear(self, font: QFont, small: QFont, *, time_room: float) -> None:
        """Take fonts for the rows and for what does not fit; a time needs `time_room` pixels."""
        for row in self.rows:
            row.wear(font, time_room=time_room)
        self.rest.wear(small)
        self._arrange()

    def press(self, number: int) -> None:
        """Tick the row of a key, 1 for the first."""
        row = self.rows[number - 1] if 0 < number <= len(self.rows) else None
        if row is not None and row.due is not None and row.isVisibleTo(self):
            self.ticked.emit(row.due.key)

    def _clicked(self) -> None:
        sender = self.sender()
        if isinstance(sender, DueRow) and sender.due is not None:
            self.ticked.emit(sender.due.key)

    def _arrange(self) -> None:
        tall = self.rows[0].sizeHint().height()
        rest = round(QFontMetricsF(self.rest.font()).height())
        room = max(1, self.height() // max(1, tall))
        if len(self._due) > room:
            room = max(1, (self.height() - rest) // max(1, tall))
        shown = self._due[: min(room, len(self.rows))]
        for at, row in enumerate(self.rows):
            row.show_due(shown[at] if at < len(shown) else None)
            row.setGeometry(0, at * tall, self.width(), tall)
        self.rest.setGeometry(0, len(shown) * tall, self.width(), rest)
        self.rest.say(self._rest_text(len(self._due) - len(shown)))

    def _rest_text(self, more: int) -> str:
        if more:
            return ngettext("and {count} more", "and {count} more", more).format(count=more)
        if not self._due and self._later is not None:
            says = _("Nothing to start until {time}: {what}")
            return says.format(time=self._later.clock, what=self._later.what)
        return "" if self._due else _("Nothing more to start")

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._arrange()
