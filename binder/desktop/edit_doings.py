"""What the Edit menu does: undo with a look at what it changed, the clipboard, rows removed and moved."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QApplication, QLineEdit, QPlainTextEdit

from binder.desktop.places import changed_fields, place_of_change
from binder.desktop.sheet.sheet_view import SheetView
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable

    from binder.desktop.desk import Desk
    from binder.desktop.main_window import MainWindow
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change

Text = QLineEdit | QPlainTextEdit

_LARGE = 300_000
"""Characters in the journal; what is larger takes longer than anyone waits for a key to answer (measured)."""


def text_in_hand() -> Text | None:
    """The text field that has the keyboard."""
    focus = QApplication.focusWidget()
    return focus if isinstance(focus, QLineEdit | QPlainTextEdit) else None


def sheet_in_hand() -> SheetView | None:
    """The table that has the keyboard."""
    focus = QApplication.focusWidget()
    return focus if isinstance(focus, SheetView) else None


def _food_rows(binder: Binder) -> None:
    """Prices are what comes by the thousand: have their list ready."""
    from binder.desktop.larder_page.food_list import food_rows

    food_rows(binder)


class EditDoings:
    """Handlers of the Edit menu and of moving rows."""

    def __init__(self, desk: Desk, window: MainWindow) -> None:
        self._desk, self._window = desk, window

    def handlers(self) -> dict[str, Callable[[], object]]:
        """What each action does, by its id."""
        return {
            "undo": self.undo,
            "redo": self.redo,
            "cut": self.cut,
            "copy": self.copy,
            "paste": self.paste,
            "select_all": self.select_all,
            "delete": self.delete,
            "move_up": self.move_up,
            "move_down": self.move_down,
        }

    def undo(self) -> None:
        """Take the last change back and look where it was; a very large one beside the window."""
        bridge = self._desk.bridge
        if bridge.document.undo_size > _LARGE:
            bridge.undo_beside(self._desk.tasks, self._desk.say, _food_rows)
        else:
            self._look_at(bridge.undo())

    def redo(self) -> None:
        """Do it again and look where it is."""
        bridge = self._desk.bridge
        if bridge.document.redo_size > _LARGE:
            bridge.redo_beside(self._desk.tasks, self._desk.say, _food_rows)
        else:
            self._look_at(bridge.redo())

    def _look_at(self, change: Change | None) -> None:
        """On the page that is shown, where that shows it, else on the record's own page."""
        place = place_of_change(self._desk.binder, change) if change is not None else None
        if change is None or place is None or self._window.page(self._window.shown).look_at(change, place):
            return
        if place.table == "settings":
            self._look_at_setting(*changed_fields(change, place)[:1])
            return
        self._desk.go_to(place)
        self._window.page(self._window.shown).look_at(change, place)

    def _look_at_setting(self, field: str = "name") -> None:
        settings = self._window.view.settings_window()
        settings.open()
        settings.sheet.select_key(field, 1)

    def cut(self) -> None:
        """Take the text or the rows to the clipboard."""
        text = text_in_hand()
        if text is not None:
            text.cut()
        elif sheet_in_hand() is not None:
            self.copy()
            self.delete()

    def copy(self) -> None:
        """Copy the text, or the rows with tabs between their cells."""
        text, sheet = text_in_hand(), sheet_in_hand()
        if text is not None:
            text.copy()
        elif sheet is not None:
            QApplication.clipboard().setText(sheet.shown_text(sheet.selected_keys()))

    def paste(self) -> None:
        """Paste into the text, or type into the current cell."""
        text, sheet = text_in_hand(), sheet_in_hand()
        if text is not None:
            text.paste()
        elif sheet is not None:
            sheet.type_in(QApplication.clipboard().text())

    def select_all(self) -> None:
        """Mark all of the text, or all rows."""
        target = text_in_hand() or sheet_in_hand()
        if target is not None:
            target.selectAll()

    def delete(self) -> None:
        """Take the rows chosen out of the binder."""
        sheet = sheet_in_hand()
        if sheet is None:
            return
        model = sheet.sheet_model
        change = model.sheet.remove(model.sight, sheet.selected_keys())
        if change is None:
            self._desk.said.emit(_("These rows are worked out from others and cannot be removed here."))
        else:
            model.make(change)

    def move_up(self) -> None:
        """Move the current row up among its siblings."""
        self._move(-1)

    def move_down(self) -> None:
        """Move the current row down among its siblings."""
        self._move(1)

    def _move(self, by: int) -> None:
        sheet = sheet_in_hand()
        row = sheet.current_row() if sheet is not None else None
        if sheet is not None and row is not None:
            model = sheet.sheet_model
            model.make(model.sheet.move_by(model.sight, row.key, by))
            sheet.select_key(row.key, sheet.currentIndex().column())
