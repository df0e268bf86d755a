"""The parts of a page that scrolls as a whole: tables under headings, and links at the top that lead to each."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QToolButton, QVBoxLayout, QWidget

from binder.desktop.heading_label import HeadingLabel
from binder.desktop.sheet.sheet_view import SheetView
from binder.desktop.spacing import space
from binder.desktop.wrapping_row import WrappingRow

if TYPE_CHECKING:
    from collections.abc import Callable

    from binder.desktop.paper_area import PaperArea
    from binder.desktop.sheet.sheet import Sheet
    from binder.figures.missing import Place
    from binder.kitchen.change import Change


class Parts:
    """Puts tables under headings into the column of a page, and hides both where a table has nothing to show."""

    def __init__(self, area: PaperArea, make: Callable[[Change], bool], asked: Callable[[Place], object]) -> None:
        self._area, self._make, self._asked = area, make, asked
        self._headings: dict[QWidget, HeadingLabel] = {}

    def table(self, sheet: Sheet, *, title: str | None = None) -> SheetView:
        """A table of its own; under a heading, its name unless there is another title, none where that is empty."""
        view = SheetView(sheet, self._make, self._area.paper)
        view.fit_rows()
        view.place_asked.connect(self._asked)
        self.add(view, sheet.name if title is None else title)
        return view

    def add(self, widget: QWidget, title: str = "") -> None:
        """Anything else, under a heading where it has a title."""
        if title:
            heading = HeadingLabel(title, 1, self._area.paper)
            heading.setContentsMargins(space(widget, 2), space(widget, 4), 0, 0)
            heading.setBuddy(widget)
            self._headings[widget] = heading
            self._area.column.addWidget(heading)
        self._area.column.addWidget(widget)

    def heading(self, widget: QWidget) -> HeadingLabel:
        """The heading that something stands under."""
        return self._headings[widget]

    def show(self, widget: QWidget, *, shown: bool) -> None:
        """Show something with its heading, or hide both."""
        widget.setVisible(shown)
        if widget in self._headings:
            self._headings[widget].setVisible(shown)

    def show_filled(self, view: SheetView) -> None:
        """Show a table where it has rows."""
        self.show(view, shown=view.sheet_model.rowCount() > 0)


class JumpRow(QWidget):
    """A word for each part of a long page; each takes the keyboard, and the eye, there."""

    def __init__(self, area: PaperArea, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._area = area
        self._targets: dict[QToolButton, tuple[QWidget, Callable[[], object]]] = {}
        self._row = WrappingRow(space(self, 1))
        layout = QVBoxLayout(self)
        layout.setContentsMargins(space(self, 0.5), 0, 0, space(self, 1))
        layout.addLayout(self._row)

    def add(self, title: str, heading: QWidget, focus: Callable[[], object]) -> None:
        """A word that leads to what stands under a heading."""
        button = QToolButton(self)
        button.setText(title)
        button.setCursor(Qt.CursorShape.PointingHandCursor)
        button.clicked.connect(self._pressed)
        self._targets[button] = (heading, focus)
        self._row.addWidget(button)

    def put(self, widget: QWidget) -> None:
        """Something else at the end of the row."""
        self._row.addWidget(widget)

    @property
    def buttons(self) -> list[QToolButton]:
        """The words, from the left."""
        return list(self._targets)

    def _pressed(self) -> None:
        sender = self.sender()
        if isinstance(sender, QToolButton) and sender in self._targets:
            heading, focus = self._targets[sender]
            focus()
            self._area.verticalScrollBar().setValue(heading.y())
