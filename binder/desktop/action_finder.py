"""Find an action or a place: type a few letters, press Enter. Lists every action with its keys, and every place."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QKeyEvent, QKeySequence
from PySide6.QtWidgets import QDialog, QLineEdit, QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from binder.desktop.actions import without_access_key
from binder.desktop.finder import Found, find
from binder.desktop.spacing import characters, space
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.action_set import ActionSet
    from binder.desktop.desk import Desk


@dataclass(frozen=True)
class Offer:
    """Something to do or a place to go to."""

    title: str
    hint: str
    action: str = ""
    found: Found | None = None


def offers(actions: ActionSet, desk: Desk, words: str) -> list[Offer]:
    """Actions that can be used now and have the words, then places that have them."""
    wanted = words.casefold().split()
    usable = []
    for declared in actions.declared():
        made = actions[declared.id]
        title = without_access_key(made.text())
        if made.isEnabled() and declared.id != "palette" and all(word in title.casefold() for word in wanted):
            keys = made.shortcut().toString(QKeySequence.SequenceFormat.NativeText)
            usable.append(Offer(title, keys, action=declared.id))
    places = [Offer(found.title, found.kind, found=found) for found in find(desk.binder, words)]
    return [*usable, *places]


class ActionFinder(QDialog):
    """A list that grows shorter while it is typed."""

    def __init__(self, actions: ActionSet, desk: Desk, parent: QWidget) -> None:
        super().__init__(parent)
        self._actions, self._desk = actions, desk
        self._offers: list[Offer] = []
        self.setWindowTitle(_("Find an action or a place"))
        self.field = QLineEdit(self)
        self.field.setPlaceholderText(_("What to do, or where to go"))
        self.field.setAccessibleName(_("What to do, or where to go"))
        self.list = QListWidget(self)
        self.list.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.list.setAccessibleName(_("Actions and places"))
        layout = QVBoxLayout(self)
        margin = space(self, 3)
        layout.setContentsMargins(margin, margin, margin, margin)
        layout.addWidget(self.field)
        layout.addWidget(self.list, 1)
        self.resize(characters(self.font(), 70), space(self, 100))
        self.field.textChanged.connect(self._look)
        self.field.installEventFilter(self)
        self.list.itemClicked.connect(self._take)
        self._look()

    def _look(self) -> None:
        self._offers = offers(self._actions, self._desk, self.field.text())
        self.list.clear()
        for offer in self._offers:
            self.list.addItem(QListWidgetItem(f"{offer.title}   {offer.hint}".rstrip()))
        self.list.setCurrentRow(0)

    def _take(self) -> None:
        at = self.list.currentRow()
        if not 0 <= at < len(self._offers):
            return
        offer = self._offers[at]
        self.accept()
        if offer.found is not None:
            self._desk.go_to(offer.found.place)
        else:
            self._actions.run(offer.action)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if watched is self.field and event.type() == QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
            if event.key() in {Qt.Key.Key_Down, Qt.Key.Key_Up}:
                by = 1 if event.key() == Qt.Key.Key_Down else -1
                self.list.setCurrentRow(max(0, min(self.list.currentRow() + by, self.list.count() - 1)))
                return True
            if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
                self._take()
                return True
        return super().eventFilter(watched, event)
