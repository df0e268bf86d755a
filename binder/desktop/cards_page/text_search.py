"""A field that finds words on the pages shown, and goes from one to the next."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QModelIndex, Qt, QTimer, Signal
from PySide6.QtPdf import QPdfSearchModel
from PySide6.QtWidgets import QHBoxLayout, QLabel, QLineEdit, QWidget

from binder.desktop.cards_page.tool_button import tool_button
from binder.desktop.spacing import characters, space
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from PySide6.QtGui import QKeyEvent

    from binder.desktop.cards_page.preview import Preview

_A_MOMENT = 150
"""Milliseconds after a letter: a word is looked for once it is typed."""


class TextSearch(QWidget):
    """Marks what it finds on the pages, and brings one after another into sight."""

    def __init__(self, preview: Preview, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._preview = preview
        self._at: int | None = None
        self.found = QPdfSearchModel(self)
        self.found.setDocument(preview.pages)
        preview.setSearchModel(self.found)
        self.field = _Field(self)
        self.field.setPlaceholderText(_("Find on these pages"))
        self.field.setAccessibleName(_("Find on these pages"))
        self.field.setClearButtonEnabled(True)
        self.field.setFixedWidth(characters(self.font(), 22))
        self.count = QLabel(self)
        self.count.setProperty("quiet", True)
        self.before = tool_button(self, "▲", _("The one before"), self.go_back)
        self.after = tool_button(self, "▼", _("The next one"), self.go_on)
        self._moment = QTimer(self)
        self._moment.setObjectName("a moment before searching pages")
        self._moment.setSingleShot(True)
        self._moment.setInterval(_A_MOMENT)
        self._moment.timeout.connect(self._search)
        self._lay_out()
        self.field.textChanged.connect(self._moment.start)
        self.field.next_asked.connect(self.go_on)
        self.field.previous_asked.connect(self.go_back)
        self.found.countChanged.connect(self._show_count)
        preview.loaded.connect(self._search_anew)
        self._show_count()

    def _lay_out(self) -> None:
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(space(self, 1))
        for widget in (self.field, self.before, self.after, self.count):
            row.addWidget(widget)

    @property
    def number(self) -> int:
        """How many times the words stand on the pages."""
        return self.found.rowCount(QModelIndex())

    def _search(self) -> None:
        self._moment.stop()
        self._at = None
        self.found.setSearchString(self.field.text().strip())
        self._show_count()

    def _search_anew(self) -> None:
        """The pages are others: what was found on the old is no longer there."""
        words = self.found.searchString()
        self._at = None
        self.found.setSearchString("")
        self.found.setSearchString(words)
        self._show_count()

    def go_on(self) -> None:
        """To the next place."""
        self._go(1)

    def go_back(self) -> None:
        """To the place before."""
        self._go(-1)

    def _go(self, by: int) -> None:
        if self._moment.isActive():
            self._search()
        if not self.number:
            return
        self._at = (self._first_here() if by > 0 else -1) if self._at is None else self._at + by
        self._at %= self.number
        self._preview.setCurrentSearchResultIndex(self._at)
        place = self.found.resultAtIndex(self._at)
        self._preview.pageNavigator().jump(place)
        self._show_count()

    def _first_here(self) -> int:
        """The first place on the page looked at or after it."""
        page = self._preview.page
        return next((at for at in range(self.number) if self.found.resultAtIndex(at).page() >= page), 0)

    def _show_count(self) -> None:
        looked_for, number = self.found.searchString(), self.number
        for button in (self.before, self.after):
            button.setEnabled(number > 0 or self._moment.isActive())
        if not looked_for:
            self.count.setText("")
        elif not number:
            self.count.setText(_("not on these pages"))
        elif self._at is None:
            self.count.setText(_("{count} times").format(count=number))
        else:
            self.count.setText(_("{at} of {count}").format(at=self._at + 1, count=number))


class _Field(QLineEdit):
    """Enter goes on, Shift+Enter back, Escape empties."""

    next_asked = Signal()
    previous_asked = Signal()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            back = event.modifiers() & Qt.KeyboardModifier.ShiftModifier
            self.previous_asked.emit() if back else self.next_asked.emit()
        elif event.key() == Qt.Key.Key_Escape and self.text():
            self.clear()
        else:
            super().keyPressEvent(event)
