"""Find an action or a place: type a few letters, press Enter. Lists every action with its keys, and every place."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QKeyEvent, QKeySequence
from PySide6.QtWidgets import QAbstractItemView, QDialog, QLineEdit, QVBoxLayout, QWidget

from binder.desktop.actions import without_access_key
from binder.desktop.finder import Found, find
from binder.desktop.sheet.cell import Cell, Column, Row, Tone
from binder.desktop.sheet.sheet import PlainSheet
from binder.desktop.sheet.sheet_view import SheetView
from binder.desktop.spacing import characters, space
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.action_set import ActionSet
    from binder.desktop.desk import Desk
    from binder.desktop.sheet.sheet import Sight


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


class OffersSheet(PlainSheet):
    """What is offered for the words that are the subject, a row each."""

    def __init__(self, actions: ActionSet, desk: Desk) -> None:
        self._actions, self._desk = actions, desk
        self.listed: list[Offer] = []

    @property
    def name(self) -> str:
        return _("Actions and places")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (Column("title", "", characters=36, stretch=3), Column("hint", "", characters=16, stretch=1))

    def rows(self, sight: Sight) -> list[Row]:
        self.listed = offers(self._actions, self._desk, sight.subject or "")
        return [
            Row(str(number), (Cell(offer.title), Cell(offer.hint, tone=Tone.QUIET)))
            for number, offer in enumerate(self.listed)
        ]


class ActionFinder(QDialog):
    """A list that grows shorter while it is typed."""

    def __init__(self, actions: ActionSet, desk: Desk, parent: QWidget) -> None:
        super().__init__(parent)
        self._actions, self._desk = actions, desk
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(_("Find an action or a place"))
        self.field = QLineEdit(self)
        self.field.setPlaceholderText(_("What to do, or where to go"))
        self.field.setAccessibleName(_("What to do, or where to go"))
        self._sheet = OffersSheet(actions, desk)
        self.list = SheetView(self._sheet, desk.make, self)
        self.list.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.list.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        layout = QVBoxLayout(self)
        margin = space(self, 3)
        layout.setContentsMargins(margin, margin, margin, margin)
        layout.setSpacing(margin)
        layout.addWidget(self.field)
        layout.addWidget(self.list, 1)
        self.resize(characters(self.font(), 78), space(self, 100))
        self.field.textChanged.connect(self._look)
        self.field.installEventFilter(self)
        self.list.row_entered.connect(self.take)
        self._look()

    def _look(self) -> None:
        self.list.show_sight(self._desk.sight(self.field.text()))
        self._go_to(0)

    def _go_to(self, at: int) -> None:
        if self._sheet.listed:
            self.list.select_key(str(max(0, min(at, len(self._sheet.listed) - 1))))

    def take(self) -> None:
        """Do, or go to, what is chosen."""
        row = self.list.current_row()
        if row is None:
            return
        offer = self._sheet.listed[int(row.key)]
        self.accept()
        if offer.found is not None:
            self._desk.go_to(offer.found.place)
        else:
            self._actions.run(offer.action)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if watched is self.field and event.type() == QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
            if event.key() in {Qt.Key.Key_Down, Qt.Key.Key_Up}:
                self._go_to(self.list.currentIndex().row() + (1 if event.key() == Qt.Key.Key_Down else -1))
                return True
            if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
                self.take()
                return True
        return super().eventFilter(watched, event)
