"""The field that finds anything and goes there."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLineEdit, QWidget

from binder.desktop.finder import Found, find
from binder.desktop.sheet.editor_note import EditorNote
from binder.desktop.spacing import characters
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.desk import Desk


class FinderField(QLineEdit):
    """Lists what has the words typed; Enter goes to the one chosen, F3 to the next."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._note: EditorNote | None = None
        self._found: list[Found] = []
        self._at = -1
        self.setPlaceholderText(_("Find a dish, a food, a word"))
        self.setAccessibleName(_("Find anything"))
        self.setClearButtonEnabled(True)
        self.setMinimumWidth(characters(self.font(), 30))
        self.textEdited.connect(self._look)
        self.installEventFilter(self)

    @property
    def found(self) -> list[Found]:
        """What the words last typed were found in."""
        return self._found

    def go_next(self) -> None:
        """Go to the next thing found, from the last to the first."""
        if self._found:
            self._go((self._at + 1) % len(self._found))

    def _look(self) -> None:
        self._found, self._at = find(self._desk.binder, self.text()), -1
        says = "" if self._found or not self.text().strip() else _("Nothing has these words.")
        self._list().show_note(says, [f"{found.title}  –  {found.kind}" for found in self._found])

    def _list(self) -> EditorNote:
        if self._note is None:
            self._note = EditorNote(self, least=64.0)
            self._note.chosen.connect(self._go_chosen)
        return self._note

    def _go_chosen(self, at: object) -> None:
        if isinstance(at, int):
            self._go(at)

    def _go(self, at: int) -> None:
        self._at = at
        self._list().hide()
        self._desk.go_to(self._found[at].place)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if watched is self and event.type() == QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
            return self._key(event.key())
        if watched is self and event.type() == QEvent.Type.FocusOut and self._note is not None:
            self._note.hide()
        return super().eventFilter(watched, event)

    def _key(self, key: int) -> bool:
        note = self._list()
        if key in {Qt.Key.Key_Down, Qt.Key.Key_Up}:
            return note.step(1 if key == Qt.Key.Key_Down else -1)
        if key in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            if self._found:
                self._go(note.current() or 0)
            return True
        if key == Qt.Key.Key_Escape:
            note.hide()
            self.clear()
            self._found = []
            return True
        return False
