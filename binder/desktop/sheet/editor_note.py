"""The note under a cell that is being edited: what was understood, what is wrong, and what may be chosen instead."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QPoint, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QFrame, QLabel, QListWidget, QVBoxLayout, QWidget

from binder.desktop.spacing import characters, space
from binder.desktop.theme import tokens_for
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Sequence

_MOST_SHOWN = 9


class EditorNote(QFrame):
    """Lies over the window below an editor, `least` digits wide, and never takes the keyboard from it."""

    chosen = Signal(object)
    """The place in the list of what was offered."""

    def __init__(self, editor: QWidget, *, least: float = 44.0) -> None:
        super().__init__(editor.window())
        self._editor, self._least = editor, least
        self._wrong = False
        self._sentence = QLabel(self)
        self._sentence.setWordWrap(True)
        self._sentence.setTextFormat(Qt.TextFormat.PlainText)
        self._offers = QListWidget(self)
        self._offers.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._offers.setAccessibleName(_("Choices"))
        self._offers.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._offers.itemClicked.connect(self._take)
        self._column = layout = QVBoxLayout(self)
        layout.setContentsMargins(space(self, 2), space(self, 1.5), space(self, 2), space(self, 1.5))
        layout.addWidget(self._sentence)
        layout.addWidget(self._offers)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.hide()

    @property
    def says(self) -> str:
        """The sentence shown."""
        return self._sentence.text() if not self.isHidden() else ""

    @property
    def offers(self) -> list[str]:
        """The titles offered."""
        return [self._offers.item(at).text() for at in range(self._offers.count())]

    def show_note(self, sentence: str, offers: Sequence[str], *, wrong: bool = False) -> None:
        """Show a sentence and what may be chosen; hide where there is neither."""
        self._wrong = wrong
        token = "stop" if wrong else "quiet"
        self._sentence.setStyleSheet(f"color: {getattr(tokens_for(self.palette()), token)};")
        self._sentence.setText(sentence)
        self._sentence.setVisible(bool(sentence))
        if self.offers != list(offers):
            self._offers.clear()
            self._offers.addItems(list(offers))
        self._offers.setVisible(bool(offers))
        self.setVisible(bool(sentence or offers))
        if self.isVisible():
            self._place()

    def _place(self) -> None:
        window = self.window()
        rows = min(self._offers.count(), _MOST_SHOWN)
        self._offers.setFixedHeight(max(1, rows * max(1, self._offers.sizeHintForRow(0)) + 4))
        width = max(self._editor.width(), characters(self.font(), self._least))
        self.setFixedWidth(min(width, window.width() - space(self, 4)))
        self._column.activate()
        self.resize(self.width(), self._height())
        below = self._editor.mapTo(window, QPoint(0, self._editor.height() + 1))
        above = self._editor.mapTo(window, QPoint(0, -self.height() - 1))
        fits = below.y() + self.height() <= window.height()
        at = below if fits or above.y() < 0 else above
        self.move(max(0, min(at.x(), window.width() - self.width() - space(self, 2))), at.y())
        self.raise_()

    def _height(self) -> int:
        if self._column.hasHeightForWidth():
            return self._column.totalHeightForWidth(self.width())
        return self._column.totalSizeHint().height()

    def step(self, by: int) -> bool:
        """Go up or down in what is offered; False where nothing is."""
        count = self._offers.count()
        if not self.isVisible() or not count:
            return False
        at = self._offers.currentRow() + by
        self._offers.setCurrentRow(
            max(0, min(at, count - 1)) if self._offers.currentRow() >= 0 or by > 0 else count - 1
        )
        return True

    def current(self) -> int | None:
        """The place of the offer gone to; None where none was."""
        at = self._offers.currentRow()
        return at if self.isVisible() and at >= 0 else None

    def _take(self) -> None:
        self.chosen.emit(self._offers.currentRow())

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens = tokens_for(self.palette())
        painter = QPainter(self)
        painter.setPen(QPen(tokens.colour("stop" if self._wrong else "edge"), 1))
        painter.setBrush(tokens.colour("raised"))
        painter.drawRect(self.rect().adjusted(0, 0, -1, -1))
