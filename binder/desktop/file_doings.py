"""What the File menu does: binders opened, begun, copied, exported; recent ones and samples listed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from binder.desktop.actions import Action, Menu
from binder.desktop.opening import Opened, Opening, is_large, opened
from binder.desktop.writing_out import has_many_records, write_out
from binder.kitchen.binder import Binder
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from PySide6.QtWidgets import QWidget

    from binder.desktop.action_set import ActionSet
    from binder.desktop.desk import Desk
    from binder.desktop.document_bridge import Document
    from binder.desktop.shelf import Shelf

_LETTERS = "AB"
"""Access keys of the samples; digits are for the recent binders."""


class FileDoings(QObject):
    """Knows which file the open binder is kept in."""

    opened = Signal()

    def __init__(self, desk: Desk, shelf: Shelf, window: QWidget) -> None:
        super().__init__(window)
        self._desk, self._shelf, self._window = desk, shelf, window
        self.opening = Opening(desk, shelf, self)
        self.opening.done.connect(self._show_beside)
        self.opening.failed.connect(desk.said)

    @property
    def path(self) -> Path | None:
        """The file the open binder is kept in; None where it is kept in none."""
        return self._desk.bridge.document.path

    def handlers(self) -> dict[str, Callable[[], object]]:
        """What each action does, by its id."""
        return {
            "new": self.new,
            "open": self.open,
            "open_damaged": self.open_damaged,
            "copy_binder": self.copy_binder,
            "go_back": self.go_back,
            "backups": self.backups,
            "export_json": self.export_json,
        }

    def list_files(self, actions: ActionSet) -> None:
        """Put the samples and the recent binders among the actions."""
        for declared in actions.declared():
            if declared.id.startswith(("sample_", "recent_")):
                actions.remove(declared.id)
        for letter, path in zip(_LETTERS, self._shelf.samples(), strict=False):
            title = _("Open sample &{letter}: {name}").format(letter=letter, name=sample_title(path).replace("&", "&&"))
            actions.add(Action(f"sample_{letter}", title, Menu.FILE, 1), self.opener(path))
        for number, path in enumerate(self._desk.settings.recent, 1):
            title = f"&{number} " + path.stem.replace("&", "&&")
            actions.add(Action(f"recent_{number}", title, Menu.FILE, 5, says=str(path)), self.opener(path))

    def opener(self, path: Path) -> Callable[[], None]:
        """What opens a file."""

        def open_it() -> None:
            self.open_path(path)

        return open_it

    def open_path(self, path: Path) -> None:
        """Open a binder file or a JSON document; a large one beside the window. Raises BinderError where it cannot."""
        if is_large(path):
            self.opening.open(path)
        else:
            self.show_opened(opened(self._shelf, path))

    def show_opened(self, found: object) -> None:
        """Show a document that was opened, and say what is to be said of it. Raises as `take`."""
        if isinstance(found, Opened):
            self.take(found.document)
            self._desk.say(found.says)

    def _show_beside(self, found: object) -> None:
        self._desk.attempt(lambda: self.show_opened(found))

    def take(self, document: Document) -> None:
        """Show a document. Raises as `DocumentBridge.take`."""
        self._desk.bridge.take(document)
        self._remember()

    def _remember(self) -> None:
        if self.path is not None:
            self._desk.settings.remember(self.path)
        self.opened.emit()

    def new(self) -> None:
        """Begin an empty binder in a file."""
        path = self._desk.dialogs.file_to_make(
            self._window, _("Where to keep the new binder"), _("New binder") + ".binder", _("Binders (*.binder)")
        )
        if path is not None:
            self.take(self._shelf.make(path, Binder()))

    def open(self) -> None:
        """Open a binder that is chosen."""
        path = self._desk.dialogs.file_to_open(self._window)
        if path is not None:
            self.open_path(path)

    def open_damaged(self) -> None:
        """Open what can be read of a damaged binder, and say what was lost."""
        path = self._desk.dialogs.file_to_open(self._window)
        if path is None:
            return
        document, lost = self._shelf.read_damaged(path)
        self.take(document)
        says = _("Lost: {what}.").format(what=listed(lost)) if lost else _("Nothing was lost.")
        self._desk.said.emit(_("{lost} Save a copy to keep what was read.").format(lost=says))

    def copy_binder(self) -> None:
        """Write a copy, and go on with it where the binder was not kept in a file."""
        name = self._desk.binder.settings.name
        path = self._desk.dialogs.file_to_make(
            self._window, _("Where to keep the copy"), f"{file_stem(name)}.binder", _("Binders (*.binder)")
        )
        if path is None:
            return
        document = self._desk.bridge.document
        if document.path is None:
            write_out(self._desk, lambda: document.move_to(path), self._remember)
        else:
            write_out(self._desk, lambda: document.save_copy_as(path), lambda: self._copied(path))

    def _copied(self, path: Path) -> None:
        self._desk.settings.remember(path)
        self.opened.emit()

    def go_back(self) -> None:
        """Go back to how the binder was opened; undo takes that back."""
        bridge = self._desk.bridge
        if has_many_records(self._desk.binder):
            bridge.write_beside(bridge.document.go_back_to_opened, self._desk.tasks, self._desk.say)
        else:
            bridge.go_back_to_opened()

    def backups(self) -> None:
        """Open one of the backups, beside the binder itself."""
        found = self._shelf.backups(self.path) if self.path else []
        if not found:
            self._desk.said.emit(_("This binder has no backups yet: one is made each day when it is opened."))
            return
        names = [path.stem for path in found]
        at = self._desk.dialogs.choice(self._window, _("Backups"), _("Which backup to open"), names)
        if at is not None:
            self.take(self._shelf.open_backup(found[at]))

    def export_json(self) -> None:
        """Write the whole binder as one JSON document."""
        binder = self._desk.binder
        path = self._desk.dialogs.file_to_make(
            self._window, _("Where to write the JSON"), f"{file_stem(binder.settings.name)}.json", _("JSON (*.json)")
        )
        if path is not None:
            says = _("Written: {file}").format(file=path)
            write_out(self._desk, lambda: self._shelf.export_json(binder, path), lambda: self._desk.said.emit(says))


def file_stem(name: str) -> str:
    """A binder's name as the name of a file."""
    plain = "".join(character if character.isalnum() or character in " -_" else " " for character in name)
    return " ".join(plain.split())[:80] or "binder"


def sample_title(path: Path) -> str:
    """A sample by the name of its file: `chickpeas_on_camera` reads *Chickpeas on camera*."""
    words = path.stem.replace("_", " ").replace("-", " ").strip()
    return words[:1].upper() + words[1:]
