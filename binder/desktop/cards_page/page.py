"""The page of the cards: which sheet, on which paper, and its pages as they will be printed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import (
    QAbstractItemView,
    QCheckBox,
    QComboBox,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from binder.desktop.cards_page.preview import Preview
from binder.desktop.cards_page.sheet_list import SHEETS, SheetList
from binder.desktop.empty_page import EmptyPage, FilledOrEmpty
from binder.desktop.errors import sentence_for
from binder.desktop.page import Page
from binder.desktop.sheet.sheet_view import SheetView
from binder.desktop.spacing import characters, space
from binder.desktop.task_runner import Outcome, Task
from binder.figures.missing import Place
from binder.kitchen.whole_file import write_whole
from binder.kitchen.wording import _, ngettext
from binder.paper.paper_size import PAPERS
from binder.paper.press import Printed
from binder.paper.print_set import SheetKind, file_name, print_set, print_sheet

if TYPE_CHECKING:
    from binder.desktop.desk import Desk
    from binder.kitchen.binder import Binder

_PREVIEW = "preview"


class CardsPage(Page):
    """Lays the chosen sheet out anew after each edit; the old pages stay until the new are there."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        content = QWidget(self)
        self.kind = SheetKind.CARDS
        self.list = SheetView(SheetList(), desk.make, content)
        self.list.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.list.setFixedWidth(characters(self.font(), 26))
        self.list.place_current.connect(self._choose)
        self.paper = QComboBox(content)
        self.paper.addItem(_("its usual paper"), "")
        for paper in PAPERS.values():
            self.paper.addItem(paper.name, paper.key)
        self.paper.currentIndexChanged.connect(self.refresh)
        self.wide = QCheckBox(_("Page &width"), content)
        self.wide.toggled.connect(self._set_width)
        self.state = QLabel(content)
        self.state.setProperty("quiet", True)
        self.preview = Preview(content)
        self._lay_out(content)
        empty = EmptyPage(
            _("Station cards and lists are laid out here once there is a shoot."), _("Go to the shoot"), self
        )
        empty.begun.connect(self._go_to_shoot)
        self._pages = FilledOrEmpty(content, empty, self)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(self._pages)
        desk.tasks.finished.connect(self._finished)

    def _lay_out(self, content: QWidget) -> None:
        on_paper = QLabel(_("&Paper"), content)
        on_paper.setBuddy(self.paper)
        tools = QHBoxLayout()
        tools.setSpacing(space(self, 2))
        for widget in (on_paper, self.paper, self.wide, self.state):
            tools.addWidget(widget)
        tools.addStretch(1)
        for title, done in (
            (_("Save the whole set..."), self.save_set),
            (_("Save as PDF..."), self.save),
            (_("Print..."), self.print),
        ):
            button = QPushButton(title, content)
            button.clicked.connect(done)
            tools.addWidget(button)
        right = QVBoxLayout()
        right.setSpacing(space(self, 2))
        right.addLayout(tools)
        right.addWidget(self.preview, 1)
        margin = space(self, 2)
        layout = QHBoxLayout(content)
        layout.setContentsMargins(margin, margin, margin, margin)
        layout.setSpacing(space(self, 4))
        layout.addWidget(self.list)
        layout.addLayout(right, 1)

    def refresh(self) -> None:
        sight = self.desk.sight()
        self._pages.show_filled(filled=sight.shoot is not None)
        self.list.show_sight(sight)
        if sight.shoot is None:
            return
        if self.list.current_row() is None:
            self.list.select_key(self.kind.value)
        binder, shoot, kind, paper = sight.binder, sight.shoot, self.kind, self._paper()

        def lay_out(_task: Task) -> Printed:
            return print_sheet(binder, shoot, kind, paper)

        self.state.setText(_("being laid out"))
        self.desk.tasks.run(_PREVIEW, lay_out)

    def _paper(self) -> str | None:
        return str(self.paper.currentData()) or None

    def _choose(self, place: object) -> None:
        if isinstance(place, Place) and place.table == SHEETS and place.id != self.kind.value:
            self.kind = SheetKind(place.id)
            self.refresh()

    def _set_width(self, wide: bool) -> None:  # noqa: FBT001 - a signal gives it so
        self.preview.fit_width(wide=wide)

    def _finished(self, outcome: object) -> None:
        if not isinstance(outcome, Outcome) or outcome.subject != _PREVIEW:
            return
        if isinstance(outcome.result, Printed):
            self.preview.show_pages(outcome.result.content)
            self.state.setText(_pages_text(outcome.result))
        elif outcome.error is not None:
            self.state.setText(_("could not be laid out"))
            self.desk.said.emit(sentence_for(outcome.error))

    def _go_to_shoot(self) -> None:
        self.desk.go_to(Place("shoots", ""))

    def _printed(self) -> tuple[Binder, str, Printed]:
        """The sheet as it is now, also where the preview is still on its way."""
        sight = self.desk.sight()
        shoot = sight.shoot or ""
        return sight.binder, shoot, print_sheet(sight.binder, shoot, self.kind, self._paper())

    def print(self) -> None:
        """Print the sheet shown."""
        self.preview.show_pages(self._printed()[2].content)
        self.desk.dialogs.print_pages(self, self.preview.pages)

    def save(self) -> None:
        """Save the sheet shown."""
        binder, shoot, sheet = self._printed()
        suggestion = file_name(binder, shoot, self.kind)
        path = self.desk.dialogs.file_to_make(self, _("Where to save the sheet"), suggestion, _("PDF (*.pdf)"))
        if path is not None:
            self.desk.attempt(lambda: write_whole(path, sheet.content))

    def save_set(self) -> None:
        """Save every sheet into a folder."""
        folder = self.desk.dialogs.folder(self, _("Where to save the whole set"))
        sight = self.desk.sight()
        if folder is not None and sight.shoot is not None:
            shoot = sight.shoot
            self.desk.attempt(lambda: print_set(sight.binder, shoot, folder, paper=self._paper()))

    def begin(self, kind: str) -> bool:
        if kind != "print" or self.desk.shoot is None:
            return False
        self.print()
        return True

    def focus_first(self) -> None:
        self.list.setFocus()


def _pages_text(sheet: Printed) -> str:
    says = ngettext("{count} page", "{count} pages", sheet.pages).format(count=sheet.pages)
    if sheet.missing_glyphs:
        signs = ", ".join(sheet.missing_glyphs)
        says = _("{pages}; no face here has {signs}: shown by number").format(pages=says, signs=signs)
    return says
