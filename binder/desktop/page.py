"""What every page is: it shows the binder, can be led to a record, and begins new records."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QVBoxLayout, QWidget

from binder.desktop.empty_page import EmptyPage, FilledOrEmpty
from binder.desktop.sheet.sheet_view import SheetView
from binder.figures.missing import Place
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtGui import QShowEvent

    from binder.desktop.desk import Desk
    from binder.kitchen.change import Change


class Page(QWidget):
    """A page behind a divider. It follows the binder while it is seen, and catches up when it is shown again."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self._behind = True
        desk.changed.connect(self._changed)

    def fill(self, content: QWidget, sentence: str, button: str, begin: Callable[[], object]) -> FilledOrEmpty:
        """Put the content on the page, and what stands in for it: a sentence, and the button that begins it."""
        empty = EmptyPage(sentence, button, self)
        empty.begun.connect(begin)
        pages = FilledOrEmpty(content, empty, self)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(pages)
        return pages

    def fill_of_a_shoot(self, content: QWidget, sentence: str) -> FilledOrEmpty:
        """Put on the page what follows from a shoot; without one it leads there."""
        return self.fill(content, sentence, _("Go to the shoot"), self._go_to_shoot)

    def _go_to_shoot(self) -> None:
        shoot = self.desk.shoot
        self.desk.go_to(Place("shoots", shoot.id if shoot else ""))

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
