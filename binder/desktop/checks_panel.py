"""The checks at the right of the window: always in sight, folded or not, each leading to its place."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QHBoxLayout,
    QSizePolicy,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from binder.desktop.checks_sheet import ChecksSheet
from binder.desktop.heading_label import HeadingLabel
from binder.desktop.pictures.state_mark import draw_mark
from binder.desktop.sheet.cell import Mark
from binder.desktop.sheet.sheet_view import SheetView
from binder.desktop.spacing import characters, space
from binder.desktop.theme import tokens_for
from binder.figures.checks import Check, Severity
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from binder.desktop.desk import Desk
    from binder.desktop.sheet.sheet import Sight


class ChecksPanel(QWidget):
    """A list of sentences with a head that folds it away to a narrow tally."""

    folded = Signal(bool)

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.sheet = SheetView(ChecksSheet(self._latest), desk.make, self)
        self.sheet.setProperty("lies", "ground")
        self.sheet.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.sheet.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.sheet.row_entered.connect(self._go)
        self._title = HeadingLabel(_("Checks"), 1, self)
        self._title.setBuddy(self.sheet)
        self._fold = QToolButton(self)
        self._fold.setText("»")
        self._fold.setAccessibleName(_("Fold the checks away"))
        self._fold.setToolTip(_("Fold the checks away"))
        self._fold.clicked.connect(self._fold_away)
        self._head = QWidget(self)
        head = QHBoxLayout(self._head)
        head.setContentsMargins(space(self, 2), space(self, 2), space(self, 1), space(self, 1))
        head.addWidget(self._title, 1)
        head.addWidget(self._fold)
        self.tally = Tally(self)
        self.tally.clicked.connect(self._unfold)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        layout.addWidget(self._head)
        layout.addWidget(self.sheet, 1)
        layout.addWidget(self.tally, 1)
        self.set_folded(folded=False)
        desk.checks.changed.connect(self.refresh)

    def _latest(self, _sight: Sight) -> tuple[Check, ...] | None:
        """The latest checks; where they take long, those of a moment ago, or None before the first."""
        return self._desk.checks.latest.value

    def refresh(self) -> None:
        """Show the latest checks."""
        sight = self._desk.sight()
        self.sheet.show_sight(sight)
        found = self._latest(sight)
        if found is None and sight.shoot:
            self.tally.wait()
            return
        found = found or ()
        self.tally.count(
            sum(check.severity is Severity.STOP for check in found),
            sum(check.severity is Severity.WARN for check in found),
        )

    def set_folded(self, *, folded: bool) -> None:
        """Fold the list away, or out."""
        self.is_folded = folded
        self._head.setVisible(not folded)
        self.sheet.setVisible(not folded)
        self.tally.setVisible(folded)
        width = self.tally.sizeHint().width() if folded else characters(self.font(), 44)
        self.setFixedWidth(width)

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange:
            self.set_folded(folded=self.is_folded)

    def next_check(self) -> None:
        """Go to the check after the current one, from the last to the first."""
        model = self.sheet.sheet_model
        count = model.rowCount()
        start = self.sheet.currentIndex().row()
        for offset in range(1, count + 1):
            row = model.row_at((start + offset) % count)
            if row.place is not None:
                self.sheet.select_key(row.key)
                self._go(row.place)
                return

    def _go(self, place: object) -> None:
        if place is not None:
            self._desk.asked.emit(place)

    def _fold_away(self) -> None:
        self.folded.emit(True)

    def _unfold(self) -> None:
        self.folded.emit(False)


class Tally(QAbstractButton):
    """What is left of the checks when they are folded away: a mark and a number for each severity."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._counts: list[tuple[Mark, int]] = []
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Expanding)
        self.count(0, 0)

    def count(self, stops: int, warns: int) -> None:
        """Show how many checks stop the shoot, and how many want a look."""
        self._counts = [(Mark.OVER, stops), (Mark.WARN, warns)]
        says = ngettext("{count} check needs you", "{count} checks need you", stops + warns).format(count=stops + warns)
        self.setAccessibleName(_("Show the checks: {says}").format(says=says))
        self.setToolTip(says)
        self.update()

    def wait(self) -> None:
        """Show nothing yet."""
        self._counts = []
        says = _("being worked out")
        self.setAccessibleName(_("Show the checks: {says}").format(says=says))
        self.setToolTip(says)
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(space(self, 9), space(self, 20))

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens, painter = tokens_for(self.palette()), QPainter(self)
        top, side = space(self, 4), space(self, 3)
        painter.setPen(tokens.colour("quiet"))
        painter.drawText(QRectF(0, top, self.width(), space(self, 5)), int(Qt.AlignmentFlag.AlignHCenter), "«")
        top += space(self, 7)
        for mark, number in self._counts:
            shown = mark if number else Mark.WITHIN
            if number or mark is Mark.OVER:
                draw_mark(painter, QRectF((self.width() - side) / 2, top, side, side), shown, tokens)
                painter.setPen(tokens.colour("ink"))
                painter.drawText(
                    QRectF(0, top + side, self.width(), space(self, 5)), int(Qt.AlignmentFlag.AlignHCenter), str(number)
                )
                top += space(self, 10)
        if self.hasFocus():
            painter.setPen(tokens.colour("accent"))
            painter.drawRect(self.rect().adjusted(1, 1, -2, -2))
