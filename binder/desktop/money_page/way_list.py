"""Changes that would each mend a thing, one under the other: what it does, and a button that tries it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QLabel, QPushButton, QToolButton, QVBoxLayout, QWidget

from binder.desktop.spacing import space
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Sequence

_SHOWN = 3


@dataclass(frozen=True)
class Way:
    """A sentence that says what a change does, and what it is by for whoever hears of the button."""

    says: str
    key: int


class WayList(QWidget):
    """A title, the first ways, and the others on demand. `asked` carries the key of the way to try."""

    asked = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._ways: tuple[Way, ...] = ()
        self._unfolded = False
        self.title = QLabel(self)
        self.title.setTextFormat(Qt.TextFormat.PlainText)
        self.title.setWordWrap(True)
        self._grid = QGridLayout()
        self._grid.setHorizontalSpacing(space(self, 3))
        self._grid.setVerticalSpacing(space(self, 1))
        self._grid.setColumnStretch(1, 1)
        self.more = QToolButton(self)
        self.more.clicked.connect(self._unfold)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(space(self, 2), space(self, 1.5), space(self, 2), space(self, 1))
        layout.setSpacing(space(self, 1.5))
        layout.addWidget(self.title)
        layout.addLayout(self._grid)
        layout.addWidget(self.more)
        self.show_ways("", ())

    @property
    def buttons(self) -> list[QPushButton]:
        """The buttons, from the top."""
        return [button for button, _label in self._rows()]

    @property
    def says(self) -> list[str]:
        """The sentences shown, from the top."""
        return [label.text() for _button, label in self._rows()]

    def _rows(self) -> list[tuple[QPushButton, QLabel]]:
        found = []
        for row in range(self._grid.rowCount()):
            button, label = self._grid.itemAtPosition(row, 0), self._grid.itemAtPosition(row, 1)
            pair = (button.widget() if button else None, label.widget() if label else None)
            if isinstance(pair[0], QPushButton) and isinstance(pair[1], QLabel):
                found.append((pair[0], pair[1]))
        return found

    def show_ways(self, title: str, ways: Sequence[Way], *, stale: bool = False) -> None:
        """Show ways under a title; while they are `stale` none can be tried."""
        self.title.setText(title)
        self.setVisible(bool(title))
        if tuple(ways) != self._ways:
            self._ways, self._unfolded = tuple(ways), False
            self._fill()
        for button in self.buttons:
            button.setEnabled(not stale)
            button.setToolTip(_("Being worked out again") if stale else _("One change; undo takes it back"))

    def _fill(self) -> None:
        for button, label in self._rows():
            for widget in (button, label):
                self._grid.removeWidget(widget)
                widget.hide()
                widget.deleteLater()
        shown = self._ways if self._unfolded else self._ways[:_SHOWN]
        for row, way in enumerate(shown):
            self._add(row, way)
        left = len(self._ways) - len(shown)
        self.more.setText(ngettext("{count} more way", "{count} more ways", left).format(count=left))
        self.more.setVisible(left > 0)

    def _add(self, row: int, way: Way) -> None:
        label = QLabel(way.says, self)
        label.setTextFormat(Qt.TextFormat.PlainText)
        label.setWordWrap(True)
        button = TryButton(way.key, self)
        button.setAccessibleName(_("Try it: {change}").format(change=way.says))
        button.clicked.connect(self._pressed)
        self._grid.addWidget(button, row, 0, Qt.AlignmentFlag.AlignTop)
        self._grid.addWidget(label, row, 1)
        for widget in (button, label):
            widget.show()

    def _pressed(self) -> None:
        sender = self.sender()
        if isinstance(sender, TryButton):
            self.asked.emit(sender.key)

    def _unfold(self) -> None:
        self._unfolded = True
        self._fill()
        if len(self.buttons) > _SHOWN:
            self.buttons[_SHOWN].setFocus(Qt.FocusReason.OtherFocusReason)


class TryButton(QPushButton):
    """Tries one way; `key` says which."""

    def __init__(self, key: int, parent: QWidget) -> None:
        super().__init__(_("Try it"), parent)
        self.key = key
