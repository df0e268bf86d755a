"""The menu bar, built from the declared actions; lines part their groups."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QMenu, QMenuBar

from binder.desktop.actions import Menu, menu_title

if TYPE_CHECKING:
    from binder.desktop.action_set import ActionSet


class Menus:
    """The menus by name. `fill` builds them anew, for when actions came or went."""

    def __init__(self, bar: QMenuBar, actions: ActionSet) -> None:
        self._actions = actions
        self.menus: dict[Menu, QMenu] = {}
        for menu in Menu:
            made = QMenu(menu_title(menu), bar)
            made.setToolTipsVisible(True)
            bar.addMenu(made)
            self.menus[menu] = made
        self.fill()

    def fill(self) -> None:
        """Put every action in its menu, group by group."""
        declared = self._actions.declared()
        for menu, made in self.menus.items():
            made.clear()
            ordered = sorted((action for action in declared if action.menu is menu), key=lambda action: action.group)
            before = ordered[0].group if ordered else 0
            for action in ordered:
                if action.group != before:
                    made.addSeparator()
                before = action.group
                made.addAction(self._actions[action.id])
