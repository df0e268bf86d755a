"""The quiet line at the head of the page, what runs out, and a button for each change that would mend it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from binder.desktop.mark_label import MarkLabel
from binder.desktop.sheet.cell import Mark
from binder.desktop.spacing import space
from binder.desktop.wrapping_row import WrappingRow
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from binder.desktop.base_page.standing import Standing
    from binder.figures.base_repairs import Repair
    from binder.figures.missing import Missing

_CUTS_SHOWN = 3
"""The smallest cuts; buying more is always shown beside them."""


class StandingLine(QWidget):
    """Shows a Standing. Repairs and what is missing are buttons."""

    repair_asked = Signal(object)
    """A Repair to try."""
    place_asked = Signal(object)
    """The place where something missing is mended."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._shown: Standing | None = None
        self._unfolded = False
        self.mark = MarkLabel(self)
        self.line = _plain(QLabel(self))
        self.sentence = _plain(QLabel(self))
        self._instead = _plain(QLabel(_("Any one of these mends it:"), self))
        self._instead.setProperty("quiet", True)
        self._ways = WrappingRow(space(self, 1.5))
        head = QHBoxLayout()
        head.setSpacing(space(self, 2))
        head.addWidget(self.mark)
        head.addWidget(self.line, 1)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(space(self, 2), space(self, 1), space(self, 2), space(self, 1))
        layout.setSpacing(space(self, 1.5))
        layout.addLayout(head)
        layout.addWidget(self.sentence)
        layout.addWidget(self._instead)
        layout.addLayout(self._ways)

    def show_standing(self, standing: Standing) -> None:
        """Show how the base stands."""
        if standing == self._shown:
            return
        same = self._shown is not None and (standing.repairs, standing.missing) == (
            self._shown.repairs,
            self._shown.missing,
        )
        self._shown = standing
        self.mark.show_mark(standing.mark)
        self.line.setText(standing.line)
        self._quieten(quiet=standing.mark is not Mark.SHORT)
        self.sentence.setText(standing.sentence)
        self.sentence.setVisible(bool(standing.sentence))
        self._instead.setVisible(bool(standing.repairs))
        if not same:
            self._fill_ways()

    def _quieten(self, *, quiet: bool) -> None:
        if self.line.property("quiet") != quiet:
            self.line.setProperty("quiet", quiet)
            self.line.style().unpolish(self.line)
            self.line.style().polish(self.line)

    @property
    def buttons(self) -> list[QPushButton]:
        """The buttons, from the top."""
        items = (self._ways.itemAt(at) for at in range(self._ways.count()))
        widgets = [item.widget() for item in items if item is not None]
        return [one for one in widgets if isinstance(one, QPushButton)]

    def _fill_ways(self) -> None:
        for button in self.buttons:
            self._ways.removeWidget(button)
            button.hide()
            button.deleteLater()
        standing = self._shown
        if standing is None:
            return
        cuts, buy = standing.repairs[:-1], standing.repairs[-1:]
        shown = cuts if self._unfolded else cuts[:_CUTS_SHOWN]
        for repair in (*shown, *buy):
            self._add_button(_without_stop(repair.says), repair)
        more = len(cuts) - len(shown)
        if more > 0:
            self._add_button(ngettext("{count} more way", "{count} more ways", more).format(count=more), None)
        for lack in standing.missing:
            self._add_button(lack.says, lack)

    def _add_button(self, title: str, leads_to: Repair | Missing | None) -> None:
        button = WayButton(title.replace("&", "&&"), leads_to, self)
        button.clicked.connect(self._pressed)
        self._ways.addWidget(button)
        button.show()

    def _pressed(self) -> None:
        sender = self.sender()
        if not isinstance(sender, WayButton):
            return
        if sender.leads_to is None:
            self._unfolded = True
            self._fill_ways()
        elif hasattr(sender.leads_to, "place"):
            self.place_asked.emit(sender.leads_to.place)
        else:
            self.repair_asked.emit(sender.leads_to)


class WayButton(QPushButton):
    """A button that knows what it is for: a repair, something missing, or showing more."""

    def __init__(self, title: str, leads_to: Repair | Missing | None, parent: QWidget) -> None:
        super().__init__(title, parent)
        self.leads_to = leads_to


def _plain(label: QLabel) -> QLabel:
    label.setTextFormat(Qt.TextFormat.PlainText)
    label.setWordWrap(True)
    return label


def _without_stop(sentence: str) -> str:
    """A sentence as a button's title."""
    return sentence.removesuffix(".")
