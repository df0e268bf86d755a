"""A window that asks how often each card or station is printed, before the system's own print dialog."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QLoggingCategory, Qt, Signal
from PySide6.QtPdf import QPdfBookmarkModel
from PySide6.QtWidgets import QDialog, QFormLayout, QHBoxLayout, QLabel, QPushButton, QSpinBox, QVBoxLayout, QWidget

from binder.desktop.cards_page.copies import MOST_COPIES, Stretch, printing_order, stretches
from binder.desktop.paper_area import PaperArea
from binder.desktop.printing import Wanted
from binder.desktop.spacing import characters, space
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from PySide6.QtPdf import QPdfDocument


class CopiesWindow(QDialog):
    """A number for each entry of the outline; 0 leaves it out."""

    wanted = Signal(object)
    """Print: a Wanted."""

    def __init__(self, pages: QPdfDocument, title: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(_("Copies of each: {sheet}").format(sheet=title))
        self.parts = stretches(outline_of(pages), pages.pageCount(), title)
        self.counts: dict[str, QSpinBox] = {}
        area = PaperArea(self)
        form = QFormLayout()
        form.setHorizontalSpacing(space(self, 4))
        for part in self.parts:
            form.addRow(_row_text(part), self._count(part))
        area.column.addLayout(form)
        area.column.addStretch(1)
        self.sum = QLabel(self)
        self.sum.setProperty("quiet", True)
        self.print = QPushButton(_("Print..."), self)
        self.print.setProperty("leading", True)
        self.print.setDefault(True)
        self.print.clicked.connect(self._want)
        foot = QHBoxLayout()
        foot.addWidget(self.sum, 1)
        foot.addWidget(self.print)
        layout = QVBoxLayout(self)
        layout.addWidget(area, 1)
        layout.addLayout(foot)
        bar = area.verticalScrollBar().sizeHint().width()
        area.setMinimumWidth(area.paper.sizeHint().width() + bar)
        self.resize(max(characters(self.font(), 60), self.minimumSizeHint().width()), space(self, 90))
        self._show_sum()

    def _count(self, part: Stretch) -> QSpinBox:
        count = QSpinBox(self)
        count.setRange(0, MOST_COPIES)
        count.setValue(1)
        count.setAccessibleName(_("Copies of {title}").format(title=part.title))
        count.setMinimumWidth(characters(self.font(), 10))
        count.valueChanged.connect(self._show_sum)
        self.counts[part.title] = count
        return count

    @property
    def order(self) -> tuple[int, ...]:
        """The pages to print, as often and in the order they are printed."""
        return printing_order(self.parts, {title: count.value() for title, count in self.counts.items()})

    def _show_sum(self) -> None:
        count = len(self.order)
        self.sum.setText(ngettext("{count} page is printed", "{count} pages are printed", count).format(count=count))
        self.print.setEnabled(count > 0)

    def _want(self) -> None:
        order = self.order
        self.close()
        self.wanted.emit(Wanted(order, order[0]))


def outline_of(pages: QPdfDocument) -> list[tuple[str, int]]:
    """The titles of a document's outline with the page each begins on, counted from 0."""
    # Entries lead to a whole page, not to a place on it, which the reader of outlines warns of once for each.
    QLoggingCategory.setFilterRules("qt.pdf.bookmarks=false")
    model = QPdfBookmarkModel()
    model.setDocument(pages)
    title, page = QPdfBookmarkModel.Role.Title, QPdfBookmarkModel.Role.Page
    indexes = [model.index(row, 0) for row in range(model.rowCount())]
    return [(str(index.data(title)), int(index.data(page))) for index in indexes]


def _row_text(part: Stretch) -> str:
    pages = part.pages
    if len(pages) == 1:
        return _("{title}  (page {page})").format(title=part.title, page=pages[0] + 1)
    return _("{title}  (pages {first} to {last})").format(title=part.title, first=pages[0] + 1, last=pages[-1] + 1)
