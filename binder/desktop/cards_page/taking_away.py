"""Pages taken away: printed, saved as PDF, as pictures for a tablet, or as a whole set in a folder."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from binder.desktop.cards_page.copies_window import CopiesWindow
from binder.desktop.cards_page.laying_out import Layout, SetAsked, SetWritten, write_pictures, write_set
from binder.desktop.cards_page.page_pictures import every_picture, page_picture, picture_name
from binder.desktop.errors import sentence_for
from binder.desktop.printing import Wanted
from binder.desktop.task_runner import Lane, Outcome, Progress, Task
from binder.kitchen.whole_file import write_whole
from binder.kitchen.wording import _, ngettext
from binder.paper.print_set import sheet_title

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtWidgets import QWidget

    from binder.desktop.cards_page.preview import Preview
    from binder.desktop.desk import Desk
    from binder.paper.press import Printed

_WRITING = "print set"


class TakingAway(QObject):
    """What is taken is what the preview shows. What takes long is done beside the window."""

    going_on = Signal(str)
    """What is being written and how far it is; empty once it is done."""

    def __init__(self, desk: Desk, preview: Preview, page: QWidget) -> None:
        super().__init__(page)
        self._desk, self._preview, self._page = desk, preview, page
        desk.tasks.finished.connect(self._finish)
        desk.tasks.progressed.connect(self._progress)

    @property
    def busy(self) -> bool:
        """Whether something is being written."""
        return self._desk.tasks.busy(_WRITING)

    def stop(self) -> None:
        """Write no more; what was put in place stays."""
        self._desk.tasks.cancel(_WRITING)
        self.going_on.emit("")

    def print(self, wanted: Wanted | None = None) -> None:
        """Print pages: all of them, or those wanted."""
        asked = wanted or Wanted(None, self._preview.page)
        self._desk.dialogs.print_pages(self._page, self._preview.pages, asked)

    def print_copies(self, layout: Layout) -> CopiesWindow:
        """Ask how often each is printed, then print."""
        window = CopiesWindow(self._preview.pages, sheet_title(layout.kind), self._page)
        window.wanted.connect(self.print)
        window.open()
        return window

    def save(self, layout: Layout, printed: Printed) -> None:
        """Save the sheet as a PDF."""
        title, kinds = _("Where to save the sheet"), _("PDF (*.pdf)")
        path = self._desk.dialogs.file_to_make(self._page, title, layout.file_name, kinds)
        if path is not None:
            self._desk.attempt(lambda: write_whole(path, printed.content))

    def save_page(self, layout: Layout) -> None:
        """Save the page looked at as a picture."""
        pages, page = self._preview.pages, self._preview.page
        name = picture_name(layout.file_name, page, pages.pageCount())
        title, kinds = _("Where to save the page"), _("Pictures (*.png)")
        path = self._desk.dialogs.file_to_make(self._page, title, name, kinds)
        if path is not None:
            self._desk.attempt(lambda: write_whole(path, page_picture(pages, page)))

    def save_every_page(self, layout: Layout, printed: Printed) -> None:
        """Save every page as a picture into a folder."""
        folder = self._desk.dialogs.folder(self._page, _("Where to save the pages"))
        if folder is None:
            return
        content, name, count = printed.content, layout.file_name, self._preview.pages.pageCount()

        def write(task: Task) -> str:
            written = write_pictures(folder, name, every_picture(content, task.report), count, picture_name)
            says = ngettext("{count} page is in {folder}.", "{count} pages are in {folder}.", written)
            return says.format(count=written, folder=folder.name)

        self._begin(write)

    def save_set(self, asked: SetAsked) -> None:
        """Write a set into its folder."""

        def write(task: Task) -> str:
            return written_text(write_set(asked, task.report))

        self._begin(write)

    def _begin(self, work: Callable[[Task], str]) -> None:
        self._desk.tasks.run(_WRITING, work, lane=Lane.LONG)
        self.going_on.emit(_("being written"))

    def _progress(self, progress: object) -> None:
        if isinstance(progress, Progress) and progress.subject == _WRITING:
            self.going_on.emit(_("being written: {percent} %").format(percent=round(progress.share * 100)))

    def _finish(self, outcome: object) -> None:
        if not isinstance(outcome, Outcome) or outcome.subject != _WRITING:
            return
        self.going_on.emit("")
        if outcome.error is not None:
            self._desk.said.emit(sentence_for(outcome.error))
        else:
            self._desk.said.emit(str(outcome.result))


def written_text(written: SetWritten) -> str:
    """What is said of a set once it is there."""
    says = ngettext(
        "{count} file with {pages} pages is in {folder}.",
        "{count} files with {pages} pages are in {folder}.",
        written.files,
    ).format(count=written.files, pages=written.pages, folder=Path(written.folder).name)
    if written.faults:
        faults = ngettext(
            "{count} thing is not right on its pages: look at the sheets before you print them.",
            "{count} things are not right on their pages: look at the sheets before you print them.",
            written.faults,
        ).format(count=written.faults)
        says = f"{says} {faults}"
    return says
