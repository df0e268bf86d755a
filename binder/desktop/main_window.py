"""The window: dividers and pages, the head above, the checks at the right, one quiet line below."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QApplication, QGridLayout, QMainWindow, QWidget

from binder.desktop.action_set import ActionSet
from binder.desktop.actions import Action, Menu, Needs, without_access_key
from binder.desktop.checks_panel import ChecksPanel
from binder.desktop.checks_sheet import waiting_by_page
from binder.desktop.dividers import Dividers
from binder.desktop.edit_doings import EditDoings, sheet_in_hand, text_in_hand
from binder.desktop.errors import ErrorReporter
from binder.desktop.file_doings import FileDoings
from binder.desktop.foot_line import FootLine
from binder.desktop.head_bar import HeadBar
from binder.desktop.menus import Menus
from binder.desktop.news_watch import NewsWatch
from binder.desktop.page_frame import PageFrame
from binder.desktop.pages import every_page
from binder.desktop.places import PAGE_OF
from binder.desktop.spacing import characters, space
from binder.desktop.view_doings import ViewDoings
from binder.exchange.price_files import is_price_list
from binder.figures.checks import Severity
from binder.figures.missing import Place
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from PySide6.QtGui import QCloseEvent, QDragEnterEvent, QDropEvent, QResizeEvent

    from binder.desktop.appearance import Wardrobe
    from binder.desktop.desk import Desk
    from binder.desktop.page import Page
    from binder.desktop.shelf import Shelf

_NARROW = 180.0
"""Digits of the body; a window narrower than this has no room for the checks beside a page."""


class MainWindow(QMainWindow):
    """One window on one binder at a time."""

    def __init__(self, desk: Desk, shelf: Shelf, wardrobe: Wardrobe) -> None:
        super().__init__()
        self.setWindowTitle(_("Binder"))
        self.desk = desk
        self._entries = every_page()
        self.pages: dict[str, Page] = {}
        self.frame = PageFrame(self)
        self.reporter = ErrorReporter(self.frame.strip.say)
        self.dividers = Dividers([(entry.key, without_access_key(entry.title)) for entry in self._entries], self)
        self.head = HeadBar(desk, self)
        self.checks = ChecksPanel(desk, self)
        self.foot = FootLine(desk, self)
        self._lay_out()
        self.files = FileDoings(desk, shelf, self)
        self.view = ViewDoings(self, wardrobe)
        self._edit = EditDoings(desk, self)
        handlers = {**self.files.handlers(), **self.view.handlers(), **self._edit.handlers(), "quit": self.close}
        self.actions_ = ActionSet(self, handlers, self.reporter.attempt)
        for number, entry in enumerate(self._entries, 1):
            action = Action(f"page_{entry.key}", entry.title, Menu.VIEW, 0, (f"Ctrl+{number}",))
            self.actions_.add(action, self.view.page_opener(entry.key))
        self.files.list_files(self.actions_)
        self.menus = Menus(self.menuBar(), self.actions_)
        self.news = NewsWatch(desk.bridge, self)
        self._listen()
        self.setAcceptDrops(True)
        desk.tasks.window_first.watch(self)
        self._follow()
        self.view.follow()

    def _lay_out(self) -> None:
        centre = QWidget(self)
        grid = QGridLayout(centre)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setSpacing(0)
        grid.addWidget(self.head, 0, 0, 1, 2)
        grid.addWidget(self.checks, 0, 2, 2, 1)
        grid.addWidget(self.dividers, 1, 0)
        grid.addWidget(self.frame, 1, 1)
        grid.addWidget(self.foot, 2, 0, 1, 3)
        grid.setColumnStretch(1, 1)
        grid.setRowStretch(1, 1)
        self.setCentralWidget(centre)
        self.setMinimumSize(characters(self.font(), 90), space(self, 110))
        self.checks.set_folded(folded=self.desk.settings.checks_folded)
        if not self.desk.settings.restore_shape(self):
            self.resize(characters(self.font(), 212), space(self, 232))

    def _listen(self) -> None:
        self.dividers.chosen.connect(self.show_page)
        self.checks.folded.connect(self.view.fold_checks)
        self.desk.changed.connect(self._follow)
        self.desk.checks.changed.connect(self._follow_checks)
        self.desk.asked.connect(self.go_to)
        self.desk.said.connect(self.frame.strip.say)
        self.desk.bridge.changed.connect(self._hush)
        self.files.opened.connect(self._open)
        self.files.opening.begun.connect(self.head.say)
        self.files.opening.failed.connect(self.head.refresh)
        QApplication.instance().focusChanged.connect(self._follow_focus)  # type: ignore[union-attr]

    # Pages and places

    def page(self, key: str) -> Page:
        """A page by its key, made when it is first needed."""
        if key not in self.pages:
            entry = next(entry for entry in self._entries if entry.key == key)
            self.pages[key] = entry.make(self.desk)
            self.frame.stack.addWidget(self.pages[key])
        return self.pages[key]

    @property
    def shown(self) -> str:
        """The key of the page that is shown."""
        current = self.frame.stack.currentWidget()
        return next((key for key, page in self.pages.items() if page is current), "")

    def show_page(self, key: str) -> None:
        """Show a page."""
        page = self.page(key)
        page.catch_up()
        self.frame.stack.setCurrentWidget(page)
        self.dividers.choose(key)

    def go_to(self, place: object) -> None:
        """Show the page a record is on and select it there."""
        if not isinstance(place, Place):
            return
        key = PAGE_OF.get(place.table, "")
        if key == "settings":
            self.view.binder_settings()
        elif any(entry.key == key for entry in self._entries):
            self.show_page(key)
            self.page(key).go_to(place)

    def begin(self, key: str, kind: str) -> None:
        """Show a page and begin a new record there."""
        self.show_page(key)
        self.page(key).begin(kind)

    # Following the binder

    def _follow_checks(self) -> None:
        self.dividers.need(waiting_by_page(self.desk.checks.latest.value or ()))
        self._follow_focus()

    def _follow(self) -> None:
        self._follow_checks()
        document = self.desk.bridge.document
        for key, label, bare, named in (
            ("undo", document.undo_label, _("&Undo"), _("&Undo: {change}")),
            ("redo", document.redo_label, _("&Redo"), _("&Redo: {change}")),
        ):
            self.actions_.retitle(key, named.format(change=label.replace("&", "&&")) if label else bare)
        self._follow_focus()

    def _follow_focus(self) -> None:
        self.actions_.follow(self.available)

    def available(self, needs: Needs) -> bool:
        """Whether what an action needs is there."""
        document, sheet = self.desk.bridge.document, sheet_in_hand()
        has_rows = sheet is not None and sheet.sheet_model.rowCount() > 0
        met: dict[Needs, Callable[[], bool]] = {
            Needs.NOTHING: lambda: True,
            Needs.UNDO: lambda: document.undo_label is not None,
            Needs.REDO: lambda: document.redo_label is not None,
            Needs.TEXT_OR_ROW: lambda: has_rows or text_in_hand() is not None,
            Needs.ROW: lambda: has_rows,
            Needs.SHOOT: lambda: self.desk.shoot is not None,
            Needs.RECIPE: lambda: bool(self.desk.binder.recipes),
            Needs.DISH: lambda: bool(self.shown) and self.page(self.shown).current_dish() is not None,
            Needs.CHECK: self._has_checks,
            Needs.BACKUPS: lambda: self.files.path is not None,
            Needs.FOUND: lambda: bool(self.head.finder.found),
        }
        return met[needs]()

    def _has_checks(self) -> bool:
        return any(check.severity is not Severity.NOTE for check in self.desk.checks.latest.value or ())

    def _hush(self) -> None:
        """An edit that was done makes the message before it old."""
        self.frame.strip.hide()

    def _open(self) -> None:
        if not self.shown:
            self.show_page(self._entries[0].key)
        name = self.desk.binder.settings.name
        shown = name if self.files.path else _("{name} (not kept in a file yet)").format(name=name)
        self.setWindowTitle(_("{binder} – Binder").format(binder=shown))
        self.setWindowFilePath(str(self.files.path) if self.files.path else "")
        self.files.list_files(self.actions_)
        self.menus.fill()

    def open_path(self, path: Path) -> bool:
        """Open a binder; where it cannot be opened the strip says why."""
        return self.reporter.attempt(self.files.opener(path))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Where the window becomes narrow the checks fold away by themselves, and out again as they were chosen."""
        super().resizeEvent(event)
        narrow = characters(self.font(), _NARROW)
        before, now = event.oldSize().width() < narrow, event.size().width() < narrow
        if before != now or not event.oldSize().isValid():
            self.checks.set_folded(folded=now or self.desk.settings.checks_folded)
            self.view.follow()

    # Files dropped on the window, and its end

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        urls = event.mimeData().urls()
        if len(urls) == 1 and urls[0].isLocalFile():
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        from pathlib import Path as LocalPath

        path = LocalPath(event.mimeData().urls()[0].toLocalFile())
        event.acceptProposedAction()
        if is_price_list(path):
            self._bring_in_prices(path)
        else:
            self.open_path(path)

    def _bring_in_prices(self, path: Path) -> None:
        from binder.desktop.larder_page.page import LarderPage

        self.show_page("larder")
        larder = self.page("larder")
        if isinstance(larder, LarderPage):
            larder.import_from(path)

    def closeEvent(self, event: QCloseEvent) -> None:
        self.desk.settings.keep_shape(self)
        self.news.stop()
        self.desk.tasks.close()
        self.desk.bridge.document.close()
        super().closeEvent(event)

    def focus_page(self) -> None:
        """Give the keyboard to the page shown."""
        if self.shown:
            self.page(self.shown).focus_first()
