"""Where binders are kept: what the window needs of storage and exchange."""

from __future__ import annotations

from typing import TYPE_CHECKING, Protocol

from binder.kitchen.paths import samples_folder

if TYPE_CHECKING:
    from collections.abc import Sequence
    from pathlib import Path

    from binder.desktop.document_bridge import Document
    from binder.kitchen.binder import Binder


class Shelf(Protocol):
    """What the window needs of storage and exchange. Each raises BinderError where a file cannot be used."""

    def prepare(self) -> None:
        """Load what opens binders, which takes longer than the window does."""

    def open(self, path: Path) -> Document:
        """Open a binder file, or a JSON document as a binder that is not kept in a file."""

    def read_damaged(self, path: Path) -> tuple[Document, Sequence[str]]:
        """What can be read of a damaged file, kept in no file yet, and in words what was lost."""

    def make(self, path: Path, binder: Binder) -> Document:
        """Make a file of a binder; the person has agreed to replace what is there."""

    def unkept(self, binder: Binder) -> Document:
        """A document that is not kept in a file."""

    def export_json(self, binder: Binder, path: Path) -> None:
        """Write a whole binder as JSON."""

    def back_up(self, document: Document) -> None:
        """Keep a copy of a binder file as it was opened, once a day."""

    def backups(self, path: Path) -> list[Path]:
        """The backups of a binder file, the newest first."""

    def open_backup(self, path: Path) -> Document:
        """A backup's binder as one that is not kept in a file yet, so that the backup stays as it is."""

    def samples(self) -> list[Path]:
        """The sample binders."""


def shipped_samples() -> list[Path]:
    """The sample binders that ship with the program, in order of name."""
    folder = samples_folder()
    return sorted(folder.glob("*.json")) if folder.is_dir() else []
