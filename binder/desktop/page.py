"""What every page is: it shows the binder, can be led to a record, and begins new records."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QWidget

from binder.desktop.sheet.sheet_view import SheetView

if TYPE_CHECKING:
    from PySide6.QtGui import QShowEvent

    from binder.desktop.desk import Desk
    from binder.figures.missing import Place
    from binder.kitchen.change import Change


class Page(QWidget):
    """A page behind a divider. It follows the binder while it is seen, and catches up when it is shown again."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self._behind = True
        desk.changed.connect(self._changed)

    def refresh(self) -> None:
        """Show the binder as it is now."""
        raise NotImplementedError

    def go_to(self, place: Place) -> bool:
        """Bring a record into sight and select it; False where this page does not show it."""
        return False

    def look_at(self, change: Change, place: Place) -> bool:
        """Bring what a change made different into sight, `place` its record; False where this page does not show it."""
        return self.go_to(place)

    def begin(self, kind: str) -> bool:
        """Begin a new record of a kind (`dish`, `line`) where it is typed; False where this page has none such."""
        return False

    def focus_first(self) -> None:
        """Take the keyboard to where work on this page begins."""
        sheets = self.findChildren(SheetView)
        if sheets:
            sheets[0].setFocus()

    def current_dish(self) -> str | None:
        """The dish chosen on this page."""
        return None

    def catch_up(self) -> None:
        """Follow the binder if it has gone on while the page was not seen."""
        if self._behind:
            self._behind = False
            self.refresh()

    def _changed(self) -> None:
        if self.isVisible():
            self.refresh()
        else:
            self._behind = True

    def showEvent(self, event: QShowEvent) -> None:
        self.catch_up()
        super().showEvent(event)
