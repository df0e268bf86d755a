"""The page of the cards: which sheet, how it is printed, and its pages as they will be printed."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QAbstractItemView,
    QComboBox,
    QHBoxLayout,
    QLabel,
    QMenu,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from binder.desktop.cards_page.choices_form import ChoicesForm
from binder.desktop.cards_page.laying_out import Layout, SetAsked
from binder.desktop.cards_page.page_strip import PageStrip
from binder.desktop.cards_page.preflight_line import PreflightLine
from binder.desktop.cards_page.preflight_words import marks_of, verdict_of
from binder.desktop.cards_page.preview import Preview
from binder.desktop.cards_page.print_wishes import TIMED, Wishes, choices_of, in_short, kept_of, wishes_kept
from binder.desktop.cards_page.set_window import SetWindow
from binder.desktop.cards_page.sheet_list import SHEETS, SheetList
from binder.desktop.cards_page.taking_away import TakingAway
from binder.desktop.cards_page.view_tools import view_tools
from binder.desktop.day_page.planning import Planning, planning_of
from binder.desktop.errors import sentence_for
from binder.desktop.fold import Fold
from binder.desktop.page import Page
from binder.desktop.sheet.cell import Mark
from binder.desktop.sheet.sheet_view import SheetView
from binder.desktop.spacing import characters, space
from binder.desktop.task_runner import Outcome, Task
from binder.desktop.wrapping_row import WrappingRow
from binder.figures.missing import Place
from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _
from binder.paper.paper_size import PAPERS
from binder.paper.print_set import SheetKind, usual_paper

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtGui import QHideEvent, QShowEvent

    from binder.desktop.desk import Desk
    from binder.figures.day_plan import DayPlan
    from binder.paper.press import Printed

_PREVIEW = "preview"


class CardsPage(Page):
    """Lays the chosen sheet out anew after each edit; the old pages stay until the new are there."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self.planning: Planning = planning_of(desk)
        self.kind = SheetKind.CARDS
        self.shown: tuple[Layout, Printed] | None = None
        self._then: Callable[[Layout, Printed], object] | None = None
        content = QWidget(self)
        self.list = SheetView(SheetList(), desk.make, content)
        self.list.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.list.setFixedWidth(characters(self.font(), 27))
        self.paper = QComboBox(content)
        self.paper.addItem("", "")
        for paper in PAPERS.values():
            self.paper.addItem(paper.name, paper.key)
        self.form = ChoicesForm(content)
        self.form.show_wishes(wishes_kept(desk.settings.print_wishes))
        self.fold = Fold(_("How it is printed"), self.form, content)
        self.preview = Preview(content)
        self.strip = PageStrip(self.preview, content)
        self.preflight = PreflightLine(content)
        self.number, self.zooms, self.search = view_tools(self.preview, content)
        self.taking = TakingAway(desk, self.preview, self)
        self._lay_out(content)
        self._pages = self.fill_of_a_shoot(
            content, _("Station cards and lists are laid out here once there is a shoot.")
        )
        self._listen()

    def _lay_out(self, content: QWidget) -> None:
        on_paper = QLabel(_("&Paper"), content)
        on_paper.setBuddy(self.paper)
        paper = QHBoxLayout()
        paper.setSpacing(space(self, 1.5))
        paper.addWidget(on_paper)
        paper.addWidget(self.paper)
        around = QWidget(content)
        around.setLayout(paper)
        paper.setContentsMargins(0, 0, 0, 0)
        tools = WrappingRow(space(self, 3))
        for widget in (around, self.number, self.zooms):
            tools.addWidget(widget)
        top = QHBoxLayout()
        top.setSpacing(space(self, 2))
        top.addLayout(tools, 1)
        for button in self._buttons(content):
            top.addWidget(button, 0, Qt.AlignmentFlag.AlignTop)
        pages = QHBoxLayout()
        pages.setSpacing(0)
        pages.addWidget(self.strip)
        pages.addWidget(self.preview, 1)
        right = QVBoxLayout()
        right.setSpacing(space(self, 1))
        right.addLayout(top)
        beside = QHBoxLayout()
        beside.addWidget(self.fold, 1)
        beside.addWidget(self.search)
        right.addLayout(beside)
        right.addWidget(self.form)
        right.addWidget(self.preflight)
        right.addLayout(pages, 1)
        margin = space(self, 2)
        layout = QHBoxLayout(content)
        layout.setContentsMargins(margin, margin, margin, margin)
        layout.setSpacing(space(self, 3))
        layout.addWidget(self.list)
        layout.addLayout(right, 1)

    def _buttons(self, content: QWidget) -> tuple[QWidget, ...]:
        self.going_on = QLabel(content)
        self.going_on.setProperty("quiet", True)
        self.stop = QPushButton(_("Stop"), content)
        self.stop.clicked.connect(self.taking.stop)
        self.save_menu = self._menu(
            _("Save"),
            (
                (_("This sheet as &PDF..."), self.save),
                (_("This page as a picture (P&NG)..."), self.save_page),
                (_("&Every page as a picture (PNG)..."), self.save_every_page),
                (_("The &set into a folder..."), self.ask_for_set),
            ),
            content,
        )
        self.print_menu = self._menu(
            _("Print"),
            ((_("&Pages of this sheet..."), self.print), (_("&Copies of each..."), self.print_copies)),
            content,
        )
        self._show_going_on("")
        return (self.going_on, self.stop, self.save_menu, self.print_menu)

    def _menu(self, title: str, entries: tuple[tuple[str, Callable[[], object]], ...], content: QWidget) -> QPushButton:
        button = QPushButton(title, content)
        menu = QMenu(button)
        for says, done in entries:
            menu.addAction(says).triggered.connect(done)
        button.setMenu(menu)
        return button

    def _listen(self) -> None:
        self.list.place_current.connect(self._choose)
        self.paper.activated.connect(self._lay_out_anew)
        self.form.changed.connect(self._lay_out_anew)
        self.form.changed.connect(self._keep_wishes)
        self.strip.chosen.connect(self.preview.go_to_page)
        self.preflight.page_asked.connect(self.go_to_numbered)
        self.taking.going_on.connect(self._show_going_on)
        self.planning.changed.connect(self._follow_plan)
        self.desk.tasks.finished.connect(self._finished)

    def _keep_wishes(self) -> None:
        self.desk.settings.print_wishes = kept_of(self.form.wishes)

    # What is laid out

    def refresh(self) -> None:
        sight = self.desk.sight()
        self._pages.show_filled(filled=sight.shoot is not None)
        self.list.show_sight(sight)
        if sight.shoot is None:
            return
        if self.list.current_row() is None:
            self.list.select_key(self.kind.value)
        usual = usual_paper(sight.binder, self.kind).name
        self.paper.setItemText(0, _("{paper}, usual").format(paper=usual))
        if self._waits_for_plan and self._shows_this_sheet(sight.shoot):
            self.preflight.say(_("The day is being planned."))
        else:
            self._lay_out_anew()

    @property
    def _waits_for_plan(self) -> bool:
        """Whether times on this sheet are about to be others."""
        return self.kind in TIMED and (self.planning.busy or self.isVisible())

    def _shows_this_sheet(self, shoot: str) -> bool:
        return self.shown is not None and (self.shown[0].shoot, self.shown[0].kind) == (shoot, self.kind)

    def _plans(self, shoot: str) -> dict[str, DayPlan]:
        """The plan of the day, where this sheet has times and the plan is of the binder as it is."""
        plan, planning = self.planning.plan, self.planning
        current = self.kind in TIMED and not planning.busy and not planning.stale
        return {shoot: plan} if current and plan is not None and planning.trouble is None else {}

    def layout_wanted(self) -> Layout:
        """What is to be shown. Raises BinderError for choices that cannot be had."""
        sight = self.desk.sight()
        shoot = sight.shoot or ""
        choices = choices_of(self.form.wishes, self._plans(shoot))
        return Layout(sight.binder, shoot, self.kind, str(self.paper.currentData()) or None, choices)

    def _lay_out_anew(self) -> None:
        self.fold.say(in_short(self.form.wishes))
        if self.desk.shoot is None:
            return
        try:
            layout = self.layout_wanted()
        except BinderError as error:
            self._then = None
            self.desk.tasks.cancel(_PREVIEW)
            self.preflight.say(error.says, Mark.WARN)
            return

        def lay_out(_task: Task) -> tuple[Layout, Printed]:
            return layout, layout.printed()

        self.preflight.say(_("being laid out"))
        self.desk.tasks.run(_PREVIEW, lay_out)

    def _follow_plan(self) -> None:
        """Times on this sheet follow the plan once it is there."""
        if self.isVisible() and self.kind in TIMED and not self.planning.busy:
            self._lay_out_anew()

    def _finished(self, outcome: object) -> None:
        if not isinstance(outcome, Outcome) or outcome.subject != _PREVIEW:
            return
        if isinstance(outcome.result, tuple):
            self._show(*outcome.result)
        elif outcome.error is not None:
            self._then = None
            says = sentence_for(outcome.error)
            self.preflight.say(says, Mark.WARN)

    def _show(self, layout: Layout, printed: Printed) -> None:
        self.shown = (layout, printed)
        self.preview.show_pages(printed.content)
        self.preflight.show_verdict(verdict_of(printed))
        marks = marks_of(printed)
        self.strip.mark_pages({self._leaf_of(page): mark for page, mark in marks.items()})
        then, self._then = self._then, None
        if then is not None:
            then(layout, printed)

    # Which page

    def _leaf_of(self, number: int) -> int:
        """The sheet of paper, from 0, that a page stands on: its own, unless several are printed on one."""
        pages = self.preview.pages
        if self.shown is None or pages.pageCount() == self.shown[1].pages:
            return number - 1
        words = _("page {number} of {count}").format(number=number, count=self.shown[1].pages)
        return next((leaf for leaf in range(pages.pageCount()) if words in pages.getAllText(leaf).text()), 0)

    def go_to_numbered(self, number: int) -> None:
        """Bring a page into sight by the number printed on it."""
        self.preview.go_to_page(self._leaf_of(number))
        self.preview.setFocus()

    def _choose(self, place: object) -> None:
        if isinstance(place, Place) and place.table == SHEETS and place.id != self.kind.value:
            self.kind = SheetKind(place.id)
            self._attend()
            self.refresh()
            self.preview.go_to_page(0)

    def _attend(self) -> None:
        """Have the day planned while a sheet with its times is looked at."""
        self.planning.attend(self, present=self.isVisible() and self.kind in TIMED)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self._attend()

    def hideEvent(self, event: QHideEvent) -> None:
        self.planning.attend(self, present=False)
        super().hideEvent(event)

    # What is taken away

    def _show_going_on(self, says: str) -> None:
        self.going_on.setText(says)
        self.going_on.setVisible(bool(says))
        self.stop.setVisible(bool(says))

    def _take(self, then: Callable[[Layout, Printed], object]) -> None:
        """Do something with the pages as they are now, once they are there."""
        if self.kind in TIMED and self.planning.busy:
            self.desk.said.emit(_("The day is still being planned: try again once its times are on the sheet."))
            return
        try:
            wanted = self.layout_wanted()
        except BinderError as error:
            self.desk.said.emit(error.says)
            return
        if self.shown is not None and not self.desk.tasks.busy(_PREVIEW) and self.shown[0] == wanted:
            then(*self.shown)
        else:
            self._then = then
            self._lay_out_anew()

    def print(self) -> None:
        """Print pages of the sheet shown."""
        self._take(lambda _layout, _printed: self.taking.print())

    def print_copies(self) -> None:
        """Print each card or station of the sheet shown so many times."""
        self._take(lambda layout, _printed: self.taking.print_copies(layout))

    def save(self) -> None:
        """Save the sheet shown as a PDF."""
        self._take(self.taking.save)

    def save_page(self) -> None:
        """Save the page looked at as a picture."""
        self._take(lambda layout, _printed: self.taking.save_page(layout))

    def save_every_page(self) -> None:
        """Save every page of the sheet shown as a picture."""
        self._take(self.taking.save_every_page)

    def ask_for_set(self) -> SetWindow | None:
        """Ask which sheets are written into a folder."""
        shoot = self.desk.shoot
        if shoot is None:
            return None
        window = SetWindow(self.desk.binder, shoot.id, self.form.wishes, self)
        window.asked.connect(self._save_set)
        window.open()
        return window

    def _save_set(self, shoots: tuple[str, ...], kinds: tuple[SheetKind, ...], wishes: Wishes) -> None:
        self.form.show_wishes(replace(self.form.wishes, pattern=wishes.pattern, together=wishes.together))
        folder = self.desk.dialogs.folder(self, _("Where to save the set"))
        if folder is not None:
            paper = str(self.paper.currentData()) or None
            self.desk.attempt(
                lambda: self.taking.save_set(
                    SetAsked(self.desk.binder, shoots, kinds, paper, choices_of(wishes, {}), folder)
                )
            )

    # As a page of the window

    def begin(self, kind: str) -> bool:
        if kind != "print" or self.desk.shoot is None:
            return False
        self.print()
        return True

    def focus_first(self) -> None:
        self.list.setFocus()
