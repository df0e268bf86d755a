"""How the pages stand before they are printed: a line that is all well, or the faults, each leading to its page."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QGridLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from binder.desktop.cards_page.preflight_words import Verdict, fault_text
from binder.desktop.day_page.link_button import LinkButton
from binder.desktop.pictures.state_mark import draw_mark
from binder.desktop.sheet.cell import Mark
from binder.desktop.spacing import space
from binder.desktop.theme import tokens_for

if TYPE_CHECKING:
    from binder.paper.preflight import Fault


class PreflightLine(QWidget):
    """Shows a Verdict, or a sentence of why there is none."""

    page_asked = Signal(int)
    """A fault was pressed: its page, as numbered on the pages."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._mark = _MarkOfPages(self)
        self.sentence = QLabel(self)
        self.sentence.setTextFormat(Qt.TextFormat.PlainText)
        self.sentence.setWordWrap(True)
        self.sentence.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self._more = QLabel(self)
        self._more.setTextFormat(Qt.TextFormat.PlainText)
        self._more.setProperty("quiet", True)
        self.links: list[LinkButton] = []
        self._faults = QVBoxLayout()
        self._faults.setSpacing(0)
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(space(self, 1.5))
        grid.setVerticalSpacing(0)
        grid.addWidget(self._mark, 0, 0)
        grid.addWidget(self.sentence, 0, 1)
        grid.addLayout(self._faults, 1, 1)
        grid.addWidget(self._more, 2, 1)
        grid.setColumnStretch(1, 1)

    def say(self, sentence: str, mark: Mark = Mark.UNKNOWN) -> None:
        """Say something in place of a verdict: that pages are being laid out, or why they cannot be."""
        self._show(Verdict(mark, sentence))

    def show_verdict(self, verdict: Verdict) -> None:
        """Say what is wrong with which page."""
        self._show(verdict)

    def _show(self, verdict: Verdict) -> None:
        self._mark.show_mark(verdict.mark)
        self.sentence.setText(verdict.says)
        self._more.setText(verdict.more)
        self._more.setVisible(bool(verdict.more))
        if [link.leads_to for link in self.links] != list(verdict.faults):
            self._fill(verdict.faults)

    def _fill(self, faults: tuple[Fault, ...]) -> None:
        for link in self.links:
            self._faults.removeWidget(link)
            link.hide()
            link.deleteLater()
        self.links = [LinkButton(fault_text(fault), fault, self) for fault in faults]
        for link in self.links:
            link.clicked.connect(self._ask)
            self._faults.addWidget(link, 0, Qt.AlignmentFlag.AlignLeft)
            link.show()

    def _ask(self) -> None:
        sender = self.sender()
        if isinstance(sender, LinkButton):
            self.page_asked.emit(sender.leads_to.page)  # type: ignore[attr-defined]


class _MarkOfPages(QWidget):
    """A state's shape, as large as a line of text; the words beside it say the same."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._mark = Mark.NONE
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def show_mark(self, mark: Mark) -> None:
        self._mark = mark
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(space(self, 3), space(self, 4.5))

    def paintEvent(self, event: QPaintEvent) -> None:
        side = space(self, 2.5)
        box = QRectF(0, (self.height() - side) / 2, side, side)
        draw_mark(QPainter(self), box, self._mark, tokens_for(self.palette()))
