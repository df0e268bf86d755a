"""Qt's actions, made from the declared ones: titles, shortcuts, enablement with its reason, and what each does."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtGui import QAction, QActionGroup, QKeySequence

from binder.desktop.actions import Action, Needs, every_action, reason, without_access_key

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from PySide6.QtWidgets import QWidget


def key_sequences(action: Action) -> list[QKeySequence]:
    """The shortcuts of an action: the platform's where it has any, else the keys named; and those beside."""
    beside = [QKeySequence(keys) for keys in action.also]
    return list(dict.fromkeys([*_first_keys(action), *beside]))


def _first_keys(action: Action) -> list[QKeySequence]:
    for keys in action.keys:
        standard = getattr(QKeySequence.StandardKey, keys, None)
        if standard is not None:
            bound = QKeySequence.keyBindings(standard)
            if bound:
                return list(bound)
        else:
            return [QKeySequence(keys)]
    return []


class ActionSet(QObject):
    """All actions by id, on a window."""

    def __init__(
        self,
        window: QWidget,
        handlers: Mapping[str, Callable[[], object]],
        attempt: Callable[[Callable[[], object]], bool],
    ) -> None:
        super().__init__(window)
        self._window, self._handlers, self._attempt = window, dict(handlers), attempt
        self._declared: dict[str, Action] = {}
        self._actions: dict[str, QAction] = {}
        self._groups: dict[str, QActionGroup] = {}
        for action in every_action():
            self.add(action)

    def add(self, action: Action, handler: Callable[[], object] | None = None) -> QAction:
        """Make Qt's action of a declared one; `handler` for one that is not declared in advance."""
        made = QAction(action.title, self._window)
        made.setObjectName(action.id)
        made.setShortcuts(key_sequences(action))
        made.setCheckable(action.ticks or bool(action.choice))
        made.setStatusTip(action.says)
        if handler is not None:
            self._handlers[action.id] = handler
        if action.choice:
            self._group(action.choice).addAction(made)
        made.triggered.connect(self._triggered)
        self._window.addAction(made)
        self._declared[action.id], self._actions[action.id] = action, made
        return made

    def remove(self, key: str) -> None:
        """Take an action away."""
        made = self._actions.pop(key, None)
        self._declared.pop(key, None)
        if made is not None:
            self._window.removeAction(made)
            made.deleteLater()

    def _group(self, name: str) -> QActionGroup:
        if name not in self._groups:
            self._groups[name] = QActionGroup(self)
        return self._groups[name]

    def _triggered(self) -> None:
        sender = self.sender()
        if sender is not None:
            self.run(sender.objectName())

    def run(self, key: str) -> bool:
        """Do it; an error that a person can mend is said. Whether it was done."""
        return self._attempt(self._handlers[key])

    def __getitem__(self, key: str) -> QAction:
        return self._actions[key]

    def declared(self) -> list[Action]:
        """The actions as declared, in order."""
        return list(self._declared.values())

    def follow(self, available: Callable[[Needs], bool]) -> None:
        """Enable what is of use now; what is not says why."""
        met = {needs: available(needs) for needs in Needs}
        for key, action in self._declared.items():
            made, usable = self._actions[key], met[action.needs]
            made.setEnabled(usable)
            tip = action.says if usable else reason(action.needs)
            made.setStatusTip(tip)
            made.setToolTip(tip or without_access_key(made.text()))

    def retitle(self, key: str, title: str) -> None:
        """Give an action another title: `Undo set price of tahini`."""
        self._actions[key].setText(title)
